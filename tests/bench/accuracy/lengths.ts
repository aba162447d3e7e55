import { type Calibration, calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { distance } from '../../../src/domain/measuring/corners.ts';
import type { KnownHeights } from '../../../src/domain/measuring/heights.ts';
import { type Landmarks, pointOf } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { trueClicksOn } from '../../support/photoTruth.ts';
import { atMost, type Figure, median, reported } from '../figure.ts';
import type { SeenPhoto } from './photos.ts';
import type { FoundScale } from './scales.ts';

/** One scale object of one photo, calibrated. */
export interface CalibratedScale {
  readonly photo: Pick<SeenPhoto, 'truth' | 'picture'>;
  readonly scale: FoundScale;
  readonly calibration: Calibration;
}

export function calibrated(photo: SeenPhoto, scale: FoundScale): CalibratedScale | null {
  if (!scale.marks) return null;
  const result = calibrate(scale.marks, photo.picture);
  if (!result.ok) {
    console.error(`${photo.truth.name}, ${scale.kind}: ${result.failure.code}`);
    return null;
  }
  return { photo: { truth: photo.truth, picture: photo.picture }, scale, calibration: result.value };
}

const HEIGHT_STEP_MM = 0.5;

/** A height told to half a millimeter is anywhere within a quarter of one (rectangular distribution, JCGM 100:2008, 4.3.7). */
export const HEIGHT_UNCERTAINTY_MM = HEIGHT_STEP_MM / Math.sqrt(12);

/** The true pixels as clicks, the true heights to half a millimeter. */
export function clicksOn({ truth }: Pick<SeenPhoto, 'truth'>): { readonly landmarks: Landmarks; readonly heightsMm: KnownHeights } {
  const { landmarks, heightsMm } = trueClicksOn(truth);
  const rounded = Object.entries(heightsMm).map(([name, exactMm]) => [
    name,
    { heightMm: HEIGHT_STEP_MM * Math.round(exactMm / HEIGHT_STEP_MM), standardUncertaintyMm: HEIGHT_UNCERTAINTY_MM },
  ]);
  return { landmarks, heightsMm: Object.fromEntries(rounded) };
}

/** Relative errors in per cent, by the truth's name of each length. */
function errorsPercent({ photo, calibration }: CalibratedScale): ReadonlyMap<string, number> {
  const { landmarks, heightsMm } = clicksOn(photo);
  const { quantities } = measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, calibration, { heightsMm });
  const errors = quantities.flatMap(({ name, estimate }) => {
    const trueName = truthNameOf(name);
    const trueMm = trueName === null ? undefined : photo.truth.measurements_mm[trueName];
    return trueName === null || trueMm === undefined ? [] : [[trueName, 100 * Math.abs(estimate.value / trueMm - 1)] as const];
  });
  return new Map(errors);
}

/** The truth's name of one of our quantities; null for one that it doesn't tell. */
export function truthNameOf(quantity: string): string | null {
  if (quantity === 'carapace-length' || quantity === 'carapace-width') return quantity.replace('-', '_');
  const leg = /^leg-([LR][1-4])$/.exec(quantity);
  return leg ? `leg_${leg[1]}_chain_femur_to_tip` : null;
}

/** Lengths against their truth, tilt and height of the camera. */
export function lengthFigures(scales: readonly CalibratedScale[]): readonly Figure[] {
  const errors = scales.map((scale) => ({ scale, errors: errorsPercent(scale) }));
  const carapaces = (isCard: boolean): number[] =>
    errors.flatMap(({ scale, errors: of }) => {
      const error = of.get('carapace_length');
      const { kind } = scale.scale;
      return error !== undefined && (kind === 'id1_card' || kind === 'fiducial_card') === isCard ? [error] : [];
    });
  const flatLegs = errors.flatMap(({ scale, errors: of }) =>
    Object.entries(scale.photo.truth.legs).flatMap(([leg, { pose }]) =>
      pose === 'flat' ? (of.get(`leg_${leg}_chain_femur_to_tip`) ?? []) : [],
    ),
  );
  const [card, other] = [carapaces(true), carapaces(false)];
  const undistorted = scales.filter(({ photo: { truth }, calibration }) => truth.camera.k1 === 0 && calibration.tiltDeg !== null);
  const tilts = undistorted.map(({ photo, calibration }) => Math.abs((calibration.tiltDeg ?? 0) - photo.truth.camera.tilt_deg));
  const heights = undistorted.map(({ photo, calibration }) => {
    const overTableMm = (calibration.station?.heightMm ?? Number.NaN) + calibration.faceHeightMm;
    return 100 * Math.abs(overTableMm / photo.truth.camera.height_mm - 1);
  });
  return [
    atMost('carapace-card-median-pct', median(card), '%', 0.4),
    atMost('carapace-card-worst-pct', Math.max(...card), '%', 1.5),
    atMost('carapace-other-median-pct', median(other), '%', 1),
    atMost('carapace-other-worst-pct', Math.max(...other), '%', 3),
    atMost('legs-flat-median-pct', median(flatLegs), '%', 1),
    reported('two-click-median-pct', median(scales.flatMap(twoClickError)), '%'),
    atMost('tilt-median-deg', median(tilts), 'deg', 0.7),
    atMost('height-median-pct', median(heights), '%', 1.5),
  ];
}

/** Carapace length by one scale for the whole picture, from the two true ends of the object: neither tilt nor height is known. */
function twoClickError({ photo, scale }: CalibratedScale): number[] {
  const { landmarks } = trueClicksOn(photo.truth);
  const [front, rear] = [pointOf(landmarks['carapace-front']), pointOf(landmarks['carapace-rear'])];
  const trueMm = photo.truth.measurements_mm['carapace_length'];
  if (!front || !rear || trueMm === undefined) return [];
  const { ends, distanceMm } = scale.twoClicks;
  const lengthMm = (distance(front, rear) * distanceMm) / distance(...ends);
  return [100 * Math.abs(lengthMm / trueMm - 1)];
}
