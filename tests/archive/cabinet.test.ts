import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { cabinetIn } from '../../src/archive/catalogue/cabinet.ts';
import { calibrationsIn } from '../../src/archive/catalogue/calibrations.ts';
import { type Catalogue, catalogueOn } from '../../src/archive/catalogue/catalogue.ts';
import { openConnection } from '../../src/archive/catalogue/connection.ts';
import type { RecordContext } from '../../src/archive/catalogue/context.ts';
import { determinationsIn } from '../../src/archive/catalogue/determinations.ts';
import { exuviaeIn } from '../../src/archive/catalogue/exuviae.ts';
import { importsIn } from '../../src/archive/catalogue/imports.ts';
import { moltsIn } from '../../src/archive/catalogue/molts.ts';
import { photosIn } from '../../src/archive/catalogue/photos.ts';
import { readingsIn } from '../../src/archive/catalogue/readings.ts';
import { specimensIn } from '../../src/archive/catalogue/specimens.ts';
import { migrate } from '../../src/archive/migrations/migrate.ts';
import { migrations } from '../../src/archive/migrations/migrations.ts';
import { fail, succeed, unwrap } from '../../src/domain/result.ts';
import {
  countingAmbient,
  determinationDraft,
  exuviaDraft,
  FIRST_ASSESSMENT,
  moltDraft,
  newPhoto,
  readingDraft,
  SCALE,
  skinWithPhoto,
  specimenDraft,
  TestArchive,
  temporaryFolder,
} from '../support/testArchive.ts';

const ANIMALS = 1_000;

describe('the cabinet', () => {
  test('tells for each animal its molts, its determinations, its last measured skin and the photo that stands for it', async () => {
    const test_ = await TestArchive.open();
    const { archive } = test_;
    const bare = unwrap(archive.specimens.create(specimenDraft({ code: 'A' })));
    const { specimen, molt, exuvia, photo } = skinWithPhoto(archive, 'B');
    const calibration = unwrap(archive.calibrations.put(photo.id, 0, SCALE));
    const first = unwrap(archive.readings.create(photo.id, readingDraft()));
    const second = unwrap(archive.readings.create(photo.id, readingDraft({ pass: 2 })));
    const third = unwrap(
      archive.readings.create(photo.id, readingDraft({ pass: 3, landmarks: { 'carapace-front': { state: 'not-visible' } } })),
    );
    const again = unwrap(archive.photos.add(newPhoto({ sha256: 'd'.repeat(64), subject: { kind: 'skin', exuviaId: exuvia.id } })));
    const calibrationAgain = unwrap(archive.calibrations.put(again.id, 0, SCALE));
    const fourth = unwrap(archive.readings.create(again.id, readingDraft()));
    const determination = unwrap(archive.determinations.sign(exuvia.id, determinationDraft(), FIRST_ASSESSMENT));
    const later = unwrap(archive.molts.create(specimen.id, moltDraft({ happenedFrom: '2026-05-01', happenedTo: '2026-05-01' })));
    const laterSkin = unwrap(archive.exuviae.create(later.id, exuviaDraft()));
    const unmeasured = unwrap(archive.photos.add(newPhoto({ sha256: 'e'.repeat(64), subject: { kind: 'skin', exuviaId: laterSkin.id } })));
    unwrap(archive.readings.create(unmeasured.id, readingDraft()));

    const entry = {
      specimen,
      molts: [molt, later],
      determinations: [determination],
      liveSigns: [],
      adultNotes: [],
      stageNotes: [],
      lastMeasured: {
        moltId: molt.id,
        photos: [
          { photo, calibration, readings: [first, second, third] },
          { photo: again, calibration: calibrationAgain, readings: [fourth] },
        ],
      },
      coverPhotoId: unmeasured.id,
    };
    const empty = {
      specimen: bare,
      molts: [],
      determinations: [],
      liveSigns: [],
      adultNotes: [],
      stageNotes: [],
      lastMeasured: null,
      coverPhotoId: null,
    };
    expect(archive.cabinet.entries()).toEqual([empty, entry]);
    expect(archive.cabinet.entry(specimen.id)).toEqual(succeed(entry));
    expect(archive.cabinet.entry('nobody')).toEqual(fail({ code: 'not-found', what: 'specimen', id: 'nobody' }));

    const portrait = unwrap(archive.photos.add(newPhoto({ sha256: 'f'.repeat(64), subject: { kind: 'animal', specimenId: specimen.id } })));
    expect(unwrap(archive.cabinet.entry(specimen.id)).coverPhotoId).toBe(portrait.id);
    unwrap(archive.calibrations.put(photo.id, 1, null));
    unwrap(archive.calibrations.put(again.id, 1, null));
    expect(unwrap(archive.cabinet.entry(specimen.id)).lastMeasured).toBeNull();
    await test_.remove();
  });
});

