import { z } from 'zod';
import { ALL_LANDMARKS, type LandmarkName, LandmarkNameSchema } from '../measuring/landmarks.ts';
import { knownPointing, type PointingError } from '../measuring/pointingError.ts';
import { type Pass, Scatter, scatterOf, spreadOf, totalOf } from './scatter.ts';
import { slipsIn } from './slips.ts';

/** How one observer's repeated clicks on each landmark scatter, summed over photos. */
export const ObserverScatter = z
  .object({ observer: z.string(), overall: Scatter, byLandmark: z.partialRecord(LandmarkNameSchema, Scatter) })
  .meta({ id: 'ObserverScatter' });
export type ObserverScatter = z.infer<typeof ObserverScatter>;

/** How well one observer points, from repeated passes. */
export interface ObserverPointing {
  readonly observer: string;
  /** Over all landmarks. */
  readonly overall: PooledPointing;
  /** For landmarks with repeats enough of their own to tell. */
  readonly byLandmark: ReadonlyMap<LandmarkName, PooledPointing>;
}

/** What repeats tell, and on how many photos they were made. */
export interface PooledPointing extends PointingError {
  readonly photos: number;
}

/** By observer; nobody stands in it whose repeats are too few to say. */
export type Pointing = ReadonlyMap<string, ObserverPointing>;

/** With fewer, the standard deviation itself is uncertain by more than a quarter (JCGM 100:2008, E.4.3). */
const LEAST_DEGREES_OF_FREEDOM = 8;
/** Repeats of a landmark that may lower what was entered: degrees of freedom. */
const ENOUGH_DEGREES_OF_FREEDOM = 10;
/**
 * The same: on so many photos. Passes over one photo share its sharpness, its light and how the skin lies, so however often they are
 * repeated they do not tell what a hand does on another one. Own judgment.
 */
export const ENOUGH_PHOTOS = 3;
/** No hand repeats itself as well as this; the mean of equal numbers is rounded. */
const COPIES_PX = 1e-6;

/**
 * The scatter of each landmark about the mean of its passes over one photo, for each observer alone, summed over photos.
 * Points that were found on an edge say nothing about the hand and are left out, and so are slips (`slipsIn`).
 */
export function scattersOf(passes: readonly Pass[]): ObserverScatter[] {
  return [...Map.groupBy(passes, ({ observer }) => observer)].flatMap(([observer, own]) => {
    const photos = [...Map.groupBy(own, ({ photoId }) => photoId).values()].filter((same) => same.length > 1);
    const byPhoto = photos.map((same) => {
      const slipped = new Set(slipsIn(same).map(({ name }) => name));
      return new Map(ALL_LANDMARKS.filter((name) => !slipped.has(name)).map((name) => [name, scatterOf(name, same)]));
    });
    const byLandmark: ObserverScatter['byLandmark'] = {};
    for (const name of ALL_LANDMARKS) {
      const sum = totalOf(byPhoto.flatMap((scatters) => scatters.get(name) ?? []));
      if (sum.degreesOfFreedom > 0) byLandmark[name] = sum;
    }
    const overall = totalOf(byPhoto.map((scatters) => onOnePhoto([...scatters.values()])));
    return overall.degreesOfFreedom === 0 ? [] : [{ observer, overall, byLandmark }];
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
    const sumOf = (name: LandmarkName) => totalOf(own.flatMap(({ byLandmark }) => byLandmark[name] ?? []));
    const overall = pooled(totalOf(own.map((scatter) => scatter.overall)));
    if (!overall) continue;
    const byLandmark = new Map<LandmarkName, PooledPointing>();
    for (const name of ALL_LANDMARKS) {
      const error = pooled(sumOf(name));
      if (error) byLandmark.set(name, error);
    }
    pointing.set(observer, { observer, overall, byLandmark });
  }
  return pointing;
}

/** Whether repeats of one landmark are enough, on photos enough, to take the place of a larger figure that was entered. */
export function isEnough({ degreesOfFreedom, photos }: PooledPointing): boolean {
  return degreesOfFreedom >= ENOUGH_DEGREES_OF_FREEDOM && photos >= ENOUGH_PHOTOS;
}

/**
 * The error that stands for one landmark: what its own repeats show where they are enough. Thin evidence (few repeats, few photos, or
 * those of other landmarks) never narrows: of it and of what the reading states the larger stands.
 */
export function pointingFor(name: LandmarkName, pointing: ObserverPointing | undefined, statedPx: number): PointingError {
  const own = pointing?.byLandmark.get(name);
  if (own && isEnough(own)) return own;
  const shown = own ?? pointing?.overall;
  return shown && shown.pointingPx > statedPx ? shown : knownPointing(statedPx);
}

/** All landmarks of one photo, which stays one however many of them were repeated on it. */
function onOnePhoto(scatters: readonly Scatter[]): Scatter {
  const sum = totalOf(scatters);
  return { ...sum, photos: Math.min(sum.photos, 1) };
}

function pooled(scatter: Scatter): PooledPointing | null {
  const { degreesOfFreedom, photos } = scatter;
  if (degreesOfFreedom < LEAST_DEGREES_OF_FREEDOM) return null;
  const pointingPx = spreadOf(scatter);
  return pointingPx > COPIES_PX ? { pointingPx, degreesOfFreedom, photos } : null;
}
