import { describe, expect, it } from 'vitest';
import { normalDistribution } from '../../../src/domain/finding/edgeModel.ts';
import type { LightImage } from '../../../src/domain/finding/light.ts';
import { snapToEdge } from '../../../src/domain/finding/snap.ts';
import { randomSource } from '../../support/random.ts';

const SIDE = 61;
const MIDDLE = { xPx: 30.5, yPx: 30.5 };

/** Light as a function of the place, with noise. */
function picture(light: (x: number, y: number) => number, noise = 0, seed = 1): LightImage {
  const chance = randomSource(seed);
  const values = Float32Array.from(
    { length: SIDE * SIDE },
    (_, index) => light((index % SIDE) + 0.5, Math.floor(index / SIDE) + 0.5) + chance.normal(noise),
  );
  return { widthPx: SIDE, heightPx: SIDE, light: values };
}

describe('a point moved to an edge', () => {
  it('goes along the measure alone, also where the edge crosses it slantingly', () => {
    // The edge runs through (34, 30.5) with a normal turned by 0.4 from the measure.
    const normal = { x: Math.cos(0.4), y: Math.sin(0.4) };
    const image = picture((x, y) => 0.1 + 0.6 * normalDistribution((x - 34) * normal.x + (y - 30.5) * normal.y));
    const snapped = snapToEdge([image], MIDDLE, { x: 1, y: 0 }, 8);
    expect(snapped?.at.xPx).toBeCloseTo(34, 1);
    expect(snapped?.at.yPx).toBe(30.5);
    expect(snapped?.edgePx).toBeLessThan(0.1);
  });

  it('finds the direction of the strongest edge where the measure has none yet', () => {
    const image = picture((_x, y) => 0.7 - 0.6 * normalDistribution(y - 26.2));
    const snapped = snapToEdge([image], MIDDLE, null, 8);
    expect(snapped?.at.yPx).toBeCloseTo(26.2, 1);
    expect(snapped?.at.xPx).toBeCloseTo(30.5, 1);
  });

  it('is less sure of a ragged edge and of one of two', () => {
    const clean = picture((x) => 0.1 + 0.6 * normalDistribution(x - 33));
    const ragged = picture((x, y) => 0.1 + 0.6 * normalDistribution(x - 33 - 1.5 * (Math.floor(y / 2) % 2)));
    const two = picture((x) => 0.1 + 0.35 * normalDistribution(x - 34) + 0.3 * normalDistribution(x - 27));
    const pointingOn = (image: LightImage) => snapToEdge([image], MIDDLE, { x: 1, y: 0 }, 8)?.edgePx ?? 0;
    expect(pointingOn(ragged)).toBeGreaterThan(pointingOn(clean) + 0.3);
    expect(pointingOn(two)).toBeGreaterThan(3);
  });

  it('leaves the point alone on plain ground, in noise, and at the border', () => {
    expect(snapToEdge([picture(() => 0.4)], MIDDLE, null, 8)).toBeNull();
    expect(snapToEdge([picture(() => 0.4, 0.004)], MIDDLE, null, 8)).toBeNull();
    const edge = picture((x) => 0.1 + 0.6 * normalDistribution(x - 3));
    expect(snapToEdge([edge], { xPx: 2, yPx: 30 }, { x: 1, y: 0 }, 8)).toBeNull();
  });
});
