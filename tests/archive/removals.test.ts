import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Archive } from '../../src/archive/archive.ts';
import { fail, succeed, unwrap } from '../../src/domain/result.ts';
import {
  determinationDraft,
  exuviaDraft,
  FIRST_ASSESSMENT,
  madeForecast,
  newPhoto,
  observationDraft,
  readingDraft,
  SCALE,
  skinWithPhoto,
  specimenDraft,
  TestArchive,
} from '../support/testArchive.ts';

const NOTHING = {
  specimens: 0,
  molts: 0,
  exuviae: 0,
  photos: 0,
  photosUnassigned: 0,
  readings: 0,
  determinations: 0,
  observations: 0,
  liveSigns: 0,
};

describe('removals', () => {
  let test_: TestArchive;
  let archive: Archive;

  beforeEach(async () => {
    test_ = await TestArchive.open();
    archive = test_.archive;
  });
  afterEach(() => test_.remove());

  /** One animal with all that can hang on it. */
  function fullAnimal(code = 'T-1', hash = 'a') {
    const skin = skinWithPhoto(archive, code, hash.repeat(64));
    const { specimen, exuvia, photo } = skin;
    const animal = { kind: 'animal', specimenId: specimen.id } as const;
    const portrait = unwrap(archive.photos.add(newPhoto({ sha256: `${hash}0`.repeat(32), subject: animal })));
    unwrap(archive.calibrations.put(photo.id, 0, SCALE));
    const reading = unwrap(archive.readings.create(photo.id, readingDraft()));
    const first = unwrap(archive.determinations.sign(exuvia.id, determinationDraft({ evidencePhotoIds: [photo.id] }), FIRST_ASSESSMENT));
    const second = unwrap(archive.determinations.sign(exuvia.id, determinationDraft({ supersedes: first.id }), FIRST_ASSESSMENT));
    unwrap(archive.determinations.withdraw(first.id, 'misread'));
    const observation = unwrap(archive.observations.append(specimen.id, observationDraft()));
    unwrap(archive.forecasts.keep(specimen.id, madeForecast(specimen.id)));
    return { ...skin, portrait, reading, observation, determinations: [first, second] };
  }

  /** Everything that can be seen of the archive, but for the versions of photos, which rise when they lose their subject. */
  function everything() {
    const photos = archive.photos.list({ unassigned: false });
    return {
      entries: archive.cabinet
        .entries()
        .map(({ lastMeasured, ...entry }) => ({ ...entry, measured: lastMeasured?.photos.map(({ readings }) => readings) })),
      skins: archive.specimens.list().map(({ id }) => archive.exuviae.ofSpecimen(id)),
      photos: photos.map(({ version, ...photo }) => photo),
      calibrations: photos.map(({ id }) => archive.calibrations.get(id)),
      readings: photos.map(({ id }) => archive.readings.ofPhoto(id)),
      observations: archive.observations.list(),
      forecasts: archive.forecasts.list(),
    };
  }

  test('a note is not put back where another has taken its place meanwhile, and waits among what was removed', () => {
    const { specimen } = fullAnimal();
    const started = (at: string) => observationDraft({ kind: 'turned-over', moment: { at, offset: '+00:00' } });
    const first = unwrap(archive.observations.append(specimen.id, started('2026-02-05T19:30:00.000Z')));
    const removal = unwrap(archive.removals.remove('observation', first.id));
    const second = unwrap(archive.observations.append(specimen.id, started('2026-02-05T20:30:00.000Z')));
    expect(archive.removals.restore(removal.id)).toEqual(fail({ code: 'molt-under-way', startedAt: second.moment }));
    expect(archive.removals.pending().map(({ id }) => id)).toEqual([removal.id]);
    expect(archive.observations.ofSpecimen(specimen.id).map(({ id }) => id)).not.toContain(first.id);
    unwrap(archive.removals.remove('observation', second.id));
    expect(archive.removals.restore(removal.id).ok).toBe(true);
  });

  test('an animal goes with its molts, skins and determinations; photos stay with their readings', () => {
    const { specimen, photo, portrait, reading } = fullAnimal();
    const taken = {
      specimens: 1,
      molts: 1,
      exuviae: 1,
      photos: 0,
      photosUnassigned: 2,
      readings: 0,
      determinations: 2,
      observations: 1,
      liveSigns: 0,
    };
    const before = everything();
    expect(archive.removals.preview('specimen', specimen.id)).toEqual(succeed(taken));
    expect(everything()).toEqual(before);
    expect(archive.removals.remove('specimen', specimen.id)).toMatchObject({ value: taken });
    expect(archive.cabinet.entries()).toEqual([]);
    const left = archive.photos.list({ unassigned: true });
    expect(left.map(({ id, subject, version }) => ({ id, subject, version }))).toEqual([
      { id: portrait.id, subject: { kind: 'none' }, version: 2 },
      { id: photo.id, subject: { kind: 'none' }, version: 2 },
    ]);
    expect(archive.readings.ofPhoto(photo.id)).toEqual([reading]);
  });

  test.each(['specimen', 'molt', 'exuvia', 'reading', 'observation'] as const)('a %s comes back exactly as it was', (kind) => {
    fullAnimal('T-2', 'b');
    const records = fullAnimal();
    const before = everything();
    const removal = unwrap(archive.removals.remove(kind, records[kind].id));
    expect(everything()).not.toEqual(before);
    expect(archive.removals.restore(removal.id)).toEqual(succeed({ photosElsewhere: [] }));
    expect(everything()).toEqual(before);
    expect(archive.removals.restore(removal.id)).toEqual(fail({ code: 'removal-gone', removalId: removal.id }));
  });

  test('what can be put back is listed, newest first, until it was put back', () => {
    const { specimen, reading, molt } = fullAnimal('T-7');
    const first = unwrap(archive.removals.remove('reading', reading.id));
    const second = unwrap(archive.removals.remove('molt', molt.id));
    const days = { happenedFrom: molt.happenedFrom, happenedTo: molt.happenedTo };
    expect(archive.removals.pending()).toMatchObject([
      { ...second, thing: { kind: 'molt', code: specimen.code, ...days } },
      { ...first, thing: { kind: 'reading', pass: reading.pass } },
    ]);
    unwrap(archive.removals.restore(second.id));
    expect(archive.removals.pending().map(({ id }) => id)).toEqual([first.id]);
  });

  test('a photo goes with its marks and readings and comes back with them', () => {
    const { photo } = skinWithPhoto(archive);
    unwrap(archive.calibrations.put(photo.id, 0, SCALE));
    unwrap(archive.readings.create(photo.id, readingDraft()));
    const before = everything();
    const removal = unwrap(archive.removals.remove('photo', photo.id));
    expect(removal).toEqual({ ...NOTHING, photos: 1, readings: 1, id: removal.id });
    expect(archive.photos.count()).toBe(0);
    unwrap(archive.removals.restore(removal.id));
    expect(everything()).toEqual(before);
    expect(archive.calibrations.revisions(photo.id)).toHaveLength(1);
  });

  test('a photo that is evidence stays', () => {
    const { photo } = fullAnimal();
    const refused = fail({ code: 'photo-in-use', photoId: photo.id, determinations: 1, liveSigns: 0 });
    expect(archive.removals.preview('photo', photo.id)).toEqual(refused);
    expect(archive.removals.remove('photo', photo.id)).toEqual(refused);
    expect(archive.photos.get(photo.id).ok).toBe(true);
  });

  test.each(['specimen', 'molt', 'exuvia', 'photo', 'reading'] as const)('a %s that is not there is named', (kind) => {
    expect(archive.removals.remove(kind, 'nobody')).toEqual(fail({ code: 'not-found', what: kind, id: 'nobody' }));
  });

  describe('when the place was filled meanwhile', () => {
    test('the code of an animal', () => {
      const { specimen } = fullAnimal();
      const removal = unwrap(archive.removals.remove('specimen', specimen.id));
      const other = unwrap(archive.specimens.create(specimenDraft({ code: 't-1' })));
      expect(archive.removals.restore(removal.id)).toEqual(fail({ code: 'code-taken', specimenCode: 'T-1' }));
      unwrap(archive.specimens.update(other.id, 1, specimenDraft({ code: 'T-9' })));
      expect(archive.removals.restore(removal.id)).toEqual(succeed({ photosElsewhere: [] }));
    });

    test('the skin of a molt', () => {
      const { exuvia, molt } = fullAnimal();
      const removal = unwrap(archive.removals.remove('exuvia', exuvia.id));
      unwrap(archive.exuviae.create(molt.id, exuviaDraft()));
      expect(archive.removals.restore(removal.id)).toEqual(fail({ code: 'skin-already-recorded', moltId: molt.id }));
    });

    test('what it hangs on is to be put back first', () => {
      const { specimen, molt } = fullAnimal();
      const before = everything();
      const first = unwrap(archive.removals.remove('molt', molt.id));
      const second = unwrap(archive.removals.remove('specimen', specimen.id));
      expect(archive.removals.restore(first.id)).toEqual(fail({ code: 'removal-out-of-order', removalId: first.id }));
      unwrap(archive.removals.restore(second.id));
      unwrap(archive.removals.restore(first.id));
      expect(everything()).toEqual(before);
    });

    test('a photo given to another animal stays there', () => {
      const { specimen, portrait } = fullAnimal();
      const removal = unwrap(archive.removals.remove('specimen', specimen.id));
      const other = unwrap(archive.specimens.create(specimenDraft({ code: 'T-9' })));
      const elsewhere = { kind: 'animal', specimenId: other.id } as const;
      unwrap(archive.photos.update(portrait.id, 2, { ...newPhoto(), subject: elsewhere }));
      const restored = unwrap(archive.removals.restore(removal.id));
      expect(unwrap(archive.photos.get(portrait.id)).subject).toEqual(elsewhere);
      expect(restored.photosElsewhere).toEqual([{ originalName: portrait.originalName, code: 'T-9' }]);
    });

    test('a photo given to another skin is told with the animal of that skin', () => {
      const { specimen, photo } = fullAnimal();
      const removal = unwrap(archive.removals.remove('specimen', specimen.id));
      const other = skinWithPhoto(archive, 'T-9', 'c'.repeat(64));
      unwrap(archive.photos.update(photo.id, 2, { ...newPhoto(), subject: { kind: 'skin', exuviaId: other.exuvia.id } }));
      expect(unwrap(archive.removals.restore(removal.id)).photosElsewhere).toEqual([{ originalName: photo.originalName, code: 'T-9' }]);
    });

    test('a photo imported again gets its old readings and marks', () => {
      const { photo, exuvia } = skinWithPhoto(archive);
      const marks = unwrap(archive.calibrations.put(photo.id, 0, SCALE));
      const reading = unwrap(archive.readings.create(photo.id, readingDraft()));
      const removal = unwrap(archive.removals.remove('photo', photo.id));
      const again = unwrap(archive.photos.add(newPhoto({ sha256: photo.sha256 })));
      unwrap(archive.removals.restore(removal.id));
      expect(archive.photos.count()).toBe(1);
      expect(unwrap(archive.photos.get(again.id)).subject).toEqual({ kind: 'skin', exuviaId: exuvia.id });
      expect(archive.readings.ofPhoto(again.id)).toEqual([{ ...reading, photoId: again.id }]);
      expect(archive.calibrations.get(again.id)).toEqual(succeed({ ...marks, photoId: again.id }));
      expect(archive.calibrations.put(again.id, 1, null)).toMatchObject({ value: { version: 2 } });
    });

    test('marks made on a photo imported again stay', () => {
      const { photo } = skinWithPhoto(archive);
      unwrap(archive.calibrations.put(photo.id, 0, SCALE));
      const removal = unwrap(archive.removals.remove('photo', photo.id));
      const again = unwrap(archive.photos.add(newPhoto({ sha256: photo.sha256 })));
      const later = unwrap(archive.calibrations.put(again.id, 0, { ...SCALE, distanceMm: 40 }));
      unwrap(archive.removals.restore(removal.id));
      expect(archive.calibrations.get(again.id)).toEqual(succeed(later));
    });
  });

  test('the next opening makes removals final, saved states included', async () => {
    const { specimen, photo, reading } = fullAnimal();
    const animal = unwrap(archive.removals.remove('specimen', specimen.id));
    const picture = unwrap(archive.removals.remove('photo', photo.id));
    archive = await test_.reopen();
    for (const { id } of [animal, picture]) expect(archive.removals.restore(id)).toEqual(fail({ code: 'removal-gone', removalId: id }));
    expect(archive.removals.pending()).toEqual([]);
    expect(archive.readings.revisions(reading.id)).toEqual([]);
    test_.close();
    const database = new Database(join(test_.folder, 'catalogue.db'));
    expect(database.prepare('SELECT count(*) FROM revision').pluck().get()).toBe(0);
    const left = { rows: { photo: [{ sha256: photo.sha256 }] } };
    expect(
      database
        .prepare<[], string>('SELECT body FROM removal')
        .pluck()
        .all()
        .map((body) => JSON.parse(body)),
    ).toEqual([left]);
    database.close();
  });

  test('the sample cabinet goes and leaves what is the keeper’s', () => {
    const own = fullAnimal();
    const before = everything();
    const sample = unwrap(archive.specimens.create(specimenDraft({ code: 'S-1' }), { sample: true }));
    const animal = { kind: 'animal', specimenId: sample.id } as const;
    unwrap(archive.photos.add(newPhoto({ sha256: 'c'.repeat(64), sample: true, subject: animal })));
    const leaning = unwrap(archive.photos.add(newPhoto({ sha256: 'd'.repeat(64), sample: true, subject: animal })));
    const proof = determinationDraft({ evidencePhotoIds: [leaning.id] });
    const withSample = unwrap(archive.determinations.sign(own.exuvia.id, proof, FIRST_ASSESSMENT));
    const full = everything();
    const removal = unwrap(archive.removals.removeSamples());
    expect(removal).toEqual({ ...NOTHING, specimens: 1, photos: 1, photosUnassigned: 1, id: removal.id });
    expect(archive.specimens.count()).toEqual({ all: 1, samples: 0 });
    expect(archive.determinations.get(withSample.id)).toEqual(succeed(withSample));
    expect(everything().entries).toHaveLength(before.entries.length);
    unwrap(archive.removals.restore(removal.id));
    expect(everything()).toEqual(full);
  });
});
