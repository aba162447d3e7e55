import { describe, expect, test } from 'vitest';
import type { SpecimenPage } from '../../../../src/api/contract/specimens.ts';
import { dayFaults, firstChoice, moltChoices, NEW_MOLT, ownerOf } from '../../../../src/renderer/pages/intake/ownerForm.ts';
import { aMolt, anExuvia, aPhoto, aSummary, NO_SIZES } from '../../../support/records.ts';

const PAGE: SpecimenPage = {
  summary: aSummary(),
  molts: [
    {
      molt: aMolt({ id: 'm1', happenedFrom: '2025-10-01', happenedTo: '2025-10-04', instarShed: 6 }),
      instar: { number: 6, certainty: 'known' },
      exuvia: null,
      photos: [],
      sizes: NO_SIZES,
      determinations: [],
    },
    {
      molt: aMolt({ id: 'm2', happenedFrom: '2026-01-10', happenedTo: '2026-01-10', instarShed: 7 }),
      instar: { number: 7, certainty: 'known' },
      exuvia: anExuvia(),
      photos: [],
      sizes: NO_SIZES,
      determinations: [],
    },
  ],
  animalPhotos: [],
  observations: [],
  liveSigns: [],
  forecast: null,
  lifeLine: [],
};

describe('whose photos these are', () => {
  test('starts with the molt the day of the photo speaks for', () => {
    expect(firstChoice([aPhoto({ takenOn: '2026-01-12' })], PAGE, null).molt).toBe('m2');
  });

  test('starts with the molt the keeper came from, whatever the day', () => {
    expect(firstChoice([aPhoto({ takenOn: '2026-01-12' })], PAGE, 'm1').molt).toBe('m1');
  });

  test('else starts with a new molt that sheds the next instar, on a day that only the keeper can tell', () => {
    expect(firstChoice([aPhoto({ takenOn: '2026-02-27' })], PAGE, null)).toMatchObject({
      molt: NEW_MOLT,
      newMoltOn: '',
      newInstarShed: '8',
    });
  });

  test('offers molts newest first and says how long before the photo each was', () => {
    expect(moltChoices(PAGE.molts, '2026-01-12').map((choice) => choice.label)).toEqual([
      'A new molt',
      '10 Jan 2026 · Shed instar 7, 2 days before the photo',
      '1 to 4 Oct 2025 · Shed instar 6, 100 days before the photo',
    ]);
  });

  test('becomes a skin, a skin of a new molt, or the animal', () => {
    const choice = firstChoice([aPhoto({ takenOn: '2026-01-12' })], PAGE, null);
    expect(ownerOf(choice, PAGE)).toEqual({ kind: 'skin', entry: PAGE.molts[1] });
    expect(ownerOf({ ...choice, shows: 'animal' }, PAGE)).toEqual({ kind: 'animal', specimenId: 'specimen-1' });
    expect(ownerOf({ ...choice, molt: NEW_MOLT, newMoltOn: '2026-02-01', newInstarShed: '' }, PAGE)).toMatchObject({
      kind: 'skin-of-new-molt',
      molt: { happenedFrom: '2026-02-01', happenedTo: '2026-02-01', instarShed: null },
    });
  });

  test('is nobody yet while the new molt has no day or no sensible instar', () => {
    const days = { dayKnown: true, newMoltOn: '', newMoltFrom: '', newMoltTo: '' };
    const choice = { shows: 'skin', molt: NEW_MOLT, ...days, newInstarShed: '' } as const;
    expect(ownerOf(choice, PAGE)).toBeNull();
    expect(ownerOf({ ...choice, newMoltOn: '2026-02-01', newInstarShed: 'seven' }, PAGE)).toBeNull();
    expect(ownerOf({ ...choice, newMoltOn: '2026-02-01', newInstarShed: '7' }, PAGE)).not.toBeNull();
  });

  test('a molt between two days needs both of them, and the day of the photo is none', () => {
    const choice = { ...firstChoice([aPhoto({ takenOn: '2026-02-27' })], PAGE, null), dayKnown: false };
    expect(choice).toMatchObject({ newMoltFrom: '', newMoltTo: '' });
    expect(ownerOf(choice, PAGE)).toBeNull();
    expect(ownerOf({ ...choice, newMoltFrom: '2026-02-20' }, PAGE)).toBeNull();
    expect(ownerOf({ ...choice, newMoltFrom: '2026-02-20', newMoltTo: '2026-02-26' }, PAGE)).toMatchObject({
      molt: { happenedFrom: '2026-02-20', happenedTo: '2026-02-26' },
    });
  });
});

describe('the days that are given', () => {
  const choice = { ...firstChoice([aPhoto()], PAGE, null), molt: NEW_MOLT };
  const TODAY = '2026-03-01';

  test('that have not come yet are told at their field, as the archive tells them', () => {
    expect(dayFaults({ ...choice, newMoltOn: '2026-03-02' }, '', TODAY)).toEqual({
      newMoltOn: '2 Mar 2026 has not come yet. Give a day up to today.',
    });
    expect(dayFaults({ ...choice, newMoltOn: TODAY }, '2026-03-04', TODAY)).toEqual({
      takenOn: '4 Mar 2026 has not come yet. Give a day up to today.',
    });
  });

  test('may not be of a year in which no animal of today lived', () => {
    expect(dayFaults({ ...choice, newMoltOn: '1850-03-02' }, '', TODAY)).toEqual({
      newMoltOn: '2 Mar 1850 is too long ago: days from 1 Jan 1950 on are kept. Look at the year.',
    });
  });

  test('may not run backwards', () => {
    const between = { ...choice, dayKnown: false, newMoltFrom: '2026-02-10', newMoltTo: '2026-02-03' };
    expect(dayFaults(between, '', TODAY).newMoltTo).toMatch(/^The later date, 3 Feb 2026, lies before the earlier one, 10 Feb 2026\./);
    expect(dayFaults({ ...between, newMoltTo: '2026-02-10' }, '', TODAY)).toEqual({});
  });

  test('are not looked at where the form does not ask for them', () => {
    expect(dayFaults({ ...choice, molt: 'm1', newMoltOn: '2030-01-01' }, '', TODAY)).toEqual({});
    expect(dayFaults({ ...choice, shows: 'animal', newMoltOn: '2030-01-01' }, '', TODAY)).toEqual({});
    expect(dayFaults({ ...choice, newMoltOn: '2026-02-01', newMoltFrom: '2030-01-01' }, '', TODAY)).toEqual({});
  });
});
