import { describe, expect, it } from 'vitest';
import { seriesOf } from '../../../../src/domain/growth/belief/growthRecord.ts';
import { GrowthFinding } from '../../../../src/domain/growth/findings.ts';
import { fitGrowth } from '../../../../src/domain/growth/growthFit.ts';
import { growthReportOf } from '../../../../src/domain/growth/growthReport.ts';
import { buildLadder, type MoltOnRecord } from '../../../../src/domain/growth/ladder.ts';
import { measuredSteps } from '../../../../src/domain/growth/measuredStep.ts';
import { presumeMolts } from '../../../../src/domain/growth/missed/presumedMolts.ts';
import type { Molt } from '../../../../src/domain/molting/molt.ts';
import { checkMolt } from '../../../../src/domain/molting/sequence.ts';
import { unwrap } from '../../../../src/domain/result.ts';
import { daysSinceInWords, noRatioInWords, unmeasuredInWords } from '../../../../src/words/ladder.ts';
import { beliefOfLadder } from '../../../support/believedGrowth.ts';
import { growthRecord } from '../forecast/records.ts';
import { moltOn } from '../skins.ts';

/** Sizes as published (Francke OF, Jones SK 1982, J. Arachnol. 10:223-239: Centruroides gracilis, females), the skin of instar 4 lost. */
const ROW = ([2.25, 2.96, 5.21, 6.65, 8.16] as const).map((size, index) => moltOn(`202${index}-03-01`, null, size, 0.02));
const CONTEXT = { today: '2025-01-01', sex: 'unsexed', isKept: true, moltedSince: false, live: [] } as const;

function reportOf(records: readonly MoltOnRecord[]) {
  const ladder = buildLadder(records);
  return { ladder, growth: growthReportOf(ladder, records, { ...CONTEXT, belief: beliefOfLadder(ladder, CONTEXT.today) }) };
}

function asRecord(draft: { happenedFrom: string; happenedTo: string; outcomes: Molt['outcomes'] }, index: number): MoltOnRecord {
  return { molt: { ...draft, id: `presumed-${index}`, instarShed: null }, exuvia: null, photos: [], readings: [] };
}

function withPresumed(skipped: number): MoltOnRecord[] {
  const molts = ROW.map(({ molt }) => molt);
  const drafts = unwrap(presumeMolts(molts, { beforeMoltId: 'molt-2022-03-01', skipped }));
  return [...ROW, ...drafts.map(asRecord)];
}

describe('a gap in a row without any instar number', () => {
  it('is suggested, kept as a presumed molt, and then no longer suggested', () => {
    const suggested = reportOf(ROW).growth.missed.filter(({ suggestedSkipped }) => suggestedSkipped > 0);
    expect(suggested).toMatchObject([{ laterMoltId: 'molt-2022-03-01', suggestedSkipped: 1 }]);
    const { ladder, growth } = reportOf(withPresumed(1));
    expect(ladder.rungs.map(({ step, presumed }) => [step, presumed])).toEqual([
      [0, false],
      [1, false],
      [2, true],
      [3, false],
      [4, false],
      [5, false],
    ]);
    expect(growth.missed.every(({ suggestedSkipped }) => suggestedSkipped === 0)).toBe(true);
    expect(growth.missed.map(({ instarsOnRecord }) => instarsOnRecord)).toEqual([1, 2, 1, 1]);
    expect(growth.findings.map((finding) => GrowthFinding.parse(finding).kind)).toEqual([]);
    // exp(b) over instars 2, 3, 5, 6 and 7, worked out apart from this project.
    expect(fitGrowth(measuredSteps(ladder.rungs))?.ratio.toFixed(4)).toBe('1.2995');
  });

  it('stands in words where its size, its ratio and its days would', () => {
    const { rungs } = reportOf(withPresumed(1)).ladder;
    const [, before, presumed, after] = rungs;
    if (!before || !presumed || !after) throw new Error('Expected six rungs');
    expect(unmeasuredInWords(presumed)).toBe('presumed molt: nobody saw it, and no skin of it is on record');
    expect(noRatioInWords(presumed, before)).toBe('a presumed molt has no size');
    expect(noRatioInWords(after, presumed)).toBe('a presumed molt has no size');
    expect(daysSinceInWords(after, presumed)).toBe('not known, beside a presumed molt');
  });

  it('gives a forecast one interval of two molts, and no day of its own', () => {
    const molts = withPresumed(1).map(({ molt }) => molt);
    const { intervals, facts } = seriesOf(growthRecord({ molts }), '2025-01-01');
    expect(intervals.map(({ readings }) => readings[0]?.molts)).toEqual([1, 2, 1, 1]);
    expect(facts.has('molts-on-one-day')).toBe(false);
  });

  it('holds two presumed molts one after the other, which fit among those on record', () => {
    const molts = ROW.map(({ molt }) => ({
      ...molt,
      specimenId: 'one',
      position: 'not-seen' as const,
      notes: '',
      version: 1,
      createdAt: '',
    }));
    const drafts = unwrap(presumeMolts(molts, { beforeMoltId: 'molt-2022-03-01', skipped: 2 }));
    expect(drafts.map(({ happenedFrom, happenedTo }) => [happenedFrom, happenedTo])).toEqual([
      ['2021-03-01', '2021-08-30'],
      ['2021-08-30', '2022-03-01'],
    ]);
    const all: Molt[] = [...molts];
    for (const [index, draft] of drafts.entries()) {
      const fitting = unwrap(checkMolt(draft, { molts: all, replacing: null, today: '2025-01-01' }));
      all.push({ ...fitting, id: `presumed-${index}`, specimenId: 'one', version: 1, createdAt: '' });
    }
  });

  it('is refused where there is no room, no molt before, or no such molt', () => {
    const molts = ['2024-01-01', '2024-01-02', '2024-01-04'].map((day) => moltOn(day, null, 3).molt);
    const refusedFor = (beforeMoltId: string, skipped: number) => {
      const presumed = presumeMolts(molts, { beforeMoltId, skipped });
      return presumed.ok ? null : presumed.failure.code;
    };
    expect(refusedFor('molt-2024-01-02', 1)).toBe('gap-uncounted');
    expect(refusedFor('molt-2024-01-04', 2)).toBe('gap-uncounted');
    expect(refusedFor('molt-2024-01-04', 1)).toBeNull();
    expect(refusedFor('molt-2024-01-01', 1)).toBe('gap-misplaced');
    expect(refusedFor('molt-of-nobody', 1)).toBe('not-found');
  });
});
