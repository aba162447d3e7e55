import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { fail, unwrap } from '../../src/domain/result.ts';
import { examinePicture, makeRendition, type Rendition } from '../../src/images/picture.ts';
import { smallTiff } from '../support/smallTiff.ts';

const FIXTURES = join(import.meta.dirname, '../fixtures/images');

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'exuviary-images-'));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** Writes bytes under a name that gives nothing away. */
async function file(bytes: Uint8Array): Promise<{ path: string; name: string }> {
  const path = join(folder, crypto.randomUUID());
  await writeFile(path, bytes);
  return { path, name: 'holiday.txt' };
}

const fixture = (name: string) => ({ path: join(FIXTURES, name), name });

/** Four plain quarters, no two alike, so that every turn and flip shows: red, green / blue, yellow. */
const QUARTERS = { 'top left': [220, 30, 30], 'top right': [30, 200, 40], 'bottom left': [30, 50, 210], 'bottom right': [230, 220, 40] };
const WIDE = 96;
const HIGH = 64;

async function quarters() {
  const quarter = (color: readonly number[]) => ({
    create: {
      width: WIDE / 2,
      height: HIGH / 2,
      channels: 3 as const,
      background: { r: color[0] ?? 0, g: color[1] ?? 0, b: color[2] ?? 0 },
    },
  });
  const whole = sharp({ create: { width: WIDE, height: HIGH, channels: 3, background: '#000' } }).composite([
    { input: quarter(QUARTERS['top left']), left: 0, top: 0 },
    { input: quarter(QUARTERS['top right']), left: WIDE / 2, top: 0 },
    { input: quarter(QUARTERS['bottom left']), left: 0, top: HIGH / 2 },
    { input: quarter(QUARTERS['bottom right']), left: WIDE / 2, top: HIGH / 2 },
  ]);
  return sharp(await whole.png().toBuffer());
}

type Turn = (picture: Sharp) => Sharp;

const quarterTurn: Turn = (picture) => picture.rotate(90);
const mirror: Turn = (picture) => picture.flop();

/** How to store an upright picture so that the EXIF orientation of this number makes it upright again (EXIF 2.32, 4.6.4 A). */
const STORED_AS: readonly (readonly [number, readonly Turn[]])[] = [
  [1, []],
  [2, [mirror]],
  [3, [quarterTurn, quarterTurn]],
  [4, [quarterTurn, quarterTurn, mirror]],
  [5, [quarterTurn, mirror]],
  [6, [quarterTurn, quarterTurn, quarterTurn]],
  [7, [quarterTurn, quarterTurn, quarterTurn, mirror]],
  [8, [quarterTurn]],
];

/** One step at a time: within one pipeline sharp has its own order of turning and mirroring. */
async function stored(turns: readonly Turn[]): Promise<Sharp> {
  let picture = await quarters();
  for (const turn of turns) picture = sharp(await turn(picture).png().toBuffer());
  return picture;
}

async function cornersOf(bytes: Uint8Array): Promise<Record<string, readonly number[]>> {
  const { data, info } = await sharp(bytes).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const at = (x: number, y: number) => {
    const start = (Math.floor(y * info.height) * info.width + Math.floor(x * info.width)) * 3;
    return [...data.subarray(start, start + 3)];
  };
  return { 'top left': at(0.25, 0.25), 'top right': at(0.75, 0.25), 'bottom left': at(0.25, 0.75), 'bottom right': at(0.75, 0.75) };
}

async function expectQuarters({ bytes }: Rendition): Promise<void> {
  for (const [corner, color] of Object.entries(await cornersOf(bytes))) {
    const wanted = QUARTERS[corner as keyof typeof QUARTERS];
    expect([corner, Math.max(...color.map((value, channel) => Math.abs(value - (wanted[channel] ?? 0))))]).toEqual([
      corner,
      expect.toSatisfy((difference: number) => difference <= 12),
    ]);
  }
}

describe('orientation', () => {
  describe.each(STORED_AS)('%i', (orientation, turns) => {
    test.each(['jpeg', 'png', 'webp', 'tiff'] as const)('a %s comes out upright, with an upright size', async (format) => {
      const turned = (await stored(turns)).withMetadata({ orientation });
      const picture = unwrap(await examinePicture(await file(await turned.toFormat(format, { quality: 95 }).toBuffer())));
      expect(picture).toMatchObject({ widthPx: WIDE, heightPx: HIGH, facts: { orientation } });
      for (const rendition of picture.renditions) await expectQuarters(rendition);
      const withFull = picture.renditions.map(({ kind }) => kind).includes('full');
      expect(withFull).toBe(format === 'tiff' || (format !== 'jpeg' && orientation !== 1));
    });
  });

  test('every one of them is a different way to store', async () => {
    const ways = await Promise.all(STORED_AS.map(async ([, turns]) => cornersOf(await (await stored(turns)).png().toBuffer())));
    expect(new Set(ways.map((corners) => JSON.stringify(corners))).size).toBe(8);
  });
});

