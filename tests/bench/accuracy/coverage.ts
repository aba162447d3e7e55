import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { type RandomSource, randomSource } from '../../support/random.ts';
import { between, type Figure } from '../figure.ts';
import { type CalibratedScale, clicksOn, truthNameOf } from './lengths.ts';

const DRAWS = 200;
const POINTING_PX = 1.5;
const SEED = 43;

interface Counted {
  within: number;
  of: number;
}

/** How often the stated interval (k = 2) holds the truth, with errors drawn for every click; by kind of length. */
export function coverageFigures(scales: readonly CalibratedScale[]): readonly Figure[] {
  const random = randomSource(SEED);
  const total = new Map<string, Counted>();
  for (const scale of scales) {
    for (const [group, { within, of }] of countedOn(scale, random)) {
      const sum = total.get(group) ?? { within: 0, of: 0 };
      total.set(group, { within: sum.within + within, of: sum.of + of });
    }
  }
  return ['carapace-length', 'carapace-width', 'legs'].map((group) => {
    const { within, of } = total.get(group) ?? { within: 0, of: 0 };
    return between(`coverage-${group}-pct`, (100 * within) / of, '%', 93, 98);
  });
}

function countedOn({ photo, calibration }: CalibratedScale, random: RandomSource): ReadonlyMap<string, Counted> {
  const { landmarks, heightsMm } = clicksOn(photo);
  const counts = new Map<string, Counted>();
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const reading = { landmarks: clicked(landmarks, random), carapaceHeight: { kind: 'assumed' }, pointingPx: POINTING_PX } as const;
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
