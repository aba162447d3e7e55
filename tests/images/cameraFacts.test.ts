import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { factsFrom, NO_FACTS, readCameraFacts } from '../../src/images/cameraFacts.ts';

const PHOTO = join(import.meta.dirname, '../fixtures/images/orientation-6.jpg');

const PHOTO_SIZE = { widthPx: 1008, heightPx: 756 };
const SIZE = { widthPx: 4032, heightPx: 3024 };

async function exifBlock(): Promise<Buffer> {
  const { exif } = await sharp(PHOTO).metadata();
  if (!exif) throw new Error('Expected the fixture to carry EXIF');
  return exif;
}

describe('what the camera wrote', () => {
  const WRITTEN = {
    takenAt: { local: '2022-06-19T18:05:44', offset: null },
    camera: 'Acme Test',
    focalLengthMm: 4.25,
    focalLength35Mm: 26,
  };

  test('is the same from the file and from its block, with or without prefix', async () => {
    const block = await exifBlock();
    expect(await readCameraFacts(PHOTO, PHOTO_SIZE)).toEqual(WRITTEN);
    expect(await readCameraFacts(block, PHOTO_SIZE)).toEqual(WRITTEN);
    expect(await readCameraFacts(block.subarray(6), PHOTO_SIZE)).toEqual(WRITTEN);
  });

  test('a block damaged anywhere gives what can be read and never an error', async () => {
    const block = await exifBlock();
    let lost = 0;
    for (let at = 0; at < block.byteLength; at += 3) {
      const damaged = Buffer.from(block);
      damaged.fill(0xff, at, Math.min(at + 4, block.byteLength));
      const facts = await readCameraFacts(damaged, SIZE);
      expect(Object.keys(facts).toSorted()).toEqual(Object.keys(NO_FACTS).toSorted());
      if (facts.takenAt === null) lost += 1;
      const short = await readCameraFacts(block.subarray(0, at), SIZE);
      expect(Object.keys(short).toSorted()).toEqual(Object.keys(NO_FACTS).toSorted());
    }
    expect(lost).toBeGreaterThan(0);
    expect(await readCameraFacts(readFileSync(PHOTO).subarray(0, 300), SIZE)).toBeDefined();
  });

  // PixelXDimension and PixelYDimension: EXIF 2.32, 4.6.5.
  test.each([
    ['as taken', { ExifImageWidth: 4032, ExifImageHeight: 3024 }, 26],
    ['turned', { ExifImageWidth: 3024, ExifImageHeight: 4032 }, 26],
    ['without a size written', {}, 26],
    ['trimmed by a row of blocks', { ExifImageWidth: 4032, ExifImageHeight: 3040 }, 26],
    ['cut to half of each side', { ExifImageWidth: 8064, ExifImageHeight: 6048 }, null],
    ['cut at one side', { ExifImageWidth: 4032, ExifImageHeight: 4032 }, null],
  ])('the equivalent focal length counts for a picture %s: %o', (_, sizes, focalLength35Mm) => {
    expect(factsFrom({ FocalLengthIn35mmFormat: 26, ...sizes }, SIZE).focalLength35Mm).toBe(focalLength35Mm);
  });

  // Formats: CIPA DC-008 / EXIF 2.32, 4.6.5 (DateTimeOriginal, OffsetTimeOriginal), 4.6.4 (Make, Model).
  test.each([
    ['2026:03:14 15:09:26', '+02:00', { local: '2026-03-14T15:09:26', offset: '+02:00' }],
    ['2026:03:14 15:09:26', '-03:30\0', { local: '2026-03-14T15:09:26', offset: '-03:30' }],
    ['2026:03:14 15:09:26', 'Z', { local: '2026-03-14T15:09:26', offset: '+00:00' }],
    ['2026:03:14 15:09:26', '   :  ', { local: '2026-03-14T15:09:26', offset: null }],
    ['2026:03:14 15:09:26', undefined, { local: '2026-03-14T15:09:26', offset: null }],
    ['0000:00:00 00:00:00', '+02:00', null],
    ['    :  :     :  :  ', undefined, null],
    ['2026:02:30 10:00:00', undefined, null],
    ['2026:02:03 25:00:00', undefined, null],
    ['yesterday', undefined, null],
    [20260314, undefined, null],
  ])('a time of %o with the offset %o is read as %o', (time, offset, takenAt) => {
    expect(factsFrom({ DateTimeOriginal: time, OffsetTimeOriginal: offset }, SIZE).takenAt).toEqual(takenAt);
  });

  test.each([
    ['Acme', 'Test 1', 'Acme Test 1'],
    ['ACME', 'Acme Test 1', 'Acme Test 1'],
    ['Acme\0\0', '  Test 1 \0', 'Acme Test 1'],
    [undefined, 'Test 1', 'Test 1'],
    ['Acme', '', 'Acme'],
    ['', '\0', null],
    [7, null, null],
  ])('the maker %o and the model %o make %o', (Make, Model, camera) => {
    expect(factsFrom({ Make, Model }, SIZE).camera).toBe(camera);
  });

  test.each([
    [4.25, 4.25],
    [0, null],
    [-1, null],
    [Number.NaN, null],
    [Number.POSITIVE_INFINITY, null],
    ['26', null],
  ])('a focal length of %o is read as %o', (written, read) => {
    expect(factsFrom({ FocalLength: written, FocalLengthIn35mmFormat: written }, SIZE)).toMatchObject({
      focalLengthMm: read,
      focalLength35Mm: read,
    });
  });
});
