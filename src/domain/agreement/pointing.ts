import { z } from 'zod';
import { ALL_LANDMARKS, type LandmarkName, LandmarkNameSchema, pointOf } from '../measuring/landmarks.ts';
import { knownPointing, type PointingError } from '../measuring/pointingError.ts';
import type { ReadingDraft } from '../measuring/reading.ts';

/** Squares of the distances of repeated clicks from their mean, px2 of the photo, both coordinates together. */
export const Scatter = z.object({ sumOfSquares: z.number().min(0), degreesOfFreedom: z.int().min(0) }).meta({ id: 'Scatter' });
export type Scatter = z.infer<typeof Scatter>;

/** How one observer's repeated clicks on each landmark scatter, summed over photos. */
export const ObserverScatter = z
  .object({ observer: z.string(), byLandmark: z.partialRecord(LandmarkNameSchema, Scatter) })
  .meta({ id: 'ObserverScatter' });
export type ObserverScatter = z.infer<typeof ObserverScatter>;

/** How well one observer points, from repeated passes. */
export interface ObserverPointing {
  readonly observer: string;
  /** Over all landmarks. */
  readonly overall: PointingError;
  /** For landmarks with repeats enough of their own. */
  readonly byLandmark: ReadonlyMap<LandmarkName, PointingError>;
}

/** By observer; nobody stands in it whose repeats are too few to say. */
export type Pointing = ReadonlyMap<string, ObserverPointing>;

/** With fewer, the standard deviation itself is uncertain by more than a quarter (JCGM 100:2008, E.4.3). */
const LEAST_DEGREES_OF_FREEDOM = 8;
/** No hand repeats itself as well as this; the mean of equal numbers is rounded. */
const COPIES_PX = 1e-6;

/** One pass over one photo. */
export type Pass = Pick<ReadingDraft, 'observer' | 'landmarks'> & { readonly photoId: string };

/**
 * The scatter of each landmark about the mean of its passes over one photo, for each observer alone, summed over photos.
 * Points that were found on an edge say nothing about the hand and are left out.
 */
export function scattersOf(passes: readonly Pass[]): ObserverScatter[] {
  return [...Map.groupBy(passes, ({ observer }) => observer)].flatMap(([observer, own]) => {
    const photos = [...Map.groupBy(own, ({ photoId }) => photoId).values()].filter((same) => same.length > 1);
    const byLandmark: ObserverScatter['byLandmark'] = {};
    for (const name of ALL_LANDMARKS) {
      const sum = total(photos.map((same) => scatterOf(name, same)));
      if (sum.degreesOfFreedom > 0) byLandmark[name] = sum;
    }
    return Object.keys(byLandmark).length === 0 ? [] : [{ observer, byLandmark }];
  });
}

/**
 * Pools scatters, of several collections of photos if need be.
 *
 * @returns no entry for observers with too few repeats to say, or whose passes agree exactly (copies say nothing about scatter).
 */
export function pointingFrom(scatters: readonly ObserverScatter[]): Pointing {
  const pointing = new Map<string, ObserverPointing>();
  for (const [observer, own] of Map.groupBy(scatters, (scatter) => scatter.observer)) {
    const sumOf = (name: LandmarkName) => total(own.flatMap(({ byLandmark }) => byLandmark[name] ?? []));
    const overall = pooled(total(ALL_LANDMARKS.map(sumOf)));
    if (!overall) continue;
    const byLandmark = new Map<LandmarkName, PointingError>();
    for (const name of ALL_LANDMARKS) {
      const error = pooled(sumOf(name));
      if (error) byLandmark.set(name, error);
    }
    pointing.set(observer, { observer, overall, byLandmark });
  }
  return pointing;
}

/** The error that stands for one landmark: its own if known, else that of all, else what the reading states. */
export function pointingFor(name: LandmarkName, pointing: ObserverPointing | undefined, statedPx: number): PointingError {
  return pointing?.byLandmark.get(name) ?? pointing?.overall ?? knownPointing(statedPx);
}

function scatterOf(name: LandmarkName, passes: readonly Pass[]): Scatter {
  const points = passes.flatMap(({ landmarks }) => {
    const landmark = landmarks[name];
    const at = landmark !== undefined && 'at' in landmark && landmark.pointingPx === undefined ? pointOf(landmark) : null;
    return at === null ? [] : [at];
  });
  if (points.length < 2) return { sumOfSquares: 0, degreesOfFreedom: 0 };
  const meanX = points.reduce((sum, { xPx }) => sum + xPx, 0) / points.length;
  const meanY = points.reduce((sum, { yPx }) => sum + yPx, 0) / points.length;
  return {
    sumOfSquares: points.reduce((sum, { xPx, yPx }) => sum + (xPx - meanX) ** 2 + (yPx - meanY) ** 2, 0),
    degreesOfFreedom: 2 * (points.length - 1),
  };
}

function total(scatters: readonly Scatter[]): Scatter {
  return {
    sumOfSquares: scatters.reduce((sum, scatter) => sum + scatter.sumOfSquares, 0),
    degreesOfFreedom: scatters.reduce((sum, scatter) => sum + scatter.degreesOfFreedom, 0),
  };
}

function pooled({ sumOfSquares, degreesOfFreedom }: Scatter): PointingError | null {
  if (degreesOfFreedom < LEAST_DEGREES_OF_FREEDOM) return null;
  const pointingPx = Math.sqrt(sumOfSquares / degreesOfFreedom);
  return pointingPx > COPIES_PX ? { pointingPx, degreesOfFreedom } : null;
}
