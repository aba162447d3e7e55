import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Archive } from '../../src/archive/archive.ts';
import { openArchive } from '../../src/archive/open.ts';
import { fail, unwrap } from '../../src/domain/result.ts';
import { BLANK_CHECKLIST, type UnfinishedDetermination } from '../../src/domain/sexing/determination.ts';
import { profileFor } from '../../src/domain/sexing/genus/find.ts';
import { PLAIN_FLAGS } from '../../src/domain/sexing/genus/profile.ts';
import type { LiveSignDraft } from '../../src/domain/sexing/live/liveSign.ts';
import { signOf } from '../../src/domain/sexing/sign.ts';
import { GENUS_BOOK } from '../domain/sexing/readings.ts';
import {
  countingAmbient,
  determinationDraft,
  FIRST_ASSESSMENT,
  newPhoto,
  skinWithPhoto,
  specimenDraft,
  TestArchive,
} from '../support/testArchive.ts';

let test_: TestArchive;
let archive: Archive;

beforeEach(async () => {
  test_ = await TestArchive.open();
  archive = test_.archive;
});
afterEach(() => test_.remove());

const LIVE: LiveSignDraft = { finding: { kind: 'sperm-web' }, seenOn: '2026-02-01', observer: 'A. Keeper', photoIds: [], notes: '' };

function begun(photoIds: string[]): UnfinishedDetermination {
  return {
    ...{ sex: null, level: null, reader: null, readOn: '2026-01-20', notes: '', supersedes: null, step: 'look' },
    checklist: { ...BLANK_CHECKLIST, receptaclesSeen: 'yes' },
    evidencePhotoIds: photoIds,
    pins: photoIds.map((photoId) => ({ question: 'receptaclesSeen', photoId, mark: { kind: 'point', at: { xPx: 10.25, yPx: 20.5 } } })),
  };
}

describe('a reading under way', () => {
  test('is left and resumed, also after the archive was closed', async () => {
    const { exuvia, photo } = skinWithPhoto(archive);
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id))).toMatchObject({ version: 0, reading: null });
    const kept = unwrap(archive.readingsUnderWay.put(exuvia.id, 0, begun([photo.id])));
    archive = await test_.reopen();
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id))).toEqual(kept);
    expect(kept).toMatchObject({ version: 1, reading: begun([photo.id]), photosGone: [] });
  });

  test('writes over no newer one, and does not come back once it was signed', () => {
    const { exuvia } = skinWithPhoto(archive);
    unwrap(archive.readingsUnderWay.put(exuvia.id, 0, begun([])));
    expect(archive.readingsUnderWay.put(exuvia.id, 0, null)).toMatchObject({ failure: { code: 'changed-meanwhile', version: 1 } });
    // A signature of an old state takes nothing with it that was answered since.
    expect(archive.readingsUnderWay.finish(exuvia.id, 0)).toMatchObject({ failure: { code: 'changed-meanwhile', version: 1 } });
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id)).reading).toEqual(begun([]));
    unwrap(archive.readingsUnderWay.finish(exuvia.id, 1));
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id))).toMatchObject({ reading: null, version: 2 });
    expect(archive.readingsUnderWay.put(exuvia.id, 1, begun([]))).toMatchObject({ failure: { code: 'changed-meanwhile' } });
    expect(archive.readingsUnderWay.put('nobody', 0, null)).toEqual(fail({ code: 'not-found', what: 'exuvia', id: 'nobody' }));
  });

  test('tells that its evidence photo was removed since, and has it back when that is undone', () => {
    const { exuvia, photo } = skinWithPhoto(archive);
    unwrap(archive.readingsUnderWay.put(exuvia.id, 0, begun([photo.id])));
    const removal = unwrap(archive.removals.remove('photo', photo.id));
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id))).toMatchObject({ reading: begun([photo.id]), photosGone: [photo.id] });
    unwrap(archive.removals.restore(removal.id));
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id)).photosGone).toEqual([]);
  });
});

