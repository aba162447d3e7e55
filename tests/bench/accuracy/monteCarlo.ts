import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { simulateReading } from '../../../src/domain/measuring/simulation.ts';
import { seededGenerator } from '../../../src/domain/numerics/generator.ts';
import { trueClicksOn } from '../../support/photoTruth.ts';
import { atMost, type Figure } from '../figure.ts';
import type { CalibratedScale } from './lengths.ts';

const DRAWS = 1_000;
const SEED = 101;
const PHOTOS = 4;

/**
 * Standard uncertainties of the carapace by the law of propagation against the root mean square deviation when the whole reading
 * is drawn (JCGM 101:2008, 7 and 8): the largest difference in per cent over some photos, all heights assumed; and how many draws gave
 * no value, of the quantity with the most.
 */
export function monteCarloFigures(scales: readonly CalibratedScale[]): readonly Figure[] {
  const differences = { 'carapace-length': [] as number[], 'carapace-width': [] as number[] };
  let photos = 0;
  let failed = 0;
  for (const { photo, scale } of scales) {
    const { marks } = scale;
    if (photos === PHOTOS || !marks || (marks.kind !== 'rectangle' && marks.kind !== 'points')) continue;
    const { landmarks } = trueClicksOn(photo.truth);
    const reading = { landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 } as const;
    const calibration = calibrate(marks, photo.picture);
    const simulated = simulateReading(reading, marks, photo.picture, DRAWS, seededGenerator(SEED + photos));
    if (!calibration.ok || !simulated.ok) throw new Error(`${photo.truth.name} can't be simulated`);
    photos += 1;
    for (const { name, estimate } of measure(reading, calibration.value).quantities) {
      const drawn = simulated.value.get(name);
      failed = Math.max(failed, drawn?.failed ?? DRAWS);
      if (!drawn || (name !== 'carapace-length' && name !== 'carapace-width')) continue;
      differences[name].push(
        100 * Math.abs(estimate.standardUncertainty / Math.hypot(drawn.standardDeviation, drawn.mean - estimate.value) - 1),
      );
    }
  }
  if (photos < PHOTOS) throw new Error(`Expected ${PHOTOS} photos with a card or markers but found ${photos}`);
  return [
    ...(['carapace-length', 'carapace-width'] as const).map((name) =>
      atMost(`monte-carlo-agreement-${name}-pct`, Math.max(...differences[name]), '%', 10),
    ),
    atMost('monte-carlo-failed-draws-pct', (100 * failed) / DRAWS, '%', 1),
  ];
}
