import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { catalogueOn } from '../../src/archive/catalogue/catalogue.ts';
import { unwrap } from '../../src/domain/result.ts';
import { type FaultyFiles, faultyFiles } from '../support/faultyFiles.ts';
import { newPhoto, TestArchive } from '../support/testArchive.ts';

/** More than one piece, so that a write can fail with another already written. */
const BYTES = Buffer.alloc(2_500_000, 'a skin, kept');
/** No scenario makes as many calls. */
const FAR = 1_000;

describe('when the disk fails in the middle of keeping a photo', () => {
  let test_: TestArchive;
  let faulty: FaultyFiles;
  let source: string;

  beforeEach(async () => {
    faulty = faultyFiles();
    test_ = await TestArchive.open(faulty.files);
    source = join(test_.folder, 'photo.jpg');
    await writeFile(source, BYTES);
  });
  afterEach(() => test_.remove());

  /** As the import does: the bytes first, then the row. Answers the failure's code, null when all went well. */
  async function keep(): Promise<string | null> {
    const { archive } = test_;
    const kept = await archive.originals.put({ kind: 'file', path: source }, 'photo.jpg');
    if (!kept.ok) return kept.failure.code;
    unwrap(archive.photos.add(newPhoto({ sha256: kept.value.sha256, byteLength: kept.value.byteLength })));
    return null;
  }

  describe.each([
    ['ENOSPC', false],
    ['ENOSPC', true],
    ['EIO', false],
    ['EIO', true],
  ] as const)('%s (lasting: %s)', (code, lasting) => {
    test('no call leaves harm behind, whichever it is', async () => {
      const met: string[] = [];
      for (let at = 0; at < FAR; at++) {
        faulty.arm({ at, code, lasting });
        const failure = await keep();
        const call = faulty.disarm();
        if (call === null) break;
        met.push(call);

        // Cleaning up may be what failed: then the photo is in, or the failure is another's.
        if (failure !== null) {
          const ours = code === 'ENOSPC' ? 'disk-full' : 'archive-folder-unusable';
          expect([at, call, failure]).toEqual([at, call, call === 'read' ? 'file-unreadable' : ours]);
          expect(test_.archive.photos.count()).toBe(0);
        }
        const checked = await test_.archive.originals.check();
        expect([at, checked]).toEqual([at, { sound: test_.archive.photos.count(), harm: [] }]);

        const archive = await test_.reopen(faulty.files);
        expect([at, await readdir(join(test_.folder, 'incoming'))]).toEqual([at, []]);
        for (const photo of archive.photos.list({ unassigned: false })) unwrap(archive.removals.remove('photo', photo.id));
        await test_.reopen(faulty.files);
        await test_.archive.originals.sweep(-1e13);
      }
      expect(met).toEqual(
        expect.arrayContaining(['createNew', 'read', 'write', 'protect', 'sync', 'close', 'facts', 'link', 'remove', 'syncFolder']),
      );

      const [photo] = test_.archive.photos.list({ unassigned: false });
      const path = await test_.archive.originals.pathOf(photo?.sha256 ?? '');
      expect((await readFile(path ?? '')).equals(BYTES)).toBe(true);
      expect((await stat(path ?? '')).mode & 0o777).toBe(0o444);
      expect((await readFile(source)).equals(BYTES)).toBe(true);
    });
  });

  test.each(['createNew', 'write', 'close', 'rename'])('a rendition whose %s fails leaves the earlier one', async (call) => {
    const { renditions } = test_.archive;
    const sha256 = 'd'.repeat(64);
    await renditions.put(sha256, 'screen', Buffer.from('earlier'));
    let reached = false;
    for (let at = 0; at < FAR && !reached; at++) {
      faulty.arm({ at, code: 'ENOSPC', lasting: false });
      const outcome = await renditions.put(sha256, 'screen', Buffer.from('later')).catch((error: unknown) => error);
      const failed = faulty.disarm();
      if (failed === null) break;
      expect(outcome).toMatchObject({ failure: { code: 'disk-full' } });
      const left = await renditions.open(sha256, 'screen');
      expect(left && (await text(left.stream))).toBe('earlier');
      reached = failed === call;
    }
    expect(reached).toBe(true);
  });
});

describe('when the catalogue can not grow', () => {
  test('the transaction is taken back whole and the person told', async () => {
    const database = new Database(':memory:');
    database.exec('CREATE TABLE note (body TEXT NOT NULL) STRICT');
    const catalogue = catalogueOn(database, '/archive');
    database.pragma('max_page_count = 10');
    const outcome = catalogue.atomically(() => {
      for (let index = 0; index < FAR; index++) {
        catalogue.run('INSERT INTO note (body) VALUES (:body)', { body: 'x'.repeat(1000) });
      }
      return { ok: true, value: null };
    });
    expect(outcome).toEqual({ ok: false, failure: { code: 'disk-full' } });
    expect(catalogue.one('SELECT count(*) AS notes FROM note')).toEqual({ notes: 0 });
    database.pragma('max_page_count = 100000');
    expect(catalogue.run('INSERT INTO note (body) VALUES (:body)', { body: 'room again' })).toBe(1);
    database.close();
  });
});