describe('signs of the animal', () => {
  test('are signed once and withdrawn with a reason', () => {
    const { specimen } = skinWithPhoto(archive);
    const portrait = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64), subject: { kind: 'animal', specimenId: specimen.id } })));
    const sign = unwrap(archive.liveSigns.sign(specimen.id, { ...LIVE, photoIds: [portrait.id] }));
    expect(sign).toMatchObject({ ...LIVE, photoIds: [portrait.id], specimenId: specimen.id, withdrawn: null });
    const withdrawn = unwrap(archive.liveSigns.withdraw(sign.id, 'a molting mat'));
    expect(archive.liveSigns.withdraw(sign.id, 'again')).toEqual(fail({ code: 'already-withdrawn', id: sign.id }));
    expect(archive.liveSigns.ofSpecimen(specimen.id)).toEqual([withdrawn]);
    expect(unwrap(archive.cabinet.entry(specimen.id)).liveSigns).toEqual([withdrawn]);
    expect(archive.removals.remove('photo', portrait.id)).toEqual(
      fail({ code: 'photo-in-use', photoId: portrait.id, determinations: 0, liveSigns: 1 }),
    );
  });

  test('count with the egg sacs noted in a watch, until the note is removed; a noted sperm web is no sign', () => {
    const { specimen } = skinWithPhoto(archive);
    const moment = { at: '2026-02-01T20:00:00.000Z', offset: '+00:00' };
    const noted = { moment, observer: '', note: '', source: { kind: 'hand' }, span: null } as const;
    unwrap(archive.observations.append(specimen.id, { ...noted, kind: 'sperm-web' }));
    const sexOf = () => {
      const { determinations, liveSigns } = unwrap(archive.cabinet.entry(specimen.id));
      expect(archive.cabinet.entries()[0]?.liveSigns).toEqual(liveSigns);
      return signOf(determinations, liveSigns);
    };
    expect(sexOf()).toMatchObject({ sex: 'unsexed' });
    const sac = unwrap(archive.observations.append(specimen.id, { ...noted, kind: 'egg-sac' }));
    expect(sexOf()).toEqual({ sex: 'female', level: 'established', conflict: false });
    unwrap(archive.removals.remove('observation', sac.id));
    expect(sexOf()).toMatchObject({ sex: 'unsexed' });
  });

  // British Tarantula Society, FAQ "Mature": Poecilotheria males have none.
  test('of hooks are worth what the genus says that the animal is filed under now, alone and in the cabinet', async () => {
    const { specimen } = skinWithPhoto(archive);
    const hooks = { kind: 'tibial-hooks', seen: true } as const;
    unwrap(archive.liveSigns.sign(specimen.id, { ...LIVE, finding: hooks }));
    test_.close();
    const known = unwrap(await openArchive(test_.folder, countingAmbient(), { genera: GENUS_BOOK.shipped }));
    const sexes = () => [
      signOf([], unwrap(known.cabinet.entry(specimen.id)).liveSigns).sex,
      signOf([], known.liveSigns.ofSpecimen(specimen.id)).sex,
    ];
    expect(sexes()).toEqual(['male', 'male']);
    const filed = unwrap(known.specimens.get(specimen.id));
    unwrap(known.specimens.update(specimen.id, filed.version, specimenDraft({ taxon: 'Poecilotheria regalis' })));
    expect(sexes()).toEqual(['unsexed', 'unsexed']);
    known.close();
  });

  test('refer to what exists', () => {
    const { specimen } = skinWithPhoto(archive);
    expect(archive.liveSigns.sign('nobody', LIVE)).toEqual(fail({ code: 'not-found', what: 'specimen', id: 'nobody' }));
    expect(archive.liveSigns.sign(specimen.id, { ...LIVE, photoIds: ['none'] })).toEqual(
      fail({ code: 'not-found', what: 'photo', id: 'none' }),
    );
    expect(archive.liveSigns.ofSpecimen(specimen.id)).toEqual([]);
  });

  test('go with their animal and come back with it, and so does the reading under way', () => {
    const { specimen, exuvia } = skinWithPhoto(archive);
    const portrait = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64), subject: { kind: 'animal', specimenId: specimen.id } })));
    const sign = unwrap(archive.liveSigns.sign(specimen.id, { ...LIVE, photoIds: [portrait.id] }));
    const kept = unwrap(archive.readingsUnderWay.put(exuvia.id, 0, begun([])));
    const removal = unwrap(archive.removals.remove('specimen', specimen.id));
    expect(removal).toMatchObject({ liveSigns: 1, photos: 0, photosUnassigned: 2 });
    expect(archive.liveSigns.ofSpecimen(specimen.id)).toEqual([]);
    unwrap(archive.removals.restore(removal.id));
    expect(archive.liveSigns.ofSpecimen(specimen.id)).toEqual([sign]);
    expect(unwrap(archive.readingsUnderWay.get(exuvia.id))).toEqual(kept);
  });
});

