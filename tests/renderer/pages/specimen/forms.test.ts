import { describe, expect, test } from 'vitest';
import { moltFormOf, newMoltForm, readMoltForm } from '../../../../src/renderer/pages/specimen/moltForm.ts';
import { readSkinForm, skinFormOf } from '../../../../src/renderer/pages/specimen/skinForm.ts';
import { formOf, readSpecimenForm } from '../../../../src/renderer/pages/specimen/specimenForm.ts';
import { aMolt, anExuvia, aSpecimen } from '../../../support/records.ts';

describe('the form of a specimen', () => {
  test('gives back the record it was opened on', () => {
    const specimen = aSpecimen({ name: 'Ada', acquiredOn: '2024-05-01', acquiredInstar: 4, habit: 'fossorial', notes: 'shy' });
    const { id: _id, version: _version, sample: _sample, createdAt: _createdAt, ...draft } = specimen;
    expect(readSpecimenForm(formOf(specimen)).draft).toEqual(draft);
  });

  test('keeps what is left empty as not known', () => {
    const read = readSpecimenForm({ ...formOf(null), code: ' T-9 ', name: '  ' });
    expect(read.draft).toMatchObject({ code: 'T-9', name: null, origin: null, acquiredOn: null, acquiredInstar: null, habit: null });
  });

  test('says beside each field what is wrong with it', () => {
    const read = readSpecimenForm({ ...formOf(null), code: '', acquiredInstar: 'four', notes: 'x'.repeat(20_001) });
    expect(read.errors).toEqual({
      code: 'Has to be filled in.',
      acquiredInstar: 'Has to be a whole number, or empty.',
      notes: 'Too long: at most 20000 characters.',
    });
    expect(readSpecimenForm({ ...formOf(null), code: 'T', acquiredInstar: '0' }).errors).toEqual({
      acquiredInstar: 'Has to be 1 or more.',
    });
    expect(readSpecimenForm({ ...formOf(null), code: 'T', acquiredInstar: '61' }).errors).toEqual({
      acquiredInstar: 'Has to be 60 or less.',
    });
  });
});

describe('the form of a molt', () => {
  test('gives back the record it was opened on, with a span of days', () => {
    const molt = aMolt({ happenedTo: '2026-01-14', instarShed: 7, outcomes: ['slow'], notes: 'overnight' });
    const { id: _id, specimenId: _specimen, version: _version, createdAt: _createdAt, ...draft } = molt;
    expect(readMoltForm(moltFormOf(molt)).draft).toEqual(draft);
  });

  test('makes both dates one when the day is known', () => {
    const form = { ...newMoltForm({ from: '2026-03-01', to: '2026-03-01' }, 7), happenedOn: '2026-02-20' };
    expect(readMoltForm(form).draft).toMatchObject({ happenedFrom: '2026-02-20', happenedTo: '2026-02-20', instarShed: 8 });
  });

  test('asks for both days where the day is not known, and prefills neither', () => {
    for (const form of [newMoltForm({ from: '2026-03-01', to: '2026-03-01' }, null), moltFormOf(aMolt())]) {
      const read = readMoltForm({ ...form, dayKnown: false });
      expect(read.errors).toEqual({
        happenedFrom: 'Has to be a day of the calendar.',
        happenedTo: 'Has to be a day of the calendar.',
      });
    }
  });

  test('asks for a day that was left empty', () => {
    expect(readMoltForm({ ...newMoltForm({ from: '2026-03-01', to: '2026-03-01' }, null), happenedOn: '' }).errors).toMatchObject({
      happenedFrom: 'Has to be a day of the calendar.',
    });
  });
});

describe('the form of a skin', () => {
  test('gives back the record it was opened on', () => {
    const exuvia = anExuvia({ grade: 'B', completeness: 'legs-missing', storagePlace: 'box 3' });
    const { id: _id, moltId: _molt, version: _version, createdAt: _createdAt, ...draft } = exuvia;
    expect(readSkinForm(skinFormOf(exuvia)).draft).toEqual(draft);
  });

  test('keeps no grade and no place of a skin that was not recovered', () => {
    const form = { ...skinFormOf(anExuvia({ grade: 'A', completeness: 'complete', storagePlace: 'box 3' })), recovered: false };
    expect(readSkinForm(form).draft).toMatchObject({ recovered: false, grade: null, completeness: null, storagePlace: null });
  });
});