describe('HEIC', () => {
  test('is turned once: by what the container says, not again by its EXIF', async () => {
    const picture = unwrap(await examinePicture(fixture('turned-by-container.heic')));
    expect(picture).toMatchObject({ mediaType: 'image/heic', widthPx: 1008, heightPx: 756, facts: { orientation: 1 } });
    const upright = await sharp(join(FIXTURES, 'orientation-6.jpg')).autoOrient().raw().toBuffer();
    for (const { kind, bytes } of picture.renditions) {
      const shown = await sharp(bytes).resize(1008, 756).raw().toBuffer();
      expect([kind, meanDifference(shown, upright)]).toEqual([kind, expect.toSatisfy((difference: number) => difference < 6)]);
    }
    const sideways = await sharp(join(FIXTURES, 'orientation-6.jpg')).autoOrient().rotate(180).raw().toBuffer();
    expect(meanDifference(sideways, upright)).toBeGreaterThan(12);
  });

  test('an EXIF orientation alone turns nothing (ISO/IEC 23008-12: only the container’s own turn is binding)', async () => {
    const picture = unwrap(await examinePicture(fixture('turned-by-exif-only.heic')));
    expect(picture).toMatchObject({ widthPx: 756, heightPx: 1008, facts: { orientation: 1 } });
    const [full] = picture.renditions;
    expect(await sharp(full?.bytes).metadata()).toMatchObject({ width: 756, height: 1008 });
  });

  test('the camera’s facts are read', async () => {
    expect(unwrap(await examinePicture(fixture('turned-by-container.heic'))).facts).toEqual({
      takenAt: { local: '2022-06-19T18:05:44', offset: null },
      camera: 'Acme Test',
      focalLengthMm: 4.25,
      focalLength35Mm: 26,
      orientation: 1,
    });
  });

  test('a wide color space becomes sRGB by its profile', async () => {
    const { renditions } = unwrap(await examinePicture(fixture('display-p3.heic')));
    // Made from sRGB 230, 40, 30 converted to Display P3; unconverted it would show about 211, 62, 44.
    for (const { kind, bytes } of renditions) {
      const [red = 0, green = 0, blue = 0] = await sharp(bytes).raw().toBuffer();
      const distance = Math.max(Math.abs(red - 230), Math.abs(green - 40), Math.abs(blue - 30));
      expect([kind, distance]).toEqual([kind, expect.toSatisfy((value: number) => value <= 6)]);
    }
  });

  test('cut short anywhere it is refused', async () => {
    const whole = await readFile(fixture('turned-by-container.heic').path);
    for (const share of [0.02, 0.3, 0.7, 0.99]) {
      const cut = await file(whole.subarray(0, Math.floor(whole.byteLength * share)));
      expect([share, await examinePicture(cut)]).toEqual([share, fail({ code: 'file-truncated', file: 'holiday.txt' })]);
    }
  });
});

function meanDifference(one: Uint8Array, other: Uint8Array): number {
  expect(one.byteLength).toBe(other.byteLength);
  return one.reduce((sum, value, index) => sum + Math.abs(value - (other[index] ?? 0)), 0) / one.byteLength;
}