describe('edits of genus profiles', () => {
  test('are all kept, the last one counts, and no stored answer changes by them', () => {
    const { specimen, exuvia } = skinWithPhoto(archive);
    const signed = unwrap(archive.determinations.sign(exuvia.id, determinationDraft(), FIRST_ASSESSMENT));
    const { genus, known: _known, version: _version, ...profile } = profileFor('Grammostola pulchra', GENUS_BOOK);
    const edited = { ...profile, flags: { ...PLAIN_FLAGS, withoutSpermathecae: true } };
    unwrap(archive.genusEdits.add(genus, 0, { profile: edited, note: 'Only to see', by: 'A. Keeper' }));
    expect(archive.genusEdits.add(genus, 0, { profile: null, note: 'x', by: 'y' })).toMatchObject({ failure: { version: 1 } });
    const book = () => ({ ...GENUS_BOOK, edits: archive.genusEdits.list() });
    expect(profileFor('Grammostola pulchra', book())).toMatchObject({ version: 1, flags: { withoutSpermathecae: true } });
    unwrap(archive.genusEdits.add(genus, 1, { profile: null, note: 'As shipped', by: 'A. Keeper' }));
    expect(profileFor('Grammostola pulchra', book())).toMatchObject({ version: 2, flags: { withoutSpermathecae: false } });
    expect(archive.genusEdits.list()).toHaveLength(2);
    expect(archive.determinations.ofSpecimen(specimen.id)).toEqual([signed]);
  });
});

describe('changes of the evidence model', () => {
  test('are numbered and kept with their reason', () => {
    const change = { adjustments: { 'seen.C': 0.8 }, by: 'A. Keeper', note: 'Own skins' };
    expect(unwrap(archive.modelChanges.add(0, change))).toMatchObject({ ...change, revision: 1 });
    expect(archive.modelChanges.add(0, change)).toMatchObject({ failure: { code: 'changed-meanwhile', version: 1 } });
    unwrap(archive.modelChanges.add(1, { ...change, adjustments: {} }));
    expect(archive.modelChanges.list().map(({ revision, adjustments }) => [revision, adjustments])).toEqual([
      [1, { 'seen.C': 0.8 }],
      [2, {}],
    ]);
  });
});

test('the photos that a signature names can be pointed nowhere else, whoever writes into the file', () => {
  const { specimen, exuvia, photo } = skinWithPhoto(archive);
  const portrait = unwrap(archive.photos.add(newPhoto({ sha256: 'b'.repeat(64), subject: { kind: 'animal', specimenId: specimen.id } })));
  unwrap(archive.determinations.sign(exuvia.id, determinationDraft({ evidencePhotoIds: [photo.id] }), FIRST_ASSESSMENT));
  unwrap(archive.liveSigns.sign(specimen.id, { ...LIVE, photoIds: [portrait.id] }));
  test_.close();
  const file = new Database(join(test_.folder, 'catalogue.db'));
  expect(() => file.prepare('UPDATE determination_evidence SET photo_id = ?').run(portrait.id)).toThrow('is never changed');
  expect(() => file.prepare('UPDATE live_sign_photo SET photo_id = ?').run(photo.id)).toThrow('are never changed');
  file.close();
});
