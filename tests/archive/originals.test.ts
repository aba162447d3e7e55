import { createHash } from 'node:crypto';
import { chmod, readdir, readFile, stat, truncate, utimes, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { buffer } from 'node:stream/consumers';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Archive } from '../../src/archive/archive.ts';
import type { Files } from '../../src/archive/originals/files.ts';
import { nodeFiles } from '../../src/archive/originals/nodeFiles.ts';
import type { OriginalSource } from '../../src/archive/records/originals.ts';
import { Refusal } from '../../src/domain/failure.ts';
import { fail, unwrap } from '../../src/domain/result.ts';
import { newPhoto, TestArchive } from '../support/testArchive.ts';

const DAY_MS = 86_400_000;

function sha256Of(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

async function* pieces(...parts: readonly string[]): AsyncGenerator<Uint8Array> {
  for (const part of parts) yield Buffer.from(part);
}

function sending(text: string, byteLength: number | null = text.length): OriginalSource {
  return { kind: 'stream', stream: pieces(text.slice(0, 3), text.slice(3)), byteLength };
}

describe('originals', () => {
  let test_: TestArchive;
  let archive: Archive;

  beforeEach(async () => {
    test_ = await TestArchive.open();
    archive = test_.archive;
  });
  afterEach(() => test_.remove());

  const pathOf = (sha256: string) => join(test_.folder, 'originals', sha256.slice(0, 2), sha256.slice(2));

  test('a file is kept byte for byte, read-only, under its own hash', async () => {
    const source = join(test_.folder, 'photo.jpg');
    const bytes = Buffer.alloc(3_000_001, 'exuvia');
    await writeFile(source, bytes);
    const kept = unwrap(await archive.originals.put({ kind: 'file', path: source }, 'photo.jpg'));
    expect(kept).toMatchObject({ sha256: sha256Of(bytes), byteLength: bytes.byteLength, alreadyHere: false });
    expect(await archive.originals.pathOf(kept.sha256)).toBe(pathOf(kept.sha256));
    expect((await readFile(pathOf(kept.sha256))).equals(bytes)).toBe(true);
    expect((await stat(pathOf(kept.sha256))).mode & 0o777).toBe(0o444);
    expect((await readFile(source)).equals(bytes)).toBe(true);
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
    const opened = await archive.originals.open(kept.sha256);
    expect(opened?.byteLength).toBe(bytes.byteLength);
    if (opened) expect((await buffer(opened.stream)).equals(bytes)).toBe(true);
  });

  test('the same content is recognized whatever its name, and not written again', async () => {
    const first = unwrap(await archive.originals.put(sending('abcdef'), 'one.jpg'));
    const before = await stat(pathOf(first.sha256));
    const second = unwrap(await archive.originals.put(sending('abcdef'), 'two.jpg'));
    expect(second).toMatchObject({ sha256: first.sha256, alreadyHere: true });
    expect((await stat(pathOf(first.sha256))).ino).toBe(before.ino);
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
  });

  test('the same content coming in several times at once is published once', async () => {
    const all = await Promise.all(Array.from({ length: 8 }, () => archive.originals.put(sending('abcdef'), 'x.jpg')));
    expect(all.map((kept) => unwrap(kept).alreadyHere).filter((alreadyHere) => !alreadyHere)).toHaveLength(1);
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
    expect(await readFile(pathOf(sha256Of(Buffer.from('abcdef'))), 'utf8')).toBe('abcdef');
  });

  test.each([
    ['nothing at all', sending('', 0), { code: 'file-empty', file: 'x.jpg' }],
    ['less than promised', sending('abc', 4), { code: 'file-not-arrived', file: 'x.jpg' }],
    ['more than promised', sending('abcd', 3), { code: 'file-not-arrived', file: 'x.jpg' }],
    ['a file that is not there', { kind: 'file', path: '/nowhere/x.jpg' }, { code: 'file-unreadable', file: 'x.jpg', reason: 'ENOENT' }],
  ] as const)('%s is refused and leaves nothing', async (_, source, failure) => {
    expect(await archive.originals.put(source, 'x.jpg')).toEqual(fail(failure));
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
    expect(await readdir(join(test_.folder, 'originals'))).toEqual([]);
  });

  test('a sender that breaks off is told apart from one that refuses', async () => {
    async function* breaking(error: Error): AsyncGenerator<Uint8Array> {
      yield Buffer.from('abc');
      throw error;
    }
    const send = (error: Error) => archive.originals.stage({ kind: 'stream', stream: breaking(error), byteLength: null }, 'x.jpg');
    expect(await send(new Error('aborted'))).toEqual(fail({ code: 'file-unreadable', file: 'x.jpg', reason: 'aborted' }));
    const tooLarge = { code: 'body-too-large', limitBytes: 3 } as const;
    expect(await send(new Refusal(tooLarge))).toEqual(fail(tooLarge));
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
  });

  test('where links do not exist, names are changed instead', async () => {
    const linkless: Files = {
      ...nodeFiles(process.platform),
      link: () => Promise.reject(Object.assign(new Error('no links here'), { code: 'EPERM' })),
    };
    const { originals } = await test_.reopen(linkless);
    const kept = unwrap(await originals.put(sending('abcdef'), 'x.jpg'));
    expect(await readFile(pathOf(kept.sha256), 'utf8')).toBe('abcdef');
    expect(await readdir(join(test_.folder, 'incoming'))).toEqual([]);
  });

  test('a check finds what is gone and what is no longer itself', async () => {
    const record = async (text: string) => {
      const { sha256 } = unwrap(await archive.originals.put(sending(text), 'x.jpg'));
      return unwrap(archive.photos.add(newPhoto({ sha256, byteLength: text.length })));
    };
    const [sound, damaged, gone] = [await record('sound!'), await record('damage'), await record('gone??')];
    expect(await archive.originals.check()).toEqual({ sound: 3, harm: [] });
    await chmod(pathOf(damaged.sha256), 0o644);
    await writeFile(pathOf(damaged.sha256), 'Damage');
    await nodeFiles(process.platform).remove(pathOf(gone.sha256));
    expect(await archive.originals.check()).toEqual({
      sound: 1,
      harm: [
        { code: 'original-damaged', photoId: damaged.id },
        { code: 'original-missing', photoId: gone.id },
      ],
    });
    expect(await archive.originals.pathOf(gone.sha256)).toBeNull();
    expect(await archive.originals.open(gone.sha256)).toBeNull();
    expect(await archive.originals.pathOf(sound.sha256)).not.toBeNull();
  });

  test.each([
    ['lost bytes', (path: string) => truncate(path, 2)],
    ['is as long as it was, with other bytes', (path: string) => writeFile(path, 'abcdeX')],
  ])('an original that %s is healed by bringing the file in again', async (_, damage) => {
    const { sha256 } = unwrap(await archive.originals.put(sending('abcdef'), 'x.jpg'));
    await chmod(pathOf(sha256), 0o644);
    await damage(pathOf(sha256));
    expect(unwrap(await archive.originals.put(sending('abcdef'), 'x.jpg')).alreadyHere).toBe(false);
    expect(await readFile(pathOf(sha256), 'utf8')).toBe('abcdef');
  });

  describe('the sweep', () => {
    async function unnamed(text: string): Promise<string> {
      return unwrap(await archive.originals.put(sending(text), 'x.jpg')).sha256;
    }

    test('takes what no row names, after the grace, with its renditions', async () => {
      const named = await unnamed('named!');
      unwrap(archive.photos.add(newPhoto({ sha256: named, byteLength: 6 })));
      const lost = await unnamed('lost!!');
      for (const sha256 of [named, lost]) await archive.renditions.put(sha256, 'thumbnail', Buffer.from('small'));
      archive = await test_.reopen();
      // The test's clock stands in 2026 while files carry the machine's: reach far back and far ahead.
      expect(await archive.originals.sweep(1000 * 365 * DAY_MS)).toEqual({ removed: 0 });
      expect(await archive.originals.sweep(-1000 * 365 * DAY_MS)).toEqual({ removed: 2 });
      expect(await archive.originals.pathOf(lost)).toBeNull();
      expect(await archive.renditions.missing(lost, ['thumbnail'])).toEqual(['thumbnail']);
      expect(await archive.originals.pathOf(named)).not.toBeNull();
      expect(await archive.renditions.missing(named, ['thumbnail'])).toEqual([]);
    });

    test('never takes what was published since the opening, however old the file looks', async () => {
      const fresh = await unnamed('fresh!');
      await utimes(pathOf(fresh), 0, 0);
      expect(await archive.originals.sweep(-1000 * 365 * DAY_MS)).toEqual({ removed: 0 });
    });

    test('waits for the grace after a removal, however long ago the photo came in', async () => {
      const present = nodeFiles(process.platform);
      const looking = { ...present, facts: async (path: string) => ((await present.facts(path)) ? { byteLength: 6, changedMs: 0 } : null) };
      const sha256 = await unnamed('photo!');
      const photo = unwrap(archive.photos.add(newPhoto({ sha256, byteLength: 6 })));
      unwrap(archive.removals.remove('photo', photo.id));
      for (let start = 0; start < 2; start += 1) {
        archive = await test_.reopen(looking);
        expect(await archive.originals.sweep(DAY_MS)).toEqual({ removed: 0 });
      }
      expect(await archive.originals.sweep(-DAY_MS)).toEqual({ removed: 1 });
    });

    test('waits for a removed photo until it can not come back any more', async () => {
      const sha256 = await unnamed('photo!');
      const photo = unwrap(archive.photos.add(newPhoto({ sha256, byteLength: 6 })));
      archive = await test_.reopen();
      unwrap(archive.removals.remove('photo', photo.id));
      expect(await archive.originals.sweep(-1000 * 365 * DAY_MS)).toEqual({ removed: 0 });
      archive = await test_.reopen();
      expect(await archive.originals.sweep(-1000 * 365 * DAY_MS)).toEqual({ removed: 1 });
    });
  });
});

describe('renditions', () => {
  test('are written whole and found missing when empty or gone', async () => {
    const test_ = await TestArchive.open();
    const { renditions } = test_.archive;
    const sha256 = 'c'.repeat(64);
    expect(await renditions.missing(sha256, ['thumbnail', 'screen'])).toEqual(['thumbnail', 'screen']);
    expect(await renditions.open(sha256, 'screen')).toBeNull();
    await renditions.put(sha256, 'screen', Buffer.from('first'));
    await renditions.put(sha256, 'screen', Buffer.from('second'));
    const opened = await renditions.open(sha256, 'screen');
    if (opened) expect((await buffer(opened.stream)).toString()).toBe('second');
    expect(opened?.byteLength).toBe(6);
    expect(await renditions.missing(sha256, ['thumbnail', 'screen'])).toEqual(['thumbnail']);
    expect(await readdir(join(test_.folder, 'renditions', 'cc'))).toHaveLength(1);
    await truncate(join(test_.folder, 'renditions', 'cc', `${'c'.repeat(62)}-screen.jpg`), 0);
    expect(await renditions.missing(sha256, ['screen'])).toEqual(['screen']);
    await test_.remove();
  });
});