describe('statements on a large catalogue', () => {
  const statements = new Set<string>();
  let context: RecordContext;
  let close: () => Promise<void>;

  beforeAll(async () => {
    const { folder, remove } = await temporaryFolder();
    const database = openConnection(folder);
    migrate(database, migrations, () => undefined);
    const catalogue = catalogueOn(database, folder);
    const recording: Catalogue = {
      ...catalogue,
      one: (sql, bindings) => {
        statements.add(sql);
        return catalogue.one(sql, bindings);
      },
      all: (sql, bindings) => {
        statements.add(sql);
        return catalogue.all(sql, bindings);
      },
    };
    context = { catalogue: recording, ambient: countingAmbient(), damage: new Map(), genera: [] };
    unwrap(catalogue.atomically(() => succeed(fill())));
    database.exec('ANALYZE');
    close = async () => {
      database.close();
      await remove();
    };
  });
  afterAll(() => close());

  function fill(): void {
    const { specimens, molts, exuviae, photos, calibrations, readings } = {
      specimens: specimensIn(context),
      molts: moltsIn(context),
      exuviae: exuviaeIn(context),
      photos: photosIn(context),
      calibrations: calibrationsIn(context),
      readings: readingsIn(context),
    };
    for (let index = 0; index < ANIMALS; index++) {
      const { id } = unwrap(specimens.create(specimenDraft({ code: `T-${index}` })));
      for (const day of ['2025-01-01', '2026-01-01']) {
        const molt = unwrap(molts.create(id, moltDraft({ happenedFrom: day, happenedTo: day })));
        const { id: exuviaId } = unwrap(exuviae.create(molt.id, exuviaDraft()));
        const sha256 = `${day.slice(0, 4)}${String(index).padStart(60, '0')}`;
        const photo = unwrap(photos.add(newPhoto({ sha256, subject: { kind: 'skin', exuviaId } })));
        unwrap(calibrations.put(photo.id, 0, SCALE));
        unwrap(readings.create(photo.id, readingDraft()));
      }
    }
  }

  test('all animals are read in a fixed number of statements', () => {
    statements.clear();
    const entries = cabinetIn(context).entries();
    expect(entries).toHaveLength(ANIMALS);
    expect(entries.every(({ lastMeasured, molts }) => lastMeasured !== null && molts.length === 2)).toBe(true);
    expect(statements.size).toBe(10);
  });

  test('what the pages ask for one record at a time is found by an index, never by reading a whole table', () => {
    statements.clear();
    const [specimen] = specimensIn(context).list();
    const specimenId = specimen?.id ?? '';
    const [skin] = exuviaeIn(context).ofSpecimen(specimenId);
    const exuviaId = skin?.id ?? '';
    const [photo] = photosIn(context).ofExuvia(exuviaId);
    const photoId = photo?.id ?? '';
    expect([specimenId, exuviaId, photoId].every((id) => id !== '')).toBe(true);
    statements.clear();
    specimensIn(context).get(specimenId);
    specimensIn(context).revisions(specimenId);
    cabinetIn(context).entry(specimenId);
    moltsIn(context).ofSpecimen(specimenId);
    moltsIn(context).get(skin?.moltId ?? '');
    exuviaeIn(context).ofMolt(skin?.moltId ?? '');
    exuviaeIn(context).ofSpecimen(specimenId);
    photosIn(context).ofExuvia(exuviaId);
    photosIn(context).ofSkinsOf(specimenId);
    photosIn(context).ofAnimal(specimenId);
    photosIn(context).bySha256(photo?.sha256 ?? '');
    photosIn(context).list({ unassigned: true });
    calibrationsIn(context).get(photoId);
    calibrationsIn(context).ofSkinsOf(specimenId);
    calibrationsIn(context).revisions(photoId);
    readingsIn(context).ofPhoto(photoId);
    readingsIn(context).ofSkinsOf(specimenId);
    determinationsIn(context).ofSpecimen(specimenId);
    determinationsIn(context).ofExuvia(exuviaId);
    importsIn(context).unfinished();
    expect(statements.size).toBeGreaterThan(20);

    const everywhere = [...statements].flatMap((sql) => plan(sql).map((step) => `${step} <- ${sql}`));
    const scans = everywhere.filter((step) =>
      /^SCAN (?!json_each|value|photo USING INDEX photo_unassigned|planned_file USING INDEX planned_file_waiting)/.test(step),
    );
    expect(scans).toEqual([]);
    expect(everywhere.filter((step) => step.startsWith('SEARCH')).length).toBeGreaterThan(20);
  });

  function plan(sql: string): readonly string[] {
    const bindings = Object.fromEntries([...sql.matchAll(/:(\w+)/g)].map(([, name]) => [String(name), name === 'ids' ? '[]' : '']));
    return context.catalogue.all(`EXPLAIN QUERY PLAN ${sql}`, bindings).map((row) => String(row['detail']));
  }
});
