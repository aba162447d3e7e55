import { describe, expect, it } from 'vitest';
import { BLANK_CHECKLIST, DeterminationDraft, type UnfinishedDetermination } from '../../../../../src/domain/sexing/determination.ts';
import type { Assessment } from '../../../../../src/domain/sexing/levels.ts';
import { finished } from '../../../../../src/renderer/pages/examination/reading/gaps.ts';

const NOTHING: Assessment = { highest: null, next: 'leaning', missing: [] };
const UP_TO_PROBABLE: Assessment = { highest: 'probable', next: 'strong', missing: [] };
const CONTEXT = {
  observer: 'Ilse Brandmeier',
  today: '2026-11-25',
  shedFrom: '2025-02-06',
  assessments: { female: UP_TO_PROBABLE, male: NOTHING },
};

const READING: UnfinishedDetermination = {
  sex: 'female',
  level: 'probable',
  reader: null,
  readOn: '2026-11-24',
  checklist: BLANK_CHECKLIST,
  evidencePhotoIds: ['photo-1'],
  pins: [],
  step: 'sign',
  notes: 'Flap lifts.',
  supersedes: null,
};

describe('a reading that is to be signed', () => {
  it('becomes a draft the archive takes, read by whoever uses the window', () => {
    const { draft } = finished(READING, CONTEXT);
    const { step: _, ...unsigned } = READING;
    expect(draft).toEqual({ ...unsigned, reader: 'Ilse Brandmeier' });
    expect(DeterminationDraft.parse(draft)).toEqual(draft);
  });

  it('is signed with "cannot tell" on a strip of grade D, while the answers stay as they were until then', () => {
    const checklist = { ...BLANK_CHECKLIST, grade: 'D', receptaclesSeen: 'yes', receptacleForm: 'sessile', flapLifts: 'no' } as const;
    const slip: UnfinishedDetermination = { ...READING, sex: 'unsexed', level: null, checklist };
    expect(finished(slip, CONTEXT).draft?.checklist).toEqual({
      ...checklist,
      ...{ receptaclesSeen: 'cannot-tell', receptacleForm: null, flapLifts: 'cannot-tell' },
    });
    const back: UnfinishedDetermination = { ...slip, checklist: { ...slip.checklist, grade: 'B' } };
    expect(finished(back, CONTEXT).draft?.checklist).toEqual({ ...checklist, grade: 'B' });
  });

  it('keeps another name where one was given', () => {
    expect(finished({ ...READING, reader: ' Ottokar Venn ' }, CONTEXT).draft?.reader).toBe('Ottokar Venn');
  });

  it('carries no level when it stays unsexed', () => {
    expect(finished({ ...READING, sex: 'unsexed' }, CONTEXT).draft).toMatchObject({ sex: 'unsexed', level: null });
  });

  it.each<[string, Partial<UnfinishedDetermination>, string[]]>([
    ['no sex', { sex: null, level: null }, ['sex']],
    ['no level', { level: null }, ['level']],
    ['a level that the answers no longer support', { level: 'strong' }, ['level']],
    ['a sex that the answers do not support', { sex: 'male', level: 'leaning' }, ['level']],
    ['a reader that was cleared', { reader: '  ' }, ['reader']],
    ['a day that has not come', { readOn: '2026-11-26' }, ['readOn']],
    ['a day before the skin was shed', { readOn: '2025-02-05' }, ['readOn']],
    ['several things at once', { sex: null, reader: '', readOn: '2027-01-01' }, ['sex', 'reader', 'readOn']],
  ])('is not signed with %s', (_, changes, fields) => {
    const { draft, gaps } = finished({ ...READING, ...changes }, CONTEXT);
    expect(draft).toBeNull();
    expect(Object.keys(gaps ?? {})).toEqual(fields);
  });
});
