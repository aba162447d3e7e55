import { contribution } from '../numerics/propagation.ts';
import type { Calibration } from './calibrate.ts';
import { varianceThrough } from './howWellKnown.ts';
import type { ImagePoint } from './points.ts';
import { spacePointOf, type View, type ViewExcursion } from './view.ts';

/** A length by one scale of a picture, and what its uncertainty comes from. In mm. */
export interface LengthByScale {
  readonly valueMm: number;
  /** From what no other scale of the picture shares: its marks, its size, an open tilt. */
  readonly ownVariance: number;
  /** Signed, per standard uncertainty of the picture's focal length. */
  readonly focalMm: number;
  readonly lens: LensPart;
}

interface LensPart {
  /** Signed, per share by which the lens shifts a corner of the picture. */
  readonly perShareMm: number;
  /** Standard uncertainty of that share. */
  readonly share: number;
  /** The object itself told how the lens bends the picture: the error left is its own. */
  readonly isCorrected: boolean;
}

/** One length, told by the ends of it, or of several lines that share its error, in the picture. */
export type Extent = readonly (readonly [ImagePoint, ImagePoint])[];

/** @returns null where one of the points lies beyond the plane's horizon. */
export function lengthByScale({ view, excursions, lens }: Calibration, extent: Extent, aboveMm: number): LengthByScale | null {
  const valueMm = meanLengthMm(view, extent, aboveMm);
  if (valueMm === null) return null;
  // An excursion beyond the horizon says nothing about the neighborhood of the estimate.
  const model = (through: View): number => meanLengthMm(through, extent, aboveMm) ?? valueMm;
  const signed = (wanted: ViewExcursion['source']): number =>
    excursions.reduce((sum, excursion) => sum + (excursion.source === wanted ? contribution(model, excursion) : 0), 0);
  const own = excursions.filter(({ source }) => source !== 'camera-distance' && source !== 'distortion');
  const share = lens.shift.standardUncertainty;
  return {
    valueMm,
    ownVariance: varianceThrough(own, valueMm, model),
    focalMm: signed('camera-distance'),
    lens: { perShareMm: share > 0 ? signed('distortion') / share : 0, share, isCorrected: lens.isCorrected },
  };
}

/**
 * Variance of the difference of one length by two scales of one picture (JCGM 100:2008, equation 16): both were taken with one focal
 * length and through one lens, so that what these do to both alike cancels.
 */
export function differenceVariance(one: LengthByScale, other: LengthByScale): number {
  return one.ownVariance + other.ownVariance + (one.focalMm - other.focalMm) ** 2 + lensVariance(one.lens, other.lens);
}

function lensVariance(one: LensPart, other: LensPart): number {
  if (one.isCorrected || other.isCorrected) return (one.perShareMm * one.share) ** 2 + (other.perShareMm * other.share) ** 2;
  // One lens bends both; the wider of two bounds holds for it.
  return ((one.perShareMm - other.perShareMm) * Math.max(one.share, other.share)) ** 2;
}

function meanLengthMm(view: View, extent: Extent, aboveMm: number): number | null {
  let sum = 0;
  for (const [from, to] of extent) {
    const [one, other] = [spacePointOf(view, from, aboveMm), spacePointOf(view, to, aboveMm)];
    if (!one || !other) return null;
    sum += Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm);
  }
  return sum / extent.length;
}
