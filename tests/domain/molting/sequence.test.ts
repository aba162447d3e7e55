import { describe, expect, it, test } from 'vitest';
import type { FailureCode } from '../../../src/domain/failure.ts';
import type { Molt } from '../../../src/domain/molting/molt.ts';
import { checkMolt } from '../../../src/domain/molting/sequence.ts';
import { moltDraft, molts } from './molts.ts';

const TODAY = '2026-11-25';

function outcomeOf(draft: ReturnType<typeof moltDraft>, recorded: readonly Molt[], replacing: string | null = null): 'fits' | FailureCode {
  const result = checkMolt(draft, { molts: recorded, replacing, today: TODAY });
  return result.ok ? 'fits' : result.failure.code;
}

describe('the dates of one molt', () => {
  test.each([
    ['2026-11-25', 'fits'],
    ['2026-11-20 to 2026-11-25', 'fits'],
    ['2026-11-26', 'date-in-future'],
    ['2026-11-20 to 2026-11-26', 'date-in-future'],
    ['2026-11-25 to 2026-11-20', 'dates-reversed'],
    ['1950-01-01', 'fits'],
    ['1850-06-01', 'date-too-early'],
    ['0202-06-01 to 2026-06-01', 'date-too-early'],
  ] as const)('%s: %s', (days, outcome) => {
    expect(outcomeOf(moltDraft(days), [])).toBe(outcome);
  });

  it('are told reversed before they are told to lie in the future, since that is the slip to correct first', () => {
    expect(outcomeOf(moltDraft('2027-01-02 to 2026-01-02'), [])).toBe('dates-reversed');
  });
});

describe('molts of one animal do not overlap', () => {
  const recorded = molts(['2025-06-01'], ['2026-03-01 to 2026-03-08']);

  test.each([
    ['2025-01-01', 'fits'],
    ['2025-12-24', 'fits'],
    ['2026-08-01', 'fits'],
    ['2025-06-01', 'molts-out-of-order'],
    ['2025-05-30 to 2025-06-02', 'molts-out-of-order'],
    ['2026-03-04', 'molts-out-of-order'],
    ['2026-03-01 to 2026-03-08', 'molts-out-of-order'],
    ['2026-02-20 to 2026-03-02', 'molts-out-of-order'],
    // Found molted on the day from which the next is not yet excluded.
    ['2025-05-20 to 2025-06-01', 'fits'],
    ['2026-03-08 to 2026-04-01', 'fits'],
  ] as const)('%s: %s', (days, outcome) => {
    expect(outcomeOf(moltDraft(days), recorded)).toBe(outcome);
  });

  it('names the molt that is in the way', () => {
    const result = checkMolt(moltDraft('2026-03-04'), { molts: recorded, replacing: null, today: TODAY });
    expect(result).toEqual({
      ok: false,
      failure: { code: 'molts-out-of-order', date: '2026-03-04', neighbourDate: '2026-03-01' },
    });
  });

  it('lets a molt keep or move its own days when it is changed', () => {
    expect(outcomeOf(moltDraft('2026-03-04'), recorded, 'molt-2')).toBe('fits');
    expect(outcomeOf(moltDraft('2025-06-01'), recorded, 'molt-2')).toBe('molts-out-of-order');
  });
});

describe('instar numbers rise with the dates', () => {
  test.each([
    ['by one, in a row without gaps', '2026-01-01', 7, 'fits'],
    ['by more, when a molt between was never recorded', '2026-01-01', 9, 'fits'],
    ['not at all', '2026-01-01', 6, 'instars-out-of-order'],
    ['downwards', '2026-01-01', 4, 'instars-out-of-order'],
    ['and may stay unknown', '2026-01-01', null, 'fits'],
    ['also before the first on record', '2024-01-01', 4, 'fits'],
    ['and not above the first one from before it', '2024-01-01', 5, 'instars-out-of-order'],
  ] as const)('%s', (_, days, instar, outcome) => {
    expect(outcomeOf(moltDraft(days, instar), molts(['2025-01-01', 5], ['2025-06-01', 6]))).toBe(outcome);
  });

  it('counts recorded molts of unknown instar between two known ones', () => {
    const recorded = molts(['2024-01-01', 5], ['2024-06-01'], ['2025-01-01']);
    expect(outcomeOf(moltDraft('2025-06-01', 7), recorded)).toBe('instars-out-of-order');
    expect(outcomeOf(moltDraft('2025-06-01', 8), recorded)).toBe('fits');
    const result = checkMolt(moltDraft('2025-06-01', 7), { molts: recorded, replacing: null, today: TODAY });
    expect(result).toEqual({
      ok: false,
      failure: { code: 'instars-out-of-order', instar: 7, neighbourInstar: 5, neighbourDate: '2024-01-01', recordedBetween: 2 },
    });
  });

  it('refuses a molt of unknown instar for which the known numbers leave no room', () => {
    const recorded = molts(['2024-01-01', 5], ['2025-01-01', 6]);
    expect(outcomeOf(moltDraft('2024-06-01'), recorded)).toBe('instars-out-of-order');
    expect(outcomeOf(moltDraft('2024-06-01'), molts(['2024-01-01', 5], ['2025-01-01', 7]))).toBe('fits');
  });

  it('refuses a number lower than the count of molts before it: instar 1 is the first there is', () => {
    const recorded = molts(['2024-01-01'], ['2024-03-01']);
    const result = checkMolt(moltDraft('2024-06-01', 2), { molts: recorded, replacing: null, today: TODAY });
    expect(result).toEqual({ ok: false, failure: { code: 'instar-too-low', instar: 2, earlierMolts: 2 } });
    expect(outcomeOf(moltDraft('2024-06-01', 3), recorded)).toBe('fits');
  });

  it('names the draft first when the neighbor that does not fit comes later', () => {
    const result = checkMolt(moltDraft('2024-06-01', 7), { molts: molts(['2025-01-01', 6]), replacing: null, today: TODAY });
    expect(result).toEqual({
      ok: false,
      failure: { code: 'instars-out-of-order', instar: 7, neighbourInstar: 6, neighbourDate: '2025-01-01', recordedBetween: 0 },
    });
  });

  it('does not depend on the order in which molts come out of the archive', () => {
    const recorded = molts(['2025-06-01', 6], ['2024-01-01', 4], ['2025-01-01', 5]);
    expect(outcomeOf(moltDraft('2026-01-01', 7), recorded)).toBe('fits');
    expect(outcomeOf(moltDraft('2026-01-01', 6), recorded)).toBe('instars-out-of-order');
  });
});
