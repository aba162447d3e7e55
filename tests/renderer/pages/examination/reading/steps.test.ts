import { describe, expect, it } from 'vitest';
import { BLANK_CHECKLIST, Checklist, ReadingStep, type UnfinishedDetermination } from '../../../../../src/domain/sexing/determination.ts';
import { askedIn, openIn, stepAfter } from '../../../../../src/renderer/pages/examination/reading/steps.ts';

const BLANK: UnfinishedDetermination = {
  ...{
    sex: null,
    level: null,
    reader: null,
    readOn: '2026-11-24',
    evidencePhotoIds: [],
    pins: [],
    notes: '',
    supersedes: null,
    step: 'match',
  },
  checklist: BLANK_CHECKLIST,
};

describe('the steps of a reading', () => {
  it('ask for everything of the checklist but what hangs on another answer', () => {
    const asked = ReadingStep.options.flatMap((step) => askedIn(step, BLANK, ''));
    const hanging = ['receptacleForm', 'secondReader', 'secondReaderBlind'];
    const beyond = ['what it is', 'who read it', 'a photo'];
    expect(asked).toHaveLength(Object.keys(Checklist.shape).length - hanging.length + beyond.length);
    expect(asked.every(({ answered }) => !answered)).toBe(true);
  });

  it('ask for the form of receptacles that were seen, and for nothing of a strip that is not there', () => {
    const seen = { ...BLANK, checklist: { ...BLANK_CHECKLIST, receptaclesSeen: 'yes' as const } };
    expect(askedIn('look', seen, '').map(({ label }) => label)).toContain('Form of the receptacles');
    expect(askedIn('look', { ...BLANK, checklist: { ...BLANK_CHECKLIST, grade: 'D' } }, '')).toHaveLength(1);
  });

  it('count "cannot tell" as an answer and "not looked" as none', () => {
    const told = { ...BLANK, checklist: { ...BLANK_CHECKLIST, skinMatchesAnimal: 'cannot-tell' as const } };
    expect(openIn(told, 'Ilse').find(({ step }) => step === 'match')?.labels).toHaveLength(2);
  });

  it('are left open where a sex was named without saying how sure', () => {
    expect(openIn({ ...BLANK, sex: 'female' }, '').some(({ step }) => step === 'conclude')).toBe(true);
    expect(openIn({ ...BLANK, sex: 'anomalous' }, '').some(({ step }) => step === 'conclude')).toBe(false);
  });

  it('follow one another, and end', () => {
    expect([stepAfter('match', -1), stepAfter('match', 1), stepAfter('sign', 1)]).toEqual([null, 'grade', null]);
  });
});
