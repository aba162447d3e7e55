import { mkdir, readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openConnection } from '../../src/archive/catalogue/connection.ts';
import { openArchive } from '../../src/archive/open.ts';
import { countingAmbient, specimenDraft, TestArchive, temporaryFolder } from '../support/testArchive.ts';

describe('opening an archive', () => {
  let folder: string;
  let remove: () => Promise<void>;

  beforeEach(async () => {
    ({ folder, remove } = await temporaryFolder());
  });
  afterEach(() => remove());

  test('the catalogue is opened the way we mean it', () => {
    const database = openConnection(folder);
    const read = (name: string) => database.pragma(name, { simple: true });
    expect({
      locking: read('locking_mode'),
      journal: read('journal_mode'),
      synchronous: read('synchronous'),
      foreignKeys: read('foreign_keys'),
      busyTimeout: read('busy_timeout'),
      trustedSchema: read('trusted_schema'),
      cellSizeCheck: read('cell_size_check'),
      tempStore: read('temp_store'),
      fullFsync: read('fullfsync'),
      checkpointFullFsync: read('checkpoint_fullfsync'),
    }).toEqual({
      locking: 'exclusive',
      journal: 'wal',
      synchronous: 2,
      foreignKeys: 1,
      busyTimeout: 5000,
      trustedSchema: 0,
      cellSizeCheck: 1,
      tempStore: 2,
      fullFsync: 1,
      checkpointFullFsync: 1,
    });
    expect([0, undefined]).toContain(read('mmap_size'));
    expect(() => database.prepare('SELECT "not a column"')).toThrow(/no such column/);
    database.close();
  });

  test('a new folder gets the layout, parents included', async () => {
    const deep = join(folder, 'a', 'b');
    const opened = await openArchive(deep, countingAmbient());
    if (opened.ok) opened.value.close();
    expect(opened.ok).toBe(true);
    expect((await readdir(deep)).toSorted()).toEqual(['catalogue.db', 'incoming', 'originals', 'renditions']);
  });

  test('a second opener is told that the archive is in use, and the first goes on', async () => {
    const first = await TestArchive.open();
    const second = await openArchive(first.folder, countingAmbient());
    expect(second).toEqual({ ok: false, failure: { code: 'archive-in-use', folder: first.folder } });
    expect(first.archive.specimens.create(specimenDraft()).ok).toBe(true);
    first.close();
    const third = await openArchive(first.folder, countingAmbient());
    expect(third.ok).toBe(true);
    if (third.ok) third.value.close();
    await first.remove();
  });

  test('a catalogue of a newer program is left alone', async () => {
    const test = await TestArchive.open();
    test.close();
    const path = join(test.folder, 'catalogue.db');
    const newer = new Database(path);
    newer.pragma('user_version = 4711');
    newer.pragma('journal_mode = DELETE');
    newer.close();
    const refused = await openArchive(test.folder, countingAmbient());
    expect(refused).toMatchObject({ ok: false, failure: { code: 'archive-from-newer-version', found: 4711 } });
    const again = new Database(path);
    expect(again.pragma('user_version', { simple: true })).toBe(4711);
    again.close();
    await test.remove();
  });

  test('a database of another program is not ours, and not a byte of it changes', async () => {
    const path = join(folder, 'catalogue.db');
    const other = new Database(path);
    other.exec('CREATE TABLE somebody_elses (id INTEGER)');
    other.close();
    const before = await readFile(path);
    expect(await openArchive(folder, countingAmbient())).toEqual({ ok: false, failure: { code: 'archive-not-ours', folder } });
    expect(await readFile(path)).toEqual(before);
  });

  test('a file that is no database is not ours', async () => {
    await writeFile(join(folder, 'catalogue.db'), 'Dear diary, '.repeat(500));
    expect(await openArchive(folder, countingAmbient())).toEqual({ ok: false, failure: { code: 'archive-not-ours', folder } });
  });

  test('a file where the folder should be makes it unusable', async () => {
    const path = join(folder, 'plain');
    await writeFile(path, '');
    expect(await openArchive(path, countingAmbient())).toMatchObject({ ok: false, failure: { code: 'archive-folder-unusable' } });
  });

  test('a folder where the catalogue should be makes it unusable', async () => {
    await mkdir(join(folder, 'catalogue.db'));
    expect(await openArchive(folder, countingAmbient())).toMatchObject({ ok: false, failure: { code: 'archive-folder-unusable', folder } });
  });

  test('a catalogue with scrambled pages is damaged', async () => {
    const test = await TestArchive.open();
    test.close();
    const path = join(test.folder, 'catalogue.db');
    const bytes = await readFile(path);
    bytes.fill(0xa5, 100);
    await writeFile(path, bytes);
    expect(await openArchive(test.folder, countingAmbient())).toMatchObject({ ok: false, failure: { code: 'archive-damaged' } });
    await test.remove();
  });

  test('a closed archive is one plain file beside its folders', async () => {
    const test = await TestArchive.open();
    test.archive.specimens.create(specimenDraft());
    test.close();
    expect((await readdir(test.folder)).toSorted()).toEqual(['catalogue.db', 'incoming', 'originals', 'renditions']);
    await test.remove();
  });
});
