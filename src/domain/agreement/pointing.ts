import { DORSAL_SKIN_PROTOCOL, type LandmarkName } from '../measuring/landmarks.ts';
import type { Reading } from '../measuring/reading.ts';

/** Standard deviation of one click per coordinate, px of the photo, pooled from repeated passes. */
export interface PooledPointing {
  readonly pointingPx: number;
  readonly degreesOfFreedom: number;
}

/** How well one observer points. */
export interface ObserverPointing {
  readonly observer: string;
  /** Over all landmarks. */
  readonly overall: PooledPointing;
  /** For landmarks with repeats enough of their own. */
  readonly byLandmark: ReadonlyMap<LandmarkName, PooledPointing>;
}

/** With fewer, the standard deviation itself is uncertain by more than a quarter (JCGM 100:2008, E.4.3). */
const LEAST_DEGREES_OF_FREEDOM = 8;
/** No hand repeats itself as well as this; the mean of equal numbers is rounded. */
const COPIES_PX = 1e-6;

type Pass = Pick<Reading, 'photoId' | 'observer' | 'landmarks'>;

/**
 * Pools the scatter of each landmark about the mean of its passes, over all photos, for each observer alone.
 *
 * @returns no entry for observers with too few repeats to say, or whose passes agree exactly (copies say nothing about scatter).
 */
export function pointingByObserver(passes: readonly Pass[]): readonly ObserverPointing[] {
  return [...Map.groupBy(passes, ({ observer }) => observer)].flatMap(([observer, own]) => {
    const photos = [...Map.groupBy(own, ({ photoId }) => photoId).values()];
    const sums = new Map(DORSAL_SKIN_PROTOCOL.map((name) => [name, total(photos.map((same) => scatterOf(name, same)))]));
    const overall = pooled(total([...sums.values()]));
    if (!overall) return [];
    const byLandmark = new Map<LandmarkName, PooledPointing>();
    for (const [name, sum] of sums) {
      const error = pooled(sum);
      if (error) byLandmark.set(name, error);
    }
    return [{ observer, overall, byLandmark }];
  });
}

/** The error that stands for one landmark: its own if known, else that of all, else what the reading states. */
export function pointingFor(name: LandmarkName, pointing: ObserverPointing | undefined, statedPx: number): number {
  return pointing?.byLandmark.get(name)?.pointingPx ?? pointing?.overall.pointingPx ?? statedPx;
}

interface Scatter {
  readonly sumOfSquares: number;
  readonly degreesOfFreedom: number;
}

function scatterOf(name: LandmarkName, passes: readonly Pass[]): Scatter {
  const points = passes.flatMap(({ landmarks }) => {
    const landmark = landmarks[name];
    return landmark && 'at' in landmark ? [landmark.at] : [];
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

function pooled({ sumOfSquares, degreesOfFreedom }: Scatter): PooledPointing | null {
  if (degreesOfFreedom < LEAST_DEGREES_OF_FREEDOM) return null;
  const pointingPx = Math.sqrt(sumOfSquares / degreesOfFreedom);
  return pointingPx > COPIES_PX ? { pointingPx, degreesOfFreedom } : null;
}