describe('what is refused', () => {
  const noise = async (format: 'jpeg' | 'png' | 'webp' | 'tiff') =>
    sharp({ create: { width: 300, height: 200, channels: 3, background: '#888', noise: { type: 'gaussian', mean: 128, sigma: 40 } } })
      .toFormat(format)
      .toBuffer();

  test('an empty file', async () => {
    expect(await examinePicture(await file(Buffer.alloc(0)))).toEqual(fail({ code: 'file-empty', file: 'holiday.txt' }));
  });

  test('text, whatever its name', async () => {
    const notes = { ...(await file(Buffer.from('Molted on Tuesday.'))), name: 'dorsal.jpg' };
    expect(await examinePicture(notes)).toEqual(fail({ code: 'file-not-an-image', file: 'dorsal.jpg', kind: null }));
  });

  test('kinds that are not kept, by name', async () => {
    const avif = await sharp({ create: { width: 16, height: 16, channels: 3, background: '#a33' } })
      .avif()
      .toBuffer();
    expect(await examinePicture(await file(avif))).toEqual(fail({ code: 'file-kind-not-kept', file: 'holiday.txt', kind: 'AVIF' }));
  });

  test.each(['jpeg', 'png', 'webp', 'tiff'] as const)('a %s cut short anywhere', async (format) => {
    const whole = await noise(format);
    expect((await examinePicture(await file(whole))).ok).toBe(true);
    for (const share of [0.05, 0.25, 0.5, 0.75, 0.9, 0.99]) {
      const cut = await file(whole.subarray(0, Math.floor(whole.byteLength * share)));
      expect([share, await examinePicture(cut)]).toEqual([share, fail({ code: 'file-truncated', file: 'holiday.txt' })]);
    }
  });

  test('a picture of more than 300 megapixels, before it is decoded', async () => {
    // 20000 x 15001 = 300.02 megapixels: the size in the header of a small PNG (ISO/IEC 15948, 11.2.2), its checksum made anew.
    const png = await sharp({ create: { width: 10, height: 10, channels: 3, background: '#000' } })
      .png()
      .toBuffer();
    png.writeUInt32BE(20_000, 16);
    png.writeUInt32BE(15_001, 20);
    png.writeUInt32BE(crc32(png.subarray(12, 29)), 29);
    expect(await examinePicture(await file(png))).toEqual(
      fail({ code: 'picture-too-large', file: 'holiday.txt', megapixels: 300.02, limitMegapixels: 300 }),
    );
  });

  test.each([
    ['a reduced picture in front (TIFF 6.0, NewSubfileType)', [254, 1]],
    ['the mark of a DNG (DNG 1.7, DNGVersion)', [50_706, 0x00000701]],
  ] as const)('a raw file like a TIFF: %s', async (_, field) => {
    expect(await examinePicture(await file(smallTiff([field])))).toEqual(
      fail({ code: 'file-kind-not-kept', file: 'holiday.txt', kind: 'Camera raw' }),
    );
  });
});

test('a TIFF carries its EXIF in its own directories', async () => {
  const exif = [
    [36_867, '2026:03:14 15:09:26'],
    [36_881, '+01:00'],
    [41_989, 52],
  ] as const;
  const fields = [
    [254, 0],
    [271, 'Acme'],
    [272, 'Scanner'],
    [34_665, exif],
  ] as const;
  const picture = unwrap(await examinePicture(await file(smallTiff(fields))));
  expect(picture).toMatchObject({ mediaType: 'image/tiff', widthPx: 8, heightPx: 8 });
  expect(picture.facts).toEqual({
    takenAt: { local: '2026-03-14T15:09:26', offset: '+01:00' },
    camera: 'Acme Scanner',
    focalLengthMm: null,
    focalLength35Mm: 52,
    orientation: 1,
  });
});

describe('renditions', () => {
  test('are JPEGs of the promised sizes; nothing is enlarged', async () => {
    const large = await sharp({ create: { width: 3000, height: 2000, channels: 3, background: '#a33' } })
      .jpeg()
      .toBuffer();
    const { renditions } = unwrap(await examinePicture(await file(large)));
    const sizes = await Promise.all(
      renditions.map(async ({ kind, bytes }) => {
        const { format, width, height, space } = await sharp(bytes).metadata();
        return [kind, format, width, height, space];
      }),
    );
    expect(sizes).toEqual([
      ['screen', 'jpeg', 2400, 1600, 'srgb'],
      ['thumbnail', 'jpeg', 480, 320, 'srgb'],
    ]);
    const small = unwrap(await examinePicture(await file(await (await quarters()).jpeg().toBuffer())));
    for (const { bytes } of small.renditions) expect(await sharp(bytes).metadata()).toMatchObject({ width: WIDE, height: HIGH });
  });

  test.each(['thumbnail', 'screen', 'full'] as const)('a %s can be made again', async (kind) => {
    for (const name of ['orientation-6.jpg', 'turned-by-container.heic']) {
      const made = unwrap(await makeRendition(fixture(name), kind));
      expect(made.kind).toBe(kind);
      const { width, height } = await sharp(made.bytes).metadata();
      expect([name, width, height]).toEqual([name, ...(kind === 'thumbnail' ? [480, 360] : [1008, 756])]);
    }
  });

  test('what is transparent becomes white', async () => {
    const clear = await sharp({ create: { width: 8, height: 8, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } })
      .png()
      .toBuffer();
    const { renditions } = unwrap(await examinePicture(await file(clear)));
    expect(renditions).toHaveLength(2);
    for (const { bytes } of renditions) expect([...(await sharp(bytes).raw().toBuffer()).subarray(0, 3)]).toEqual([255, 255, 255]);
  });

  test('the original is not touched', async () => {
    const bytes = await readFile(fixture('orientation-6.jpg').path);
    const copy = await file(bytes);
    unwrap(await examinePicture(copy));
    expect((await readFile(copy.path)).equals(bytes)).toBe(true);
  });
});
