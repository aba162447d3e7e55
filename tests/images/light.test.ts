import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { lightAt } from '../../src/domain/finding/light.ts';
import { decodeSrgb } from '../../src/domain/numerics/srgb.ts';
import { unwrap } from '../../src/domain/result.ts';
import { readLight } from '../../src/images/light.ts';

const FIXTURES = join(import.meta.dirname, '../fixtures/images');

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'exuviary-light-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** A picture whose left half has one color and whose right half another. */
async function halves(name: string, left: readonly [number, number, number], right: readonly [number, number, number]) {
  const [width, height] = [64, 40];
  const pixels = Buffer.from(Array.from({ length: width * height }, (_, index) => (index % width < width / 2 ? left : right)).flat());
  const path = join(folder, name);
  await sharp(pixels, { raw: { width, height, channels: 3 } }).toFile(path);
  return { path, name };
}

describe('a picture in linear light', () => {
  it('has the light that IEC 61966-2-1 gives its values', async () => {
    // The standard's own two pieces meet at 0.04045; middle gray 188 is half of white (0.5029).
    expect(decodeSrgb(0.04045)).toBeCloseTo(0.0031308, 6);
    expect(decodeSrgb(188 / 255)).toBeCloseTo(0.5029, 4);
    const { image, factor } = unwrap(await readLight(await halves('gray.png', [188, 188, 188], [255, 255, 255])));
    expect([image.widthPx, image.heightPx, factor]).toEqual([64, 40, 1]);
    expect(lightAt(image, 10, 20)).toBeCloseTo(0.5029, 4);
    expect(lightAt(image, 60, 20)).toBeCloseTo(1, 5);
  });

  it('weighs colors as ITU-R BT.709 does, and keeps them beside', async () => {
    const { image, colors } = unwrap(await readLight(await halves('red.png', [255, 0, 0], [0, 255, 0])));
    expect(lightAt(image, 10, 20)).toBeCloseTo(0.2126, 5);
    expect(lightAt(image, 60, 20)).toBeCloseTo(0.7152, 5);
    expect(colors.map((plane) => lightAt(plane, 10, 20))).toEqual([1, 0, 0]);
  });

  it('is averaged after linearizing: black and white lines make half the light, not the light of gray 128', async () => {
    const [width, height] = [64, 64];
    const pixels = Buffer.from(Array.from({ length: width * height }, (_, index) => (index % 2 === 0 ? 255 : 0)));
    const path = join(folder, 'lines.png');
    await sharp(pixels, { raw: { width, height, channels: 1 } }).toFile(path);
    const { image, factor } = unwrap(await readLight({ path, name: 'lines.png' }, 2));
    expect([image.widthPx, factor]).toEqual([32, 2]);
    expect(lightAt(image, 11.3, 20)).toBeCloseTo(0.5, 4);
  });

  it('is upright for every way of storing it, HEIC included', async () => {
    for (const name of ['orientation-6.jpg', 'turned-by-container.heic', 'turned-by-exif-only.heic', 'display-p3.heic']) {
      const file = { path: join(FIXTURES, name), name };
      const { image, colors } = unwrap(await readLight(file));
      const header = await sharp(file.path).metadata();
      const upright = name.endsWith('.jpg') ? header.autoOrient : header;
      expect([image.widthPx, image.heightPx], name).toEqual([upright.width, upright.height]);
      expect(colors, name).toHaveLength(3);
      expect(
        image.light.every((value) => value >= 0 && value <= 1),
        name,
      ).toBe(true);
    }
  });

  it('tells what is wrong with a file that is no picture', async () => {
    const path = join(import.meta.dirname, 'light.test.ts');
    expect(await readLight({ path, name: 'notes.txt' })).toEqual({
      ok: false,
      failure: { code: 'file-not-an-image', file: 'notes.txt', kind: null },
    });
  });
});
