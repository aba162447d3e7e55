import { describe, expect, it } from 'vitest';
import { normalDistribution } from '../../../src/domain/finding/edgeModel.ts';
import type { LightImage } from '../../../src/domain/finding/light.ts';
import { edgeSearch, stepsAcross } from '../../../src/domain/finding/profile.ts';
import { randomSource, standardDeviationOf } from '../../support/random.ts';

/** A step through (20.3, 15.5) with a slanting normal, blurred by a Gaussian of 1 px. */
const NORMAL = { x: Math.cos(0.3), y: Math.sin(0.3) };

function step(dark: number, bright: number, noise = 0, seed = 1): LightImage {
  const chance = randomSource(seed);
  const [widthPx, heightPx] = [40, 31];
  const light = Float32Array.from({ length: widthPx * heightPx }, (_, index) => {
    const across = ((index % widthPx) + 0.5 - 20.3) * NORMAL.x + (Math.floor(index / widthPx) + 0.5 - 15.5) * NORMAL.y;
    return dark + (bright - dark) * normalDistribution(across) + chance.normal(noise);
  });
  return { widthPx, heightPx, light };
}

const SEARCH = edgeSearch({ reachPx: 5, stepPx: 0.25, sigmaPx: 0.8, alongPx: 3 });

describe('steps of light across an edge', () => {
  it('stand where the edge is, within a hundredth of a pixel', () => {
    for (const [dark, bright] of [
      [0.03, 0.8],
      [0.8, 0.03],
      [0.4, 0.5],
    ] as const) {
      const [first] = stepsAcross([step(dark, bright)], 20.3 - 1.4 * NORMAL.x, 15.5 - 1.4 * NORMAL.y, NORMAL, SEARCH);
      expect(Math.abs((first?.offsetPx ?? 9) - 1.4), `${dark} to ${bright}`).toBeLessThan(0.01);
    }
  });

  it('scatter by a few hundredths at 1 % of noise', () => {
    const offsets = Array.from(
      { length: 60 },
      (_, seed) => stepsAcross([step(0.1, 0.7, 0.006, seed)], 20.3, 15.5, NORMAL, SEARCH)[0]?.offsetPx ?? 9,
    );
    // Own simulation of erf edges of 1.2 px blur: 0.035 px on one line at 1 % noise; here three lines are averaged.
    expect(standardDeviationOf(offsets)).toBeLessThan(0.035);
  });

  it('are seen in color where luminance shows none', () => {
    const planes = [step(0.5, 0.3), step(0.3, 0.36)] as const;
    const [first] = stepsAcross(planes, 20.3, 15.5, NORMAL, SEARCH);
    expect(Math.abs(first?.offsetPx ?? 9)).toBeLessThan(0.01);
  });

  it('are not sought where the line leaves the picture', () => {
    expect(stepsAcross([step(0.1, 0.7)], 3, 15.5, NORMAL, SEARCH)).toEqual([]);
  });
});
