import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fail, unwrap } from '../../src/domain/result.ts';
import { readingDraft, SCALE, skinWithPhoto, specimenDraft, TestArchive } from '../support/testArchive.ts';

describe('a damaged record', () => {
  let test_: TestArchive;

  beforeEach(async () => {
    test_ = await TestArchive.open();
  });
  afterEach(() => test_.remove());

  /** Changes the catalogue behind the program's back. */
  async function tamper(sql: string): Promise<void> {
    test_.close();
    const database = new Database(join(test_.folder, 'catalogue.db'));
    database.exec(sql);
    database.close();
    await test_.reopen();
  }

  test.each([
    ['a document that is not JSON', "UPDATE reading SET landmarks = '{' WHERE pass = 1", 'a document in it is not JSON'],
    ['a landmark nobody knows', `UPDATE reading SET landmarks = '{"tail":{"state":"missing"}}' WHERE pass = 1`, 'landmarks'],
    ['a state nobody knows', `UPDATE reading SET landmarks = '{"carapace-front":{"state":"gone"}}' WHERE pass = 1`, 'landmarks'],
    ['a date that is none', "UPDATE reading SET created_at = 'yesterday' WHERE pass = 1", 'createdAt'],
  ])('%s is named and hides no other', async (_, sql, problem) => {
    const { photo } = skinWithPhoto(test_.archive);
    const bad = unwrap(test_.archive.readings.create(photo.id, readingDraft({ pass: 1 })));
    const good = unwrap(test_.archive.readings.create(photo.id, readingDraft({ pass: 2 })));
    await tamper(sql);
    const { archive } = test_;
    expect(archive.damaged()).toEqual([]);
    expect(archive.readings.ofPhoto(photo.id)).toEqual([good]);
    expect(archive.readings.get(bad.id)).toMatchObject({
      failure: { code: 'archive-damaged', detail: expect.stringContaining(`reading ${bad.id}`) },
    });
    expect(archive.damaged()).toEqual([expect.stringMatching(`reading ${bad.id}: .*${problem}`)]);
  });

  test('one animal among many leaves the list whole but for itself', async () => {
    for (const code of ['A', 'B', 'C']) unwrap(test_.archive.specimens.create(specimenDraft({ code })));
    await tamper("UPDATE specimen SET hatched_on = 'long ago' WHERE code = 'B'");
    expect(test_.archive.cabinet.entries().map(({ specimen }) => specimen.code)).toEqual(['A', 'C']);
    expect(test_.archive.damaged()).toEqual([expect.stringMatching(/^specimen .*hatchedOn/)]);
  });

  test('damaged marks can be made anew', async () => {
    const { photo } = skinWithPhoto(test_.archive);
    unwrap(test_.archive.calibrations.put(photo.id, 0, SCALE));
    await tamper("UPDATE calibration SET marks = '{}'");
    const { archive } = test_;
    expect(archive.calibrations.get(photo.id)).toMatchObject({ failure: { code: 'archive-damaged' } });
    expect(archive.calibrations.put(photo.id, 1, SCALE)).toMatchObject({ value: { marks: SCALE, version: 2 } });
    expect(archive.damaged()).toEqual([]);
  });

  test('a removal that cannot be read is gone, and stops nothing', async () => {
    const { photo } = skinWithPhoto(test_.archive);
    const removal = unwrap(test_.archive.removals.remove('photo', photo.id));
    await tamper("UPDATE removal SET body = '{'");
    const { archive } = test_;
    expect(archive.removals.restore(removal.id)).toEqual(fail({ code: 'removal-gone', removalId: removal.id }));
    expect(await archive.originals.sweep(0)).toEqual({ removed: 0 });
  });

  test('a signed determination can not be changed even behind the program', async () => {
    const { exuvia } = skinWithPhoto(test_.archive);
    expect(exuvia.id).toBeTruthy();
    const insert = `INSERT INTO determination (id, exuvia_id, sex, level, reader, read_on, checklist, pins, assessment, notes, signed_at)
      VALUES ('d', '${exuvia.id}', 'male', 'leaning', 'K', '2026-01-01', '{}', '[]', '{}', '', '2026-01-01T00:00:00.000Z');`;
    await expect(tamper(`${insert} UPDATE determination SET sex = 'female' WHERE id = 'd'`)).rejects.toThrow(
      'a signed determination is never changed',
    );
  });
});
