import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { openArchive } from '../../src/archive/open.ts';
import { unwrap } from '../../src/domain/result.ts';
import { countingAmbient, determinationDraft, FIRST_ASSESSMENT, temporaryFolder } from '../support/testArchive.ts';

const LAST_OF_FIRST_FORM = join(import.meta.dirname, 'fixtures', 'v003.sql');

const INSERT = `INSERT INTO determination (id, exuvia_id, sex, level, reader, read_on, checklist, notes, supersedes, signed_at, withdrawn_at,
  withdrawn_reason) VALUES (:id, 'exuvia-1', :sex, :level, 'A. Keeper', '2026-01-21', :checklist, '', :supersedes, '2026-06-15T13:00:00.000Z',
  iif(:withdrawn IS NULL, NULL, '2026-06-16T13:00:00.000Z'), :withdrawn)`;

/** As the program wrote them before the evidence model: an unsexed one, one of bulbs alone, a correction that was withdrawn. */
test('determinations of the first form keep their answers and are marked as such', async () => {
  const { folder, remove } = await temporaryFolder();
  const database = new Database(join(folder, 'catalogue.db'));
  database.exec(readFileSync(LAST_OF_FIRST_FORM, 'utf8'));
  const first = JSON.parse(String(database.prepare('SELECT checklist FROM determination').pluck().get())) as Record<string, unknown>;
  const put = (id: string, part: { sex: string; level: string | null; checklist: object; supersedes?: string; withdrawn?: string }) =>
    database.prepare(INSERT).run({ supersedes: null, withdrawn: null, ...part, id, checklist: JSON.stringify(part.checklist) });
  const blank = { ...first, receptaclesSeen: 'not-looked', fusillaeOutsideSeen: 'not-looked', uterusExternusSeen: 'not-looked' };
  put('unsexed', { sex: 'unsexed', level: null, checklist: { ...first, magnification: null, legSpanMm: null } });
  put('bulbs', { sex: 'male', level: 'strong', checklist: { ...blank, palpalBulbsOnAnimal: 'yes', legSpanMm: 20 } });
  put('corrected', { sex: 'female', level: 'leaning', checklist: first, supersedes: 'determination-1', withdrawn: 'wrong vial' });
  put('gone', { sex: 'unsexed', level: null, checklist: first });
  database.prepare("DELETE FROM determination WHERE id = 'gone'").run();
  const stored = database.prepare("SELECT checklist FROM determination WHERE id = 'bulbs'").pluck().get();
  const lastOrdinal = database.prepare("SELECT seq FROM sqlite_sequence WHERE name = 'determination'").pluck().get();
  database.close();

  const archive = unwrap(await openArchive(folder, countingAmbient()));
  const made = archive.recordsMade();
  const found = archive.determinations.ofSpecimen('specimen-1');
  expect(archive.damaged()).toEqual([]);
  expect(
    found.map(({ id, assessment: { modelVersion, method, sizeClass, towards, band } }) => [
      id,
      modelVersion,
      method,
      sizeClass,
      towards,
      band,
    ]),
  ).toEqual([
    ['determination-1', '0', 'skin-loupe', 'D', 'female', null],
    ['unsexed', '0', 'skin-unstated', null, null, null],
    ['bulbs', '0', 'animal', 'B', 'male', null],
    ['corrected', '0', 'skin-loupe', 'D', 'female', null],
  ]);
  expect(found[0]).toMatchObject({ evidencePhotoIds: ['photo-1'], pins: [], level: 'probable' });
  expect(found[0]?.checklist).toMatchObject({ ...first, flapLifts: 'not-looked', carapaceLengthMm: null, secondReaderBlind: 'not-looked' });
  expect(found[3]).toMatchObject({ supersedes: 'determination-1', withdrawn: { reason: 'wrong vial' } });

  // An ordinal is never given twice, though the last one was deleted before the migration.
  unwrap(archive.determinations.sign('exuvia-1', determinationDraft(), FIRST_ASSESSMENT));
  expect(archive.recordsMade()).toBe(made + 1);
  archive.close();
  const migrated = new Database(join(folder, 'catalogue.db'));
  expect(migrated.prepare('SELECT max(ordinal) FROM determination').pluck().get()).toBe(Number(lastOrdinal) + 1);
  expect(migrated.prepare("SELECT checklist FROM determination WHERE id = 'bulbs'").pluck().get()).toBe(stored);
  expect(() => migrated.prepare("UPDATE determination SET assessment = '{}'").run()).toThrow('never changed');
  migrated.close();
  await remove();
});
