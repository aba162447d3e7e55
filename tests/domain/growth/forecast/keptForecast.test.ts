import { describe, expect, it } from 'vitest';
import { addDays, type CalendarDay } from '../../../../src/domain/dates.ts';
import { seriesOf } from '../../../../src/domain/growth/belief/growthRecord.ts';
import { basisFor, readCabinet } from '../../../../src/domain/growth/forecast/cabinetForecast.ts';
import { coverageOf } from '../../../../src/domain/growth/forecast/coverage.ts';
import { forecastFrom, type GrowthForecast } from '../../../../src/domain/growth/forecast/forecast.ts';
import { judgeForecasts, type KeptForecast } from '../../../../src/domain/growth/forecast/keptForecast.ts';
import { scoreForecast } from '../../../../src/domain/growth/forecast/score.ts';
import type { DatedMolt } from '../../../../src/domain/molting/instars.ts';
import { growthRecord, moltsAfter } from './records.ts';

const MOLTS = moltsAfter([30, 60, 62]);
const LAST = MOLTS.at(-1)?.happenedTo ?? '';
const SIZES = [{ moltId: 'molt-2', lengthMm: 5, uncertaintyMm: 0.05 }];

function made(madeOn: CalendarDay, molts = MOLTS, sizes = SIZES): KeptForecast {
  const basis = basisFor(readCabinet([growthRecord({ molts, sizes })], madeOn), 'one');
  if (!basis) throw new Error('Expected a basis');
  return { id: madeOn, specimenId: 'one', madeAt: `${madeOn}T12:00:00.000Z`, basis, forecast: forecastFrom(basis) };
}

function next(day: CalendarDay, instarShed = 4): DatedMolt {
  return { id: 'next', happenedFrom: day, happenedTo: day, instarShed };
}

function placed(molts: readonly DatedMolt[], lengthMm = 6.4) {
  const sizes = [...SIZES, { moltId: 'next', lengthMm, uncertaintyMm: 0.05 }];
  return { placed: seriesOf(growthRecord({ molts, sizes }), '2026-01-01').placed, isAwaited: true, today: addDays(LAST, 2) };
}

describe('judgeForecasts', () => {
  const kept = made(addDays(LAST, 1));

  it('waits while no molt has come', () => {
    expect(judgeForecasts([kept], placed(MOLTS))).toEqual([{ score: null, unscored: 'waiting', counts: false }]);
  });

  it('scores day and size by the molt that came, and counts one forecast for it', () => {
    const came = placed([...MOLTS, next(kept.forecast.due?.middle ?? '')]);
    const judged = judgeForecasts([kept, made(addDays(LAST, 20))], came);
    expect(judged[0]).toEqual({ score: { due: 'within-50', size: 'within-50' }, unscored: null, counts: true });
    expect(judged[1]?.counts).toBe(false);
  });

  it('scores nothing that had happened already, lost its start or has molts missing before it', () => {
    expect(judgeForecasts([kept], placed([...MOLTS, next(addDays(LAST, 1))]))[0]?.unscored).toBe('had-molted-already');
    expect(judgeForecasts([kept], placed(MOLTS.slice(0, 2)))[0]?.unscored).toBe('start-not-on-record');
    expect(judgeForecasts([kept], placed([...MOLTS, next(addDays(LAST, 130), 5)]))[0]?.unscored).toBe('molt-missing');
  });

  it('counts a window that has passed without a molt as missed from the day after, once for each molt awaited', () => {
    const end = kept.forecast.due?.window90.to ?? '';
    const on = (today: CalendarDay, isAwaited = true) => {
      return judgeForecasts([kept, made(addDays(LAST, 20))], { ...placed(MOLTS), today, isAwaited });
    };
    expect(on(end)[0]?.unscored).toBe('waiting');
    expect(on(addDays(end, 1))[0]).toEqual({ score: { due: 'overrun', size: null }, unscored: null, counts: true });
    expect(on(addDays(end, 900)).map(({ counts }) => counts)).toEqual([true, false]);
    expect(on(addDays(end, 1), false)[0]).toEqual({ score: null, unscored: 'no-longer-awaited', counts: false });
  });

  describe('kept with the molt, before its skin was measured', () => {
    const before = [{ moltId: 'molt-1', lengthMm: 4, uncertaintyMm: 0.04 }];
    const early = made(addDays(LAST, 1), MOLTS, before);
    const due = early.forecast.due?.middle ?? '';
    const judgedWith = (lastSkinMm: number | null, nextMm: number) => {
      const measured = [['molt-2', lastSkinMm] as const, ['next', nextMm] as const].flatMap(([moltId, lengthMm]) =>
        lengthMm === null ? [] : [{ moltId, lengthMm, uncertaintyMm: 0.04 }],
      );
      const record = growthRecord({ molts: [...MOLTS, next(due)], sizes: [...before, ...measured] });
      return judgeForecasts([early], { placed: seriesOf(record, '2026-01-01').placed, isAwaited: true, today: addDays(LAST, 2) })[0]?.score;
    };

    it('is scored one molt ahead, from the skin as it was measured since', () => {
      const twoAhead = early.forecast.size?.nextSkin.middleMm ?? Number.NaN;
      expect(twoAhead / 4).toBeGreaterThan(1.5);
      expect(judgedWith(4.1, twoAhead)?.size).toBe('larger');
      expect(judgedWith(twoAhead / 1.3, twoAhead)?.size).toBe('within-50');
    });

    it('gets no score for a size when that skin was never measured, but keeps that of its days', () => {
      expect(judgedWith(null, 6.5)).toEqual({ due: 'within-50', size: null });
    });
  });

  it('scores the first molt of an animal that had none', () => {
    const first = made('2014-06-01', []);
    expect(judgeForecasts([first], placed(MOLTS))[0]?.score).not.toBeNull();
  });
});

