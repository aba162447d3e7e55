import { describe, expect, it } from 'vitest';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import type { LiveSize } from '../../../../src/domain/growth/liveSizes.ts';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { ladderRows } from '../../../../src/renderer/pages/ladder/chart/ladderCsv.ts';
import { intervalLegend, ratioLegend } from '../../../../src/renderer/pages/ladder/chart/legends.ts';
import { intervalValues, ratioValues } from '../../../../src/renderer/pages/ladder/chart/stepValues.ts';
import { moltOn } from '../../../domain/growth/skins.ts';

describe('ratioValues', () => {
  it('gives a ratio across a gap per instar and marks it hollow', () => {
    const { rungs } = buildLadder([moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, 5), moltOn('2025-06-01', 8, 5 * 1.44)]);
    const values = ratioValues(rungs, 'carapaceLengthMm');
    expect(values.map(({ value, hollow }) => [Number(value.toFixed(6)), hollow])).toEqual([
      [1.25, false],
      [1.2, true],
    ]);
    expect(values[1]?.lines).toContain('per instar, over 2 instars');
  });

  it('has nothing to draw with one skin, and the legend says what is missing', () => {
    expect(ratioValues(buildLadder([moltOn('2024-01-01', 5, 4)]).rungs, 'carapaceLengthMm')).toEqual([]);
    expect(ratioLegend(0, false)).toMatch(/needs two measured skins/);
  });
});

describe('intervalValues', () => {
  it('places the days at the instar that ended with them', () => {
    const { rungs } = buildLadder([moltOn('2024-01-01', 5, null), moltOn('2024-01-31', 6, null)]);
    expect(intervalValues(rungs).map(({ rung, value, hollow }) => [rung.instar?.number, value, hollow])).toEqual([[6, 30, false]]);
  });

  it('does not share days out over instars where nobody knows on which side of a molt the gap is', () => {
    const open = buildLadder([moltOn('2024-01-01', 5, null), moltOn('2024-03-01', null, null), moltOn('2024-04-30', 8, null)]);
    expect(open.rungs.map(({ stepKnown }) => stepKnown)).toEqual([true, false, true]);
    const values = intervalValues(open.rungs).map(({ value, hollow, lines }) => [value, hollow, lines[1]]);
    expect(values).toEqual([60, 60].map((days) => [days, true, 'perhaps over several instars']));
    const known = buildLadder([moltOn('2024-01-01', 5, null), moltOn('2024-04-30', 7, null)]);
    expect(intervalValues(known.rungs).map(({ value, lines }) => [value, lines[1]])).toEqual([[60, 'over 2 instars, shown per instar']]);
  });

  it('leaves out molts on one day, for which no logarithm can be drawn', () => {
    const one = moltOn('2024-01-01', null, null);
    const { rungs } = buildLadder([one, { ...one, molt: { ...one.molt, id: 'other' } }]);
    expect(intervalValues(rungs)).toEqual([]);
    expect(intervalLegend([], null)).toMatch(/need two dated molts/);
  });
});

const LIVE: LiveSize = {
  photoId: 'alive',
  takenOn: '2024-03-03',
  afterMoltId: 'molt-2024-01-01',
  step: 1,
  instarFrom: 6,
  instarTo: 6,
  ...{ carapaceLengthMm: estimateFrom(5.25, 0.125), carapaceWidthMm: null, legFirstMm: null, legFourthMm: null, legSpanMm: null },
  doubted: [],
};

describe('ladderRows', () => {
  it('gives each molt a row of the same width, with whose it is, rounded as the page shows it', () => {
    const ladder = buildLadder([moltOn('2024-01-01', 5, 4.123456), moltOn('2024-06-01', 6, null)]);
    const subject = { name: 'Ash', code: 'T-9', taxon: 'Aphonopelma seemanni', sample: true };
    const rows = ladderRows(subject, ladder, { live: [LIVE], measures: ['carapaceLengthMm'] });
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([19]));
    const whose = ['Ash', 'T-9', 'Aphonopelma seemanni', 'yes'];
    expect(rows[1]?.slice(0, 14)).toEqual([...whose, 'skin', 5, 5, 'no', 1, 'no', '2024-01-01', '2024-01-01', '4.12', '0.20']);
    expect(rows[2]?.slice(12, 15)).toEqual([null, null, null]);
    const live = ['living animal', 6, 6, null, null, null, '2024-03-03', '2024-03-03', '5.25', '0.25', null];
    expect(rows[3]?.slice(0, 15)).toEqual([...whose, ...live]);
  });
});
