import { readdirSync, readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { APPLICATION_ID, openConnection } from '../../src/archive/catalogue/connection.ts';
import { copyCatalogue } from '../../src/archive/migrations/copyCatalogue.ts';
import { migrate } from '../../src/archive/migrations/migrate.ts';
import type { Migration } from '../../src/archive/migrations/migration.ts';
import { migrations } from '../../src/archive/migrations/migrations.ts';
import { openArchive } from '../../src/archive/open.ts';
import { unwrap } from '../../src/domain/result.ts';
import { countingAmbient, temporaryFolder } from '../support/testArchive.ts';

const SOURCES = join(import.meta.dirname, '../../src/archive/migrations');
const FIXTURES = join(import.meta.dirname, 'fixtures');
const KEPT = readdirSync(FIXTURES).filter((name) => /^v\d+\.sql$/.test(name));

function schemaOf(database: Database.Database): string {
  const rows = database
    .prepare<[], { sql: string }>(
      "SELECT sql FROM sqlite_schema WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY type DESC, name",
    )
    .all();
  return rows.map(({ sql }) => `${sql.replaceAll(/\n {6}/g, '\n')};\n`).join('\n');
}

describe('migrations', () => {
  let folder: string;
  let remove: () => Promise<void>;

  beforeEach(async () => {
    ({ folder, remove } = await temporaryFolder());
  });
  afterEach(() => remove());

  function fresh(): Database.Database {
    const database = openConnection(folder);
    migrate(database, migrations, () => undefined);
    return database;
  }

  test('they are numbered from one without a gap, as their files are', () => {
    const files = readdirSync(SOURCES).filter((name) => /^\d/.test(name));
    expect(files).toHaveLength(migrations.length);
    expect(files.toSorted()).toEqual(migrations.map(({ name }, index) => `${String(index + 1).padStart(4, '0')}-${name}.ts`));
  });

  test('the schema is the one in the snapshot', async () => {
    const database = fresh();
    await expect(schemaOf(database)).toMatchFileSnapshot('fixtures/schema.sql');
    database.close();
  });

  test('every table is strict and every reference says what becomes of it', () => {
    const database = fresh();
    const tables = database
      .prepare<[], { name: string; strict: number }>(
        "SELECT name, strict FROM pragma_table_list WHERE schema = 'main' AND name NOT LIKE 'sqlite_%'",
      )
      .all();
    expect(tables.length).toBeGreaterThan(10);
    for (const { name, strict } of tables) {
      expect([name, strict]).toEqual([name, 1]);
      for (const { on_delete } of database.pragma(`foreign_key_list(${name})`) as { on_delete: string }[]) {
        expect([name, on_delete]).toEqual([name, 'RESTRICT']);
      }
    }
    database.close();
  });

  test('a new catalogue carries our mark and the newest number', () => {
    const database = fresh();
    expect(database.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(database.pragma('user_version', { simple: true })).toBe(migrations.length);
    expect(database.pragma('foreign_keys', { simple: true })).toBe(1);
    database.close();
  });

  test('a step that throws leaves the catalogue as it was, and a copy from before', async () => {
    const database = fresh();
    database.prepare("INSERT INTO preference (id, body) VALUES (1, '{}')").run();
    const before = schemaOf(database);
    const bad: Migration = {
      name: 'bad',
      up(inside) {
        inside.exec('CREATE TABLE half (id INTEGER) STRICT; DELETE FROM preference;');
        throw new Error('the lights went out');
      },
    };
    const copies = join(folder, 'copies');
    const attempt = () =>
      migrate(database, [...migrations, bad], (version) => copyCatalogue(database, copies, version, '2026-01-01T12:00:00.000Z'));
    expect(attempt).toThrow('the lights went out');
    expect(attempt).toThrow('the lights went out');
    expect(schemaOf(database)).toBe(before);
    expect(database.pragma('user_version', { simple: true })).toBe(migrations.length);
    expect(database.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(database.prepare('SELECT count(*) FROM preference').pluck().get()).toBe(1);
    expect(database.pragma('integrity_check', { simple: true })).toBe('ok');
    database.close();

    const [name, ...others] = await readdir(copies);
    expect(others).toEqual([]);
    const copy = new Database(join(copies, String(name)), { readonly: true });
    expect(copy.prepare('SELECT body FROM preference').pluck().get()).toBe('{}');
    copy.close();
    unwrap(await openArchive(folder, countingAmbient())).close();
  });

  test('a step that leaves a reference without a target is taken back', () => {
    const database = fresh();
    const orphan: Migration = {
      name: 'orphan',
      up: (inside) => inside.exec("INSERT INTO calibration (photo_id, marks, version, changed_at) VALUES ('nobody', NULL, 1, 'x')"),
    };
    expect(() => migrate(database, [...migrations, orphan], () => undefined)).toThrow('archive-damaged');
    expect(database.prepare('SELECT count(*) FROM calibration').pluck().get()).toBe(0);
    database.close();
  });

  test('each released version has its fixture', () => {
    expect(KEPT).toHaveLength(migrations.length);
  });

  describe.each(KEPT)('from %s', (fixture) => {
    test('the schema ends up as a fresh one, and its records are all there', async () => {
      const scratch = fresh();
      const wanted = schemaOf(scratch);
      scratch.close();
      const old = await temporaryFolder();
      const database = new Database(join(old.folder, 'catalogue.db'));
      database.exec(readFileSync(join(FIXTURES, fixture), 'utf8'));
      database.close();

      const archive = unwrap(await openArchive(old.folder, countingAmbient()));
      const [entry, ...others] = archive.cabinet.entries();
      expect(others).toEqual([]);
      expect(entry?.specimen).toMatchObject({ code: 'T-1', taxon: 'Grammostola pulchra', version: 1 });
      expect(entry?.molts).toMatchObject([{ happenedFrom: '2026-01-10', outcomes: ['clean'] }]);
      expect(entry?.determinations).toMatchObject([{ sex: 'female', evidencePhotoIds: ['photo-1'] }]);
      expect(entry?.lastMeasured?.photos[0]?.readings[0]?.landmarks['carapace-front']).toEqual({
        state: 'placed',
        at: { xPx: 100.25, yPx: 50.5 },
      });
      expect(archive.readings.revisions('reading-1')).toHaveLength(1);
      expect(archive.preferences.get().theme).toBe('dark');
      expect(archive.observations.list().map(({ span }) => span)).toEqual(fixture === 'v001.sql' ? [] : [{ spanMm: 95, plusMinusMm: 5 }]);
      // Kept since the third version.
      expect(archive.printChecks.list().map(({ printer, barAMm }) => [printer, barAMm])).toEqual(
        fixture < 'v003.sql' ? [] : [['Study', 49.6]],
      );
      // Kept since the fifth version.
      expect(archive.forecasts.list().map(({ forecast }) => forecast.due?.ownIntervals)).toEqual(fixture < 'v005.sql' ? [] : [0]);
      // Kept since the sixth version.
      expect(unwrap(archive.calibrations.get('photo-1')).check).toEqual(
        fixture < 'v006.sql' ? undefined : expect.objectContaining({ kind: 'two-points', distanceMm: 30 }),
      );
      // Kept since the eighth version.
      expect(unwrap(archive.readings.get('reading-1')).earlierSeen).toBe(fixture < 'v008.sql' ? undefined : true);
      expect(archive.damaged()).toEqual([]);
      archive.close();

      const migrated = new Database(join(old.folder, 'catalogue.db'));
      expect(schemaOf(migrated)).toBe(wanted);
      migrated.close();
      await old.remove();
    });
  });
});
