import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { ScaleFinder } from '../../../src/images/scaleFinder.ts';
import { openScaleFinding } from '../../../src/tasks/finding/scaleFinding.ts';
import { skinWithPhoto, TestArchive } from '../../support/testArchive.ts';

const SHA256 = 'a'.repeat(64);
let test: TestArchive;
beforeEach(async () => {
  test = await TestArchive.open();
  const original = join(test.folder, 'originals', SHA256.slice(0, 2), SHA256.slice(2));
  await mkdir(dirname(original), { recursive: true });
  await writeFile(original, 'a picture');
});
afterEach(() => test.remove());

/** Never answers until it is closed; tells when it was asked. */
function silentFinder(): { readonly finder: ScaleFinder; readonly asked: Promise<void> } {
  const asked = Promise.withResolvers<void>();
  const closed = Promise.withResolvers<never>();
  const wait = () => {
    asked.resolve();
    return closed.promise;
  };
  const close = async () => closed.reject(new Error('closed'));
  return { finder: { propose: wait, refine: wait, close }, asked: asked.promise };
}

describe('finding scale objects in photos of the archive', () => {
  it('closes although a photo in hand is never done, and says so to whoever asked', async () => {
    const { photo } = skinWithPhoto(test.archive, 'T-1', SHA256);
    const { finder, asked } = silentFinder();
    const finding = openScaleFinding(test.archive, finder);
    const { signal } = new AbortController();
    const answers = [finding.proposals(photo.id, signal), finding.proposals(photo.id, signal)];
    await asked;
    await finding.close();
    const stopped = { ok: false, failure: { code: 'finding-stopped' } };
    expect(await Promise.all(answers)).toEqual([stopped, stopped]);
  });
});
