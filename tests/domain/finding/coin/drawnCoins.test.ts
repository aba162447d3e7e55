import { describe, expect, test } from 'vitest';
import { rimAbout, rimThrough } from '../../../../src/domain/finding/coin/findCoin.ts';
import { proposeCoins } from '../../../../src/domain/finding/coin/proposeCoins.ts';
import { judgedPicture } from '../../../../src/domain/finding/judged.ts';
import type { LightPlanes } from '../../../../src/domain/finding/light.ts';
import { type Ellipse, pointOn } from '../../../../src/domain/measuring/ellipse.ts';
import { distanceFrom } from '../../../support/ellipseDistance.ts';
import { randomSource } from '../../../support/random.ts';

type Color = readonly [number, number, number];

/** Linear red, green and blue of a coin on its ground. */
interface Scene {
  readonly rim: Ellipse;
  readonly coin: Color;
  readonly ground: Color;
  /** What is engraved or shaded: a factor on the light at a signed distance from the rim, px, positive outside, in a direction. */
  readonly shade?: (outsidePx: number, directionRad: number) => number;
}

const TILTED: Ellipse = { centre: { xPx: 158.6, yPx: 121.3 }, semiMajorPx: 58, semiMinorPx: 51, angleRad: 0.5 };
const GRAY: Color = [0.4, 0.4, 0.4];
const BRASS: Color = [0.5, 0.36, 0.14];

/** The rim is a blur of 0.8 px; each color has grain of its own. */
function drawn({ rim, coin, ground, shade = () => 1 }: Scene): LightPlanes {
  const random = randomSource(9);
  const [widthPx, heightPx] = [320, 240];
  const plane = (index: 0 | 1 | 2) => {
    const light = new Float32Array(widthPx * heightPx);
    for (let y = 0; y < heightPx; y += 1) {
      for (let x = 0; x < widthPx; x += 1) {
        const outside = distanceFrom(rim, { xPx: x + 0.5, yPx: y + 0.5 });
        const share = 1 / (1 + Math.exp((1.702 * outside) / 0.8));
        const direction = Math.atan2(y + 0.5 - rim.centre.yPx, x + 0.5 - rim.centre.xPx);
        const bare = ground[index] + share * (coin[index] - ground[index]);
        light[y * widthPx + x] = Math.max(0, bare * shade(outside, direction) + random.normal(0.004));
      }
    }
    return { widthPx, heightPx, light };
  };
  return [plane(0), plane(1), plane(2)];
}

function worstOffPx(found: Ellipse, truth: Ellipse): number {
  return Math.max(...Array.from({ length: 90 }, (_, index) => Math.abs(distanceFrom(truth, pointOn(found, (index * Math.PI) / 45)))));
}

/** From middles that are off by up to a tenth of the coin's width. */
function worstFromRoughStarts(scene: Scene): number {
  const planes = drawn(scene);
  const random = randomSource(2);
  const offs = Array.from({ length: 6 }, () => {
    const { centre, semiMajorPx } = scene.rim;
    const at = { xPx: centre.xPx + random.uniform(-0.14, 0.14) * semiMajorPx, yPx: centre.yPx + random.uniform(-0.14, 0.14) * semiMajorPx };
    const found = rimAbout(planes, at);
    return found.ok ? worstOffPx(found.value.ellipse, scene.rim) : Number.POSITIVE_INFINITY;
  });
  return Math.max(...offs);
}

const SCENES: readonly (readonly [string, Scene, number])[] = [
  ['brighter than its ground', { rim: TILTED, coin: BRASS, ground: [0.1, 0.1, 0.1] }, 0.5],
  ['darker than its ground', { rim: TILTED, coin: [0.12, 0.07, 0.04], ground: GRAY }, 0.5],
  [
    'with an engraved ring inside its rim',
    { rim: TILTED, coin: BRASS, ground: GRAY, shade: (outsidePx) => 1 - 0.5 * Math.exp(-(((outsidePx + 9) / 1.5) ** 2)) },
    0.8,
  ],
  [
    'with its shadow on one side',
    {
      rim: TILTED,
      coin: BRASS,
      ground: GRAY,
      shade: (outsidePx, direction) => (outsidePx > 0 && outsidePx < 9 * Math.max(0, Math.cos(direction - 0.8)) ? 0.35 : 1),
    },
    1.2,
  ],
];

describe('the rim of a drawn coin', () => {
  test.each(SCENES)(
    'is found %s',
    (_, scene, leastPx) => {
      expect(worstFromRoughStarts(scene)).toBeLessThan(leastPx);
    },
    60_000,
  );

  const cutOff = (yPx: number, xPx = 160): Scene => ({ rim: { ...TILTED, centre: { xPx, yPx } }, coin: BRASS, ground: [0.1, 0.1, 0.1] });

  test('is found where a third of it lies out of the picture, and told to be less certain', () => {
    const scene = cutOff(206);
    const [cut, whole] = [rimAbout(drawn(scene), { xPx: 163, yPx: 203 }), rimAbout(drawn(cutOff(120)), { xPx: 163, yPx: 117 })];
    if (!cut.ok || !whole.ok) throw new Error('Expected both to be found');
    expect(worstOffPx(cut.value.ellipse, scene.rim)).toBeLessThan(2 * cut.value.standardUncertaintyPx);
    expect(cut.value.visible).toBeLessThan(0.75);
    expect(cut.value.standardUncertaintyPx).toBeGreaterThan(1.5 * whole.value.standardUncertaintyPx);
  });

  test('is refused as cut off, by a click on its middle and by three on its rim, where less than half of it is to be seen', () => {
    const scene = cutOff(226, 305);
    const planes = drawn(scene);
    const click = (angle: number) => pointOn(scene.rim, angle);
    const refused = { ok: false, failure: { code: 'rim-cut-off' } };
    expect(rimAbout(planes, { xPx: 307, yPx: 223 })).toEqual(refused);
    expect(rimThrough(planes, [click(2.7), click(3.2), click(3.9)])).toEqual(refused);
  });

  test('is proposed once and nothing else', () => {
    for (const [name, large] of SCENES) {
      const scene = { ...large, rim: { ...TILTED, semiMajorPx: 38, semiMinorPx: 33 } };
      const planes = drawn(scene);
      const judged = judgedPicture(planes[0], planes);
      const [first, ...others] = proposeCoins(judged.colors);
      expect(first && worstOffPx(first.rim.ellipse, scene.rim), name).toBeLessThan(1.2);
      expect(others, name).toEqual([]);
    }
  }, 60_000);
});
