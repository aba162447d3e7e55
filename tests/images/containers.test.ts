import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { endsEarly } from '../../src/images/containers.ts';
import { smallPicture } from '../support/smallPictures.ts';

let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'containers-'));
});
afterAll(() => rm(folder, { recursive: true }));

async function ends(bytes: Uint8Array): Promise<boolean> {
  const path = join(folder, 'picture');
  await writeFile(path, bytes);
  return endsEarly(path, 'image/jpeg');
}

// The end of an image is the marker FF D9 (ITU-T T.81, B.1.1.3).
describe('a JPEG', () => {
  test.each([false, true])('ends where it says so and nowhere before (progressive: %s)', async (progressive) => {
    const whole = await sharp(await smallPicture(1, 'jpeg'))
      .jpeg({ progressive })
      .toBuffer();
    expect(await ends(whole)).toBe(false);
    for (const share of [0.05, 0.25, 0.5, 0.75, 0.99])
      expect([share, await ends(whole.subarray(0, whole.byteLength * share))]).toEqual([share, true]);
    expect(await ends(Buffer.concat([whole, Buffer.from('what a camera appends')]))).toBe(false);
  });

  test('that is cut off has not ended with the small picture in its head', async () => {
    const small = await smallPicture(2, 'jpeg');
    const inHead = Buffer.concat([Buffer.from([0xff, 0xe1, 0, 0]), small]);
    inHead.writeUInt16BE(small.byteLength + 2, 2);
    const whole = await smallPicture(1, 'jpeg');
    const bytes = Buffer.concat([whole.subarray(0, 2), inHead, whole.subarray(2)]);
    expect(await ends(bytes)).toBe(false);
    expect(await ends(bytes.subarray(0, bytes.byteLength - 100))).toBe(true);
  });
});
