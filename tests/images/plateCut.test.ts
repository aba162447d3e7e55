import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fitHomography } from '../../src/domain/measuring/homography.ts';
import { radialShiftOf, shifted } from '../../src/domain/measuring/lens/radialShift.ts';
import { adjugate, type Matrix3, transform } from '../../src/domain/numerics/matrix3.ts';
import type { Plate } from '../../src/domain/plate/plate.ts';
import { rasterOf } from '../../src/domain/plate/raster.ts';
import { unwrap } from '../../src/domain/result.ts';
import { CUT_LONGEST_PX, drawPlateCut } from '../../src/images/plateCut.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'exuviary-cut-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

const PHOTO = { widthPx: 3000, heightPx: 2000 };
const DOT_RADIUS_PX = 14;
/** On the table, mm: far apart in both directions. */
const DOTS = [10, 60, 110, 150].flatMap((xMm) => [10, 50, 90].map((yMm) => ({ xMm, yMm })));

/** A table of 160 by 100 mm seen from aslant. */
function obliquePlate(): Plate {
  const fit = fitHomography(
    [
      { xMm: 0, yMm: 0 },
      { xMm: 160, yMm: 0 },
      { xMm: 160, yMm: 100 },
      { xMm: 0, yMm: 100 },
    ],
    [
      { xPx: 620, yPx: 240 },
      { xPx: 2450, yPx: 180 },
      { xPx: 2810, yPx: 1790 },
      { xPx: 210, yPx: 1860 },
    ],
  );
  if (!fit) throw new Error('expected a homography');
  return {
    toPlateMm: adjugate(fit.matrix),
    widthMm: 160,
    heightMm: 100,
    carapaceAtMm: 50,
    carapaceFromLeftMm: 80,
    turned: true,
  };
}

function on(matrix: Matrix3, x: number, y: number): [number, number] {
  const [u, v, w] = transform(matrix, x, y, 1);
  return [u / w, v / w];
}

async function photoOf(plate: Plate): Promise<{ path: string; name: string }> {
  const toPhoto = adjugate(plate.toPlateMm);
  const circles = DOTS.map(({ xMm, yMm }) => {
    const [xPx, yPx] = on(toPhoto, xMm, yMm);
    const at = plate.radialShift ? shifted({ xPx, yPx }, plate.radialShift) : { xPx, yPx };
    return `<circle cx="${at.xPx}" cy="${at.yPx}" r="${DOT_RADIUS_PX}"/>`;
  });
  const { widthPx, heightPx } = PHOTO;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}"><rect width="100%" height="100%" fill="white"/>${circles.join('')}</svg>`;
  const path = join(folder, 'dots.jpg');
  await sharp(Buffer.from(svg)).jpeg({ quality: 95 }).toFile(path);
  return { path, name: 'dots.jpg' };
}

describe('drawPlateCut', () => {
  it.each([0, -0.04, 0.03])(
    'puts each dot of an oblique photo where the plane has it, to a third of a pixel, all at one scale, through a lens that shifts the corner by %d of its distance',
    async (cornerShare) => {
      const plate: Plate = { ...obliquePlate(), ...(cornerShare === 0 ? {} : { radialShift: radialShiftOf(PHOTO, cornerShare) }) };
      const raster = rasterOf(plate, CUT_LONGEST_PX);
      expect(raster.pxPerMm).toBeCloseTo(CUT_LONGEST_PX / 160, 9);
      const { data, info } = await sharp(unwrap(await drawPlateCut(await photoOf(plate), plate)))
        .flatten({ background: 'white' })
        .greyscale()
        .raw()
        .toBuffer({ resolveWithObject: true });
      expect([info.width, info.height]).toEqual([1400, 875]);
      for (const { xMm, yMm } of DOTS) {
        const [x, y] = [xMm * raster.pxPerMm, yMm * raster.pxPerMm];
        let [weight, atX, atY] = [0, 0, 0];
        for (let row = Math.floor(y) - 24; row <= Math.floor(y) + 24; row += 1) {
          for (let column = Math.floor(x) - 24; column <= Math.floor(x) + 24; column += 1) {
            const ink = 255 - (data[row * info.width + column] ?? 255);
            if (ink < 40) continue;
            weight += ink;
            atX += ink * (column + 0.5);
            atY += ink * (row + 0.5);
          }
        }
        // The middle of a circle's picture is off its center by the perspective over its radius: far below a third of a pixel here.
        expect(Math.hypot(atX / weight - x, atY / weight - y)).toBeLessThan(0.34);
      }
    },
  );

  it('is no finer than the photo', () => {
    const plate = { ...obliquePlate(), widthMm: 20, heightMm: 20, carapaceAtMm: 10, carapaceFromLeftMm: 10 };
    const raster = rasterOf(plate, CUT_LONGEST_PX);
    expect(raster.photoPerPx).toBeCloseTo(1, 9);
    expect(raster.widthPx).toBeLessThan(400);
  });
});
