import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { refineRectangle } from '../../../src/domain/finding/card.ts';
import { footOf } from '../../../src/domain/finding/foot.ts';
import type { LightImage } from '../../../src/domain/finding/light.ts';
import { lensOf } from '../../../src/domain/measuring/camera.ts';
import type { Corners } from '../../../src/domain/measuring/corners.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { KNOWN_RECTANGLES } from '../../../src/domain/measuring/knownRectangles.ts';
import type { PlanePoint } from '../../../src/domain/measuring/points.ts';
import { invertHomography, planePointOf } from '../../../src/domain/measuring/view.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { isOnCard, paint } from '../../support/paintedScene.ts';
import { type Pinhole, pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';

const ID_1 = KNOWN_RECTANGLES['id-1'];

function camera(): Pinhole {
  return pinhole({
    tiltDeg: 12,
    axisDeg: 40,
    rollDeg: 25,
    distanceMm: 210,
    aim: { xMm: 42.8, yMm: 27 },
    focalPx: 1400,
    widthPx: 800,
    heightPx: 640,
  });
}

function cornersSeen({ see }: Pinhole, zMm = 0): Corners {
  return [see(0, 0, zMm), see(85.6, 0, zMm), see(85.6, 53.98, zMm), see(0, 53.98, zMm)];
}

interface Lamp {
  /** Where the shadow of the card's upper rim falls, mm on the ground, its softness as a standard deviation. */
  readonly xMm: number;
  readonly yMm: number;
  readonly softMm: number;
  readonly ambient: number;
}

/** A card of the standard's thickness on the ground under a lamp of some size: the ground lies deeper and is seen along other rays. */
function cardUnder(lamp: Lamp, card: number, ground: number, scene: Pinhole): LightImage {
  const outline = [
    { xMm: 0, yMm: 0 },
    { xMm: 85.6, yMm: 0 },
    { xMm: 85.6, yMm: 53.98 },
    { xMm: 0, yMm: 53.98 },
  ];
  const fit = fitHomography(outline, cornersSeen(scene, -ID_1.thicknessMm));
  if (!fit) throw new Error('Expected a camera that sees the ground');
  const toGround = invertHomography(fit.matrix, scene.see(0, 0));
  const reached = (at: number): number => {
    if (Math.abs(at) > 5 * lamp.softMm) return at > 0 ? 1 : 0;
    return jStat.normal.cdf(at, 0, lamp.softMm);
  };
  const covered = (at: number, length: number): number => reached(at) - reached(at - length);
  const light = (at: PlanePoint): number => {
    if (isOnCard(at)) return card;
    const on = planePointOf(toGround, scene.see(at.xMm, at.yMm));
    if (!on) return ground;
    const shaded = covered(on.xMm - lamp.xMm, 85.6) * covered(on.yMm - lamp.yMm, 53.98);
    return ground * (lamp.ambient + (1 - lamp.ambient) * (1 - shaded));
  };
  return paint(scene, light, randomSource(21), 0.003);
}

describe('the sides of a card in the light of one lamp', () => {
  it('are found beside long, short and soft shadows, on all sides', () => {
    const scene = camera();
    const truth = cornersSeen(scene);
    const errors: number[] = [];
    for (const [card, ground] of [
      [0.08, 0.4],
      [0.75, 0.35],
    ] as const)
      for (const lamp of [
        { xMm: 0.9, yMm: -0.5, softMm: 0.12, ambient: 0.3 },
        { xMm: -0.3, yMm: 0.6, softMm: 0.35, ambient: 0.45 },
        { xMm: 0.1, yMm: 0.15, softMm: 0.3, ambient: 0.25 },
      ]) {
        const image = cardUnder(lamp, card, ground, scene);
        const [a, b, c, d] = truth;
        const handles: Corners = [
          { xPx: a.xPx + 8, yPx: a.yPx - 6 },
          { xPx: b.xPx - 7, yPx: b.yPx + 5 },
          { xPx: c.xPx + 6, yPx: c.yPx + 8 },
          { xPx: d.xPx - 9, yPx: d.yPx + 3 },
        ];
        const { corners } = unwrap(refineRectangle([image], handles, ID_1, scene.picture));
        const own = corners.map((corner, index) => {
          const at = truth[index as 0 | 1 | 2 | 3];
          return Math.hypot(corner.xPx - at.xPx, corner.yPx - at.yPx);
        });
        errors.push(...own);
      }
    // Measured: 0.21 px, 0.05 px for the light card; a dark one hardly differs from a soft shadow beside it.
    expect(Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length)).toBeLessThan(0.25);
  }, 120_000);
});

describe('the lower rim of a card', () => {
  it('is seen where a camera sees a point that much deeper', () => {
    const scene = camera();
    const corners = cornersSeen(scene);
    const lower = cornersSeen(scene, -ID_1.thicknessMm);
    footOf(corners, ID_1, lensOf(scene.picture)).forEach((footPx, index) => {
      const next = (index + 1) % 4;
      const [from, to] = [corners[index as 0 | 1 | 2 | 3], corners[next as 0 | 1 | 2 | 3]];
      const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
      const off = [index, next].map((at) => {
        const point = lower[at as 0 | 1 | 2 | 3];
        return ((point.xPx - from.xPx) * (to.yPx - from.yPx) - (point.yPx - from.yPx) * (to.xPx - from.xPx)) / length;
      });
      const [one = 0, other = 0] = off;
      expect(footPx).toBeCloseTo((one + other) / 2, 1);
    });
  });
});
