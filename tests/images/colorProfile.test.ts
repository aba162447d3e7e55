import sharp from 'sharp';
import { expect, test } from 'vitest';
import { withColorProfile } from '../../src/images/colorProfile.ts';

/** A profile that libvips writes, and one as long as scanners make them: the table of its header says nothing of what follows. */
test.each([0, 150_000])('a profile with %i bytes more is read back whole by libvips, and the picture is the same', async (moreBytes) => {
  const blank = sharp({ create: { width: 8, height: 8, channels: 3, background: '#a33' } });
  const { icc } = await sharp(await blank.clone().withIccProfile('p3').jpeg().toBuffer()).metadata();
  if (!icc) throw new Error('Expected libvips to write a profile');
  const profile = Buffer.concat([icc, Buffer.alloc(moreBytes)]);
  profile.writeUInt32BE(profile.byteLength, 0);
  const bare = await blank.clone().jpeg().toBuffer();
  const tagged = withColorProfile(bare, profile);
  const read = await sharp(tagged).metadata();
  expect(read.icc?.equals(profile)).toBe(true);
  expect(read).toMatchObject({ width: 8, height: 8 });
  expect(tagged.subarray(-100).equals(bare.subarray(-100))).toBe(true);
});