describe('scoreForecast', () => {
  const window = { from: '2026-03-01', to: '2026-03-31' };
  const due = made(addDays(LAST, 1)).forecast.due;
  const interval = { middleMm: 10, low50Mm: 9, high50Mm: 11, low90Mm: 8, high90Mm: 12 };
  const forecast: Pick<GrowthForecast, 'due' | 'size'> = {
    due: due && { ...due, window50: window, window90: { from: '2026-02-01', to: '2026-05-31' } },
    size: {
      nextSkin: interval,
      afterMolt: interval,
      ownRatios: 3,
      shares: due?.shares ?? { own: 1, siblings: 0, species: 0, genus: 0, family: 0, prior: 0 },
    },
  };
  const hits = (from: CalendarDay, to: CalendarDay, carapaceLengthMm: number | null = null) => {
    const { due: day, size } = scoreForecast(forecast, { happenedFrom: from, happenedTo: to, carapaceLengthMm });
    return [day, size];
  };

  it.each([
    ['2026-03-01', '2026-03-31', 'within-50'],
    ['2026-02-01', '2026-02-28', 'within-90'],
    ['2026-05-31', '2026-05-31', 'within-90'],
    ['2026-01-31', '2026-01-31', 'early'],
    ['2026-06-01', '2026-06-05', 'late'],
    ['2026-02-28', '2026-03-01', 'open'],
    ['2026-02-20', '2026-04-20', 'open'],
  ])('places %s to %s: %s', (from, to, hit) => expect(hits(from, to)).toEqual([hit, null]));

  it.each([
    [9, 'within-50'],
    [12, 'within-90'],
    [7.9, 'smaller'],
    [12.1, 'larger'],
  ])('places %f mm: %s', (lengthMm, hit) => expect(hits('2026-03-02', '2026-03-02', lengthMm)[1]).toBe(hit));

  it('counts what lies in the narrower window in the wider one too, and nothing that is open', () => {
    const scores = [
      { due: 'within-50', size: 'larger' },
      { due: 'within-90', size: null },
      { due: 'late', size: 'within-50' },
      { due: 'open', size: null },
      { due: 'overrun', size: null },
    ] as const;
    expect(coverageOf(scores)).toEqual({
      due: { scored: 4, within50: 1, within90: 2 },
      size: { scored: 2, within50: 1, within90: 1 },
      overrun: 1,
      open: 1,
    });
  });
});
