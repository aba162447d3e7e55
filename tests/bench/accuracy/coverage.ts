import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { type RandomSource, randomSource } from '../../support/random.ts';
import { atLeast, between, type Figure } from '../figure.ts';
import { type CalibratedScale, clicksOn, truthNameOf } from './lengths.ts';

const DRAWS = 200;
export const POINTING_PX = 1.5;
const SEED = 43;

interface Counted {
  within: number;
  of: number;
}

const GROUPS = ['carapace-length', 'carapace-width', 'legs'];

/** How often the stated interval (k = 2) holds the truth, with errors drawn for every click; by kind of length. */
export function coverageFigures(scales: readonly CalibratedScale[]): readonly Figure[] {
  const random = randomSource(SEED);
  const shares = sharesOf(
    scales.map((scale) => {
      const { landmarks } = clicksOn(scale.photo);
      return countedOn(
        scale,
        Array.from({ length: DRAWS }, () => clicked(landmarks, random)),
      );
    }),
  );
  return GROUPS.map((group) => between(`coverage-${group}-pct`, shares(group), '%', 93, 98));
}

/**
 * The same with points that went to the edges beside the clicks. Judged from below alone: a skin's edges are the same in every
 * draw, so some twenty skins cannot tell 98 % from 99.
 */
export function snappedCoverageFigures(scales: readonly SnappedScale[]): readonly Figure[] {
  const shares = sharesOf(scales.map(({ scale, draws }) => countedOn(scale, draws)));
  return GROUPS.map((group) => atLeast(`coverage-snapped-${group}-pct`, shares(group), '%', 93));
}

export interface SnappedScale {
  readonly scale: CalibratedScale;
  readonly draws: readonly Landmarks[];
}

/** In percent of all lengths of a group. */
function sharesOf(counts: readonly ReadonlyMap<string, Counted>[]): (group: string) => number {
  return (group) => {
    const of = counts.reduce((sum, count) => sum + (count.get(group)?.of ?? 0), 0);
    return (100 * counts.reduce((sum, count) => sum + (count.get(group)?.within ?? 0), 0)) / of;
  };
}

function countedOn({ photo, calibration }: CalibratedScale, draws: readonly Landmarks[]): ReadonlyMap<string, Counted> {
  const { heightsMm } = clicksOn(photo);
  const counts = new Map<string, Counted>();
  for (const landmarks of draws) {
    const reading = { landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: POINTING_PX } as const;
    for (const { name, estimate } of measure(reading, calibration, { heightsMm }).quantities) {
      const trueName = truthNameOf(name);
      const trueMm = trueName === null ? undefined : photo.truth.measurements_mm[trueName];
      if (trueMm === undefined) continue;
      const group = name.startsWith('leg-') ? 'legs' : name;
      const counted = counts.get(group) ?? { within: 0, of: 0 };
      counted.of += 1;
      if (Math.abs(estimate.value - trueMm) <= estimate.expandedUncertainty) counted.within += 1;
      counts.set(group, counted);
    }
  }
  return counts;
}

function clicked(landmarks: Landmarks, random: RandomSource): Landmarks {
  return Object.fromEntries(
    Object.entries(landmarks).map(([name, landmark]) => {
      if (!('at' in landmark)) return [name, landmark];
      const at = { xPx: landmark.at.xPx + random.normal(POINTING_PX), yPx: landmark.at.yPx + random.normal(POINTING_PX) };
      return [name, { ...landmark, at }];
    }),
  );
}
