import { describe, expect, it } from 'vitest';
import { type SmallPicture, silhouetteOf } from '../../../src/domain/plate/silhouette.ts';

const SIDE_PX = 200;
const SEED = { xPx: 100, yPx: 100, radiusPx: 8 };

type Color = readonly [number, number, number];
const SKIN: Color = [70, 55, 45];

/** Eight straight legs and a body. */
function isSkin(x: number, y: number): boolean {
  const [dx, dy] = [x - 100, y - 100];
  const distance = Math.hypot(dx, dy);
  if (distance < 18) return true;
  const angle = Math.atan2(dy, dx);
  const nearest = Math.round(angle / (Math.PI / 4)) * (Math.PI / 4);
  return distance < 75 && Math.abs(Math.sin(angle - nearest)) * distance < 4;
}

/** Paper lit from one side, a skin with its shadow, a card's corner, all with a little noise. Drawn here, from no photo. */
function pictureOf(skinAt: (x: number, y: number) => boolean, shadow: boolean): SmallPicture {
  const rgba = new Uint8ClampedArray(4 * SIDE_PX * SIDE_PX);
  for (let y = 0; y < SIDE_PX; y += 1) {
    for (let x = 0; x < SIDE_PX; x += 1) {
      const light = 0.75 + (0.25 * x) / SIDE_PX;
      const noise = ((x * 7919 + y * 104729) % 11) - 5;
      const paper: Color = x + y < 50 ? [30, 90, 60] : [205, 200, 190];
      const color = skinAt(x, y) ? SKIN : paper;
      const dimmed = shadow && !skinAt(x, y) && skinAt(x - 6, y - 6) ? 0.8 : 1;
      for (const [channel, value] of color.entries()) rgba[4 * (y * SIDE_PX + x) + channel] = value * light * dimmed + noise;
      rgba[4 * (y * SIDE_PX + x) + 3] = 255;
    }
  }
  return { widthPx: SIDE_PX, heightPx: SIDE_PX, rgba };
}

/** Intersection over union of what is more than half covered with what was drawn. */
function likeness(cover: Uint8ClampedArray): number {
  let [both, either] = [0, 0];
  for (const [at, value] of cover.entries()) {
    const [found, drawn] = [value > 127, isSkin(at % SIDE_PX, Math.floor(at / SIDE_PX))];
    if (found && drawn) both += 1;
    if (found || drawn) either += 1;
  }
  return both / either;
}

describe('silhouetteOf', () => {
  it('finds the skin on paper lit from one side, without its shadow and without the corner of a card', () => {
    const cover = silhouetteOf(pictureOf(isSkin, true), SEED);
    expect(cover).not.toBeNull();
    expect(likeness(cover ?? new Uint8ClampedArray())).toBeGreaterThan(0.8);
    expect(cover?.[5 * SIDE_PX + 5]).toBe(0);
  });

  it('reaches over a joint as pale as the ground', () => {
    const joint = (x: number, y: number) => isSkin(x, y) && !(Math.abs(Math.hypot(x - 100, y - 100) - 45) < 1);
    const cover = silhouetteOf(pictureOf(joint, false), SEED);
    expect(cover?.[100 * SIDE_PX + 170]).toBeGreaterThan(200);
  });

  it.each([
    ['nothing stands apart from the ground', () => false],
    ['everything does', (x: number, y: number) => (x + y) % 3 !== 0],
  ])('finds none where %s', (_, skinAt) => {
    expect(silhouetteOf(pictureOf(skinAt, false), SEED)).toBeNull();
  });

  it('finds none in what lies beyond the photo', () => {
    const picture = pictureOf(isSkin, false);
    for (let at = 3; at < picture.rgba.length; at += 4) picture.rgba[at] = 0;
    expect(silhouetteOf(picture, SEED)).toBeNull();
  });
});
