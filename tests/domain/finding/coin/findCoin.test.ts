import { describe, expect, test } from 'vitest';
import { rimAbout, rimThrough } from '../../../../src/domain/finding/coin/findCoin.ts';
import { proposeCoins } from '../../../../src/domain/finding/coin/proposeCoins.ts';
import { judgedPicture } from '../../../../src/domain/finding/judged.ts';
import type { LightPlanes } from '../../../../src/domain/finding/light.ts';
import { type Ellipse, pointOn } from '../../../../src/domain/measuring/ellipse.ts';
import { COIN_PHOTOS, coinLight, coinTruth } from '../../../support/coinTruth.ts';
import { distanceFrom } from '../../../support/ellipseDistance.ts';
import { randomSource } from '../../../support/random.ts';

/** Distances of the found rim from the true one, px, all around, sorted. */
function offRim(found: Ellipse, truth: Ellipse): readonly number[] {
  return Array.from({ length: 90 }, (_, index) => Math.abs(distanceFrom(truth, pointOn(found, (index * Math.PI) / 45)))).toSorted(
    (one, other) => one - other,
  );
}

function medianOf(sorted: readonly number[]): number {
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** A disk of light 0.6 on 0.2, its edge a Gaussian blur of 0.8 px, with grain. */
function drawnDisk(ellipse: Ellipse, grain: number): LightPlanes {
  const random = randomSource(3);
  const [widthPx, heightPx] = [320, 240];
  const light = new Float32Array(widthPx * heightPx);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      const outside = distanceFrom(ellipse, { xPx: x + 0.5, yPx: y + 0.5 });
      light[y * widthPx + x] = 0.2 + 0.4 / (1 + Math.exp((1.702 * outside) / 0.8)) + random.normal(grain);
    }
  }
  return [{ widthPx, heightPx, light }];
}

const coinsOf = (planes: LightPlanes) => proposeCoins(judgedPicture(planes[0], planes).colors);

describe('the rim of a coin in the rendered photos', () => {
  // From a middle that is off by a tenth of the coin's width.
  const offsets = COIN_PHOTOS.map(async (photo) => {
    const { rim } = coinTruth(photo);
    const found = rimAbout(await coinLight(photo), { xPx: rim.centre.xPx + 9, yPx: rim.centre.yPx - 8 });
    if (!found.ok) throw new Error(`${photo.name}: ${found.failure.code}`);
    return { off: offRim(found.value.ellipse, rim), rim: found.value };
  });

  test('is found from a rough middle: the clear one to 0.3 px, half of all within a pixel of the truth', async () => {
    const [clear, ...others] = await Promise.all(offsets);
    expect(clear && medianOf(clear.off)).toBeLessThan(0.3);
    const all = [clear, ...others].flatMap((seen) => seen?.off ?? []).toSorted((one, other) => one - other);
    expect(medianOf(all)).toBeLessThan(1);
  });

  test('is nowhere as far off as a thirtieth of its radius, and told to be uncertain where it is', async () => {
    for (const { off, rim } of await Promise.all(offsets)) {
      expect(off.at(-1)).toBeLessThan(rim.ellipse.semiMajorPx / 30);
      expect(medianOf(off)).toBeLessThan(2.5 * rim.standardUncertaintyPx);
    }
  });

  test('is the same from three clicks on it that are off by four pixels', async () => {
    for (const photo of COIN_PHOTOS) {
      const { rim } = coinTruth(photo);
      const click = (angle: number, byPx: number) => {
        const { xPx, yPx } = pointOn(rim, angle);
        return { xPx: xPx + byPx, yPx: yPx - byPx / 2 };
      };
      const found = rimThrough(await coinLight(photo), [click(0.3, 3), click(2.5, -3), click(4.4, 2)]);
      if (!found.ok) throw new Error(`${photo.name}: ${found.failure.code}`);
      expect(medianOf(offRim(found.value.ellipse, rim))).toBeLessThan(1.5);
    }
  });

  test('is proposed without a click, first', async () => {
    for (const photo of COIN_PHOTOS) {
      const { rim } = coinTruth(photo);
      const [first] = coinsOf(await coinLight(photo));
      expect(first && medianOf(offRim(first.rim.ellipse, rim)), photo.name).toBeLessThan(1.5);
      expect(first?.confidence).toBeGreaterThan(0.5);
    }
  }, 120_000);
});

describe('the rim of a drawn disk', () => {
  const truth: Ellipse = { centre: { xPx: 161.3, yPx: 118.7 }, semiMajorPx: 62, semiMinorPx: 51, angleRad: 0.7 };

  test('stands where it was drawn, to a twentieth of a pixel', () => {
    const found = rimAbout(drawnDisk(truth, 0.005), { xPx: 165, yPx: 115 });
    if (!found.ok) throw new Error(found.failure.code);
    expect(offRim(found.value.ellipse, truth).at(-1)).toBeLessThan(0.05);
    expect(found.value.coherence).toBeGreaterThan(0.95);
  });

  test('is not found where there is none', () => {
    const grain: LightPlanes = drawnDisk({ ...truth, centre: { xPx: -500, yPx: -500 } }, 0.02);
    expect(rimAbout(grain, { xPx: 160, yPx: 120 })).toEqual({ ok: false, failure: { code: 'rim-not-found' } });
    expect(coinsOf(grain)).toEqual([]);
  });

  test('is not asked of three clicks on a line', () => {
    const clicks = [10, 60, 120].map((xPx) => ({ xPx, yPx: 50 + xPx / 2 }));
    const [a, b, c] = clicks;
    if (!a || !b || !c) throw new Error('Expected three clicks');
    expect(rimThrough(drawnDisk(truth, 0.005), [a, b, c])).toEqual({ ok: false, failure: { code: 'points-on-a-line' } });
  });
});
