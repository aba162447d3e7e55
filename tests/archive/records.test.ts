import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Archive } from '../../src/archive/archive.ts';
import { refuse } from '../../src/domain/failure.ts';
import { fail, succeed, unwrap } from '../../src/domain/result.ts';
import {
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
} from '../support/testArchive.ts';

describe('records', () => {
  let test_: TestArchive;
  let archive: Archive;

  beforeEach(async () => {
    test_ = await TestArchive.open();
    archive = test_.archive;
  });
  afterEach(() => test_.remove());

  describe('specimens', () => {
    const full = specimenDraft({
      name: 'Bramble',
      origin: "Breeder's table",
      eggSacGroup: 'E-7',
      acquiredOn: '2025-02-01',
      acquiredInstar: 4,
      hatchedOn: '2024-08-30',
      habit: 'fossorial',
      status: 'on-loan',
      notes: 'Línea\n2',
    });

    test('come back as they were written, also after closing', async () => {
      const created = unwrap(archive.specimens.create(full, { sample: true }));
      expect(created).toMatchObject({ ...full, version: 1, sample: true });
      const reopened = await test_.reopen();
      expect(reopened.specimens.get(created.id)).toEqual(succeed(created));
      expect(reopened.specimens.count()).toEqual({ all: 1, samples: 1 });
    });

    test('a code is taken whatever its letter case, also beyond ASCII', () => {
      unwrap(archive.specimens.create(specimenDraft({ code: 'Ä-1' })));
      expect(archive.specimens.create(specimenDraft({ code: 'ä-1' }))).toEqual(fail({ code: 'code-taken', specimenCode: 'ä-1' }));
      const other = unwrap(archive.specimens.create(specimenDraft({ code: 'B' })));
      expect(archive.specimens.update(other.id, 1, specimenDraft({ code: 'ä-1' }))).toMatchObject({ failure: { code: 'code-taken' } });
      expect(archive.specimens.update(other.id, 1, specimenDraft({ code: 'b' }))).toMatchObject({ value: { code: 'b', version: 2 } });
    });

    test('are listed by code', () => {
      for (const code of ['b', 'C', 'A']) unwrap(archive.specimens.create(specimenDraft({ code })));
      expect(archive.specimens.list().map(({ code }) => code)).toEqual(['A', 'b', 'C']);
    });

    test('a change based on an older version is refused and changes nothing', () => {
      const { id } = unwrap(archive.specimens.create(full));
      const second = unwrap(archive.specimens.update(id, 1, { ...full, notes: 'second' }));
      expect(archive.specimens.update(id, 1, { ...full, notes: 'third' })).toEqual(
        fail({ code: 'changed-meanwhile', what: 'specimen', id, version: 2 }),
      );
      expect(archive.specimens.get(id)).toEqual(succeed(second));
      expect(archive.specimens.revisions(id).map(({ version, body }) => [version, body.notes])).toEqual([
        [1, full.notes],
        [2, 'second'],
      ]);
      expect(archive.specimens.update('nobody', 1, full)).toEqual(fail({ code: 'not-found', what: 'specimen', id: 'nobody' }));
    });
  });

  describe('molts and skins', () => {
    test('molts of one animal are listed oldest first, whatever the order of writing', () => {
      const { id } = unwrap(archive.specimens.create(specimenDraft()));
      for (const day of ['2026-03-01', '2025-01-01', '2026-01-01']) {
        unwrap(archive.molts.create(id, moltDraft({ happenedFrom: day, happenedTo: day })));
      }
      expect(archive.molts.ofSpecimen(id).map((molt) => molt.happenedFrom)).toEqual(['2025-01-01', '2026-01-01', '2026-03-01']);
    });

    test('a molt keeps all it was given and each of its states', () => {
      const { id: specimenId } = unwrap(archive.specimens.create(specimenDraft()));
      const draft = moltDraft({ instarShed: 6, position: 'on-side', outcomes: ['slow', 'limb-lost'], notes: 'left II' });
      const molt = unwrap(archive.molts.create(specimenId, draft));
      expect(molt).toMatchObject({ ...draft, specimenId, version: 1 });
      const changed = unwrap(archive.molts.update(molt.id, 1, { ...draft, outcomes: [] }));
      expect(changed).toMatchObject({ outcomes: [], version: 2 });
      expect(archive.molts.update(molt.id, 1, draft)).toMatchObject({ failure: { code: 'changed-meanwhile', what: 'molt', version: 2 } });
      expect(archive.molts.revisions(molt.id).map(({ body }) => body.outcomes)).toEqual([draft.outcomes, []]);
      expect(archive.molts.create('nobody', draft)).toEqual(fail({ code: 'not-found', what: 'specimen', id: 'nobody' }));
    });

    test('one molt leaves one skin', () => {
      const { specimen, molt, exuvia } = skinWithPhoto(archive);
      expect(archive.exuviae.create(molt.id, exuviaDraft())).toEqual(fail({ code: 'skin-already-recorded', moltId: molt.id }));
      expect(archive.exuviae.ofMolt(molt.id)).toEqual(exuvia);
      expect(archive.exuviae.ofMolt('nobody')).toBeNull();
      expect(archive.exuviae.ofSpecimen(specimen.id)).toEqual([exuvia]);
      const lost = exuviaDraft({ recovered: false, grade: null, completeness: null, storagePlace: null });
      expect(archive.exuviae.update(exuvia.id, 1, lost)).toMatchObject({ value: { ...lost, version: 2 } });
      expect(archive.exuviae.revisions(exuvia.id)).toHaveLength(2);
      expect(archive.exuviae.create('nobody', lost)).toEqual(fail({ code: 'not-found', what: 'molt', id: 'nobody' }));
    });
  });

  describe('photos', () => {
    test('come back with what the camera wrote', () => {
      const photo = unwrap(archive.photos.add(newPhoto()));
      expect(photo).toMatchObject({ ...newPhoto(), version: 1 });
      expect(archive.photos.get(photo.id)).toEqual(succeed(photo));
      expect(archive.photos.bySha256(photo.sha256)).toEqual(photo);
      expect(archive.photos.bySha256('b'.repeat(64))).toBeNull();
      const silent = { takenAt: null, camera: null, focalLengthMm: null, focalLength35Mm: null, orientation: 1 };
      const other = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64), facts: silent, takenOn: null })));
      expect(other).toMatchObject({ facts: silent, takenOn: null });
    });

    test('belong to a skin, an animal or nothing', () => {
      const { specimen, exuvia, photo } = skinWithPhoto(archive);
      expect(archive.photos.list({ unassigned: true })).toEqual([]);
      const loose = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64) })));
      expect(archive.photos.list({ unassigned: true })).toEqual([loose]);
      expect(archive.photos.list({ unassigned: false })).toEqual([loose, photo]);
      expect(archive.photos.ofExuvia(exuvia.id)).toEqual([photo]);
      expect(archive.photos.ofSkinsOf(specimen.id)).toEqual([photo]);
      const { view, takenOn, notes } = loose;
      const animal = unwrap(
        archive.photos.update(loose.id, 1, { subject: { kind: 'animal', specimenId: specimen.id }, view, takenOn, notes }),
      );
      expect(archive.photos.ofAnimal(specimen.id)).toEqual([animal]);
      expect(archive.photos.list({ unassigned: true })).toEqual([]);
      expect(archive.photos.count()).toBe(2);
    });

    test('a subject that does not exist is named', () => {
      const photo = newPhoto({ subject: { kind: 'skin', exuviaId: 'nobody' } });
      expect(archive.photos.add(photo)).toEqual(fail({ code: 'not-found', what: 'exuvia', id: 'nobody' }));
      const added = unwrap(archive.photos.add(newPhoto()));
      const draft = { ...newPhoto(), subject: { kind: 'animal', specimenId: 'nobody' } as const };
      expect(archive.photos.update(added.id, 1, draft)).toEqual(fail({ code: 'not-found', what: 'specimen', id: 'nobody' }));
      expect(archive.photos.update(added.id, 7, newPhoto())).toMatchObject({ failure: { code: 'changed-meanwhile', version: 1 } });
    });
  });

  describe('calibrations and readings', () => {
    test('a photo starts at version 0 without marks, and keeps every state', () => {
      const { photo, specimen } = skinWithPhoto(archive);
      expect(archive.calibrations.get(photo.id)).toMatchObject({ value: { photoId: photo.id, marks: null, version: 0 } });
      expect(archive.calibrations.ofSkinsOf(specimen.id)).toEqual([]);
      expect(archive.calibrations.put(photo.id, 0, SCALE)).toMatchObject({ value: { marks: SCALE, version: 1 } });
      expect(archive.calibrations.put(photo.id, 0, SCALE)).toMatchObject({ failure: { code: 'changed-meanwhile', version: 1 } });
      const removed = unwrap(archive.calibrations.put(photo.id, 1, null));
      expect(removed).toMatchObject({ marks: null, version: 2 });
      expect(archive.calibrations.ofSkinsOf(specimen.id)).toEqual([removed]);
      expect(archive.calibrations.revisions(photo.id).map(({ version, body }) => [version, body])).toEqual([
        [1, SCALE],
        [2, null],
      ]);
      expect(archive.calibrations.put('nobody', 0, SCALE)).toEqual(fail({ code: 'not-found', what: 'photo', id: 'nobody' }));
      expect(archive.calibrations.put('nobody', 3, SCALE)).toEqual(fail({ code: 'not-found', what: 'photo', id: 'nobody' }));
    });

    test('a reading keeps sub-pixel positions to the last bit and every state', () => {
      const { photo, specimen } = skinWithPhoto(archive);
      const at = { xPx: 0.1 + 0.2, yPx: Math.PI * 1000 };
      const first = readingDraft({
        carapaceHeight: { kind: 'entered', heightMm: 6, standardUncertaintyMm: 0.5 },
        landmarks: { 'leg-L1-tarsus-tip': { state: 'regenerated', at }, 'carapace-left': { state: 'missing' } },
      });
      const reading = unwrap(archive.readings.create(photo.id, first));
      expect(reading).toMatchObject({ ...first, photoId: photo.id, version: 1 });
      expect(archive.readings.repeated()).toEqual([]);
      const second = unwrap(archive.readings.update(reading.id, 1, readingDraft()));
      expect(second).toMatchObject({ ...readingDraft(), version: 2, createdAt: reading.createdAt });
      expect(second.changedAt > reading.changedAt).toBe(true);
      expect(archive.readings.update(reading.id, 1, first)).toMatchObject({ failure: { code: 'changed-meanwhile', version: 2 } });
      expect(archive.readings.revisions(reading.id).map(({ body }) => body)).toEqual([first, readingDraft()]);
      const other = unwrap(archive.readings.create(photo.id, readingDraft({ pass: 2 })));
      expect(archive.readings.repeated()).toEqual([second, other]);
      expect(archive.readings.ofPhoto(photo.id)).toEqual([second, other]);
      expect(archive.readings.ofSkinsOf(specimen.id)).toEqual([second, other]);
      expect(archive.readings.create('nobody', first)).toEqual(fail({ code: 'not-found', what: 'photo', id: 'nobody' }));
    });

    test('a pass keeps that the ones before it were looked at', () => {
      const { photo } = skinWithPhoto(archive);
      const blind = unwrap(archive.readings.create(photo.id, readingDraft({ pass: 2 })));
      expect(blind).not.toHaveProperty('earlierSeen');
      const seen = readingDraft({ pass: 2, earlierSeen: true });
      expect(unwrap(archive.readings.update(blind.id, 1, seen)).earlierSeen).toBe(true);
      expect(archive.readings.ofPhoto(photo.id)).toMatchObject([{ earlierSeen: true }]);
      expect(archive.readings.revisions(blind.id).map(({ body }) => body?.earlierSeen)).toEqual([undefined, true]);
      expect(unwrap(archive.readings.create(photo.id, seen)).earlierSeen).toBe(true);
    });

    test('a pass that another window has begun meanwhile gets the next number, and keeps it', () => {
      const { photo } = skinWithPhoto(archive);
      const passes = [1, 2, 2, 1].map((pass) => unwrap(archive.readings.create(photo.id, readingDraft({ pass }))));
      expect(passes.map(({ pass }) => pass)).toEqual([1, 2, 3, 4]);
      // Whoever began it as the second still calls it so.
      const [, , third] = passes;
      const changed = unwrap(archive.readings.update(third?.id ?? '', 1, readingDraft({ pass: 2, observer: 'B. Keeper' })));
      expect(changed).toMatchObject({ pass: 3, observer: 'B. Keeper', version: 2 });
      expect(archive.readings.revisions(changed.id).map(({ body }) => body?.pass)).toEqual([3, 3]);
    });
  });

  describe('determinations', () => {
    test('are signed once and withdrawn with a reason, never changed', () => {
      const { specimen, exuvia, photo } = skinWithPhoto(archive);
      const draft = determinationDraft({ evidencePhotoIds: [photo.id] });
      const first = unwrap(archive.determinations.sign(exuvia.id, draft, FIRST_ASSESSMENT));
      expect(first).toMatchObject({ ...draft, exuviaId: exuvia.id, specimenId: specimen.id, withdrawn: null });
      const correction = determinationDraft({ sex: 'unsexed', level: null, supersedes: first.id });
      const second = unwrap(archive.determinations.sign(exuvia.id, correction, FIRST_ASSESSMENT));
      const withdrawn = unwrap(archive.determinations.withdraw(first.id, 'wrong vial'));
      expect(withdrawn).toMatchObject({ ...draft, withdrawn: { reason: 'wrong vial' } });
      expect(archive.determinations.withdraw(first.id, 'again')).toEqual(fail({ code: 'already-withdrawn', id: first.id }));
      expect(archive.determinations.ofSpecimen(specimen.id)).toEqual([withdrawn, second]);
      expect(archive.determinations.ofExuvia(exuvia.id)).toEqual([withdrawn, second]);
    });

    test('what they refer to must exist', () => {
      const { exuvia } = skinWithPhoto(archive);
      const sign = (part: Parameters<typeof determinationDraft>[0], skin = exuvia.id) =>
        archive.determinations.sign(skin, determinationDraft(part), FIRST_ASSESSMENT);
      expect(sign({}, 'nobody')).toEqual(fail({ code: 'not-found', what: 'exuvia', id: 'nobody' }));
      expect(sign({ evidencePhotoIds: ['nobody'] })).toEqual(fail({ code: 'not-found', what: 'photo', id: 'nobody' }));
      expect(sign({ supersedes: 'nobody' })).toEqual(fail({ code: 'not-found', what: 'determination', id: 'nobody' }));
      expect(archive.determinations.ofExuvia(exuvia.id)).toEqual([]);
    });
  });

  describe('transactions', () => {
    test.each([
      ['a failure it returns', () => fail({ code: 'disk-full' as const })],
      ['a refusal', () => refuse({ code: 'disk-full' })],
    ])('%s takes back everything', (_, end) => {
      const outcome = archive.transaction(() => {
        unwrap(archive.specimens.create(specimenDraft()));
        return end();
      });
      expect(outcome).toEqual(fail({ code: 'disk-full' }));
      expect(archive.specimens.list()).toEqual([]);
    });

    test('a defect takes back everything and is not hidden', () => {
      const outcome = () =>
        archive.transaction(() => {
          unwrap(archive.specimens.create(specimenDraft()));
          throw new TypeError('ours');
        });
      expect(outcome).toThrow(new TypeError('ours'));
      expect(archive.specimens.list()).toEqual([]);
    });

    test('an inner failure that is dealt with takes back only the inner part', () => {
      const outcome = archive.transaction(() => {
        unwrap(archive.specimens.create(specimenDraft({ code: 'A' })));
        const taken = archive.specimens.create(specimenDraft({ code: 'a' }));
        return succeed(taken.ok);
      });
      expect(outcome).toEqual(succeed(false));
      expect(archive.specimens.list().map(({ code }) => code)).toEqual(['A']);
    });
  });

  test('preferences start as the first ones and stay as set', async () => {
    expect(archive.preferences.get()).toEqual({
      theme: 'system',
      inches: false,
      begunEmpty: false,
      observer: '',
      moltNotices: false,
      feedingTable: null,
    });
    archive.preferences.set({
      theme: 'dark',
      inches: true,
      begunEmpty: false,
      observer: 'A. Keeper',
      moltNotices: false,
      feedingTable: null,
    });
    archive.preferences.set({
      theme: 'light',
      inches: true,
      begunEmpty: true,
      observer: 'A. Keeper',
      moltNotices: false,
      feedingTable: null,
    });
    expect((await test_.reopen()).preferences.get()).toEqual({
      theme: 'light',
      inches: true,
      begunEmpty: true,
      observer: 'A. Keeper',
      moltNotices: false,
      feedingTable: null,
    });
  });
});
