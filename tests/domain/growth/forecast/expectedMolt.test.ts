import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../../src/domain/dates.ts';
import type { GrowthRecord } from '../../../../src/domain/growth/belief/growthRecord.ts';
import { basisFor, readCabinet } from '../../../../src/domain/growth/forecast/cabinetForecast.ts';
import { expectedMoltFrom } from '../../../../src/domain/growth/forecast/expectedMolt.ts';
import { forecastFrom } from '../../../../src/domain/growth/forecast/forecast.ts';
import { growthRecord, moltsAfter } from './records.ts';

const TEN = growthRecord({ molts: moltsAfter([90, 100, 95, 105, 100, 98, 102, 100, 97, 103]) });
const LAST = TEN.molts.at(-1)?.happenedTo ?? '';

function dueOn(record: GrowthRecord, day: string) {
  const basis = basisFor(readCabinet([record], day), record.specimenId);
  const due = basis && forecastFrom(basis).due;
  if (!due) throw new Error('Expected a forecast');
  return due;
}

describe('expectedMoltFrom', () => {
  it.each([1, 60, 110, 400])('has the days of the forecast, none of them past, after %i days', (waited) => {
    const today = addDays(LAST, waited);
    const due = dueOn(TEN, today);
    const expected = expectedMoltFrom(due);
    expect(expected).toMatchObject({ ...due.window90, likely: due.middle, assumed: false });
    expect(expected && expected.from > today).toBe(true);
  });

  it('goes through its stages in order as an animal waits', () => {
    const stages = [1, 60, 95, 105, 130, 200, 400].map((waited) => expectedMoltFrom(dueOn(TEN, addDays(LAST, waited)))?.stage);
    expect([...new Set(stages)]).toEqual(['early', 'window', 'past-likely', 'overdue']);
    expect(stages[0]).toBe('early');
    expect(stages.at(-1)).toBe('overdue');
  });

  it('tells no day any more once hardly any interval lasts as long: a day or two would be told of an animal that has waited for years', () => {
    expect(expectedMoltFrom(dueOn(TEN, addDays(LAST, 130)))?.told).toBe(true);
    const late = dueOn(TEN, addDays(LAST, 1000));
    expect(daysBetween(late.window90.from, late.window90.to)).toBeGreaterThan(0);
    expect(late.chanceOfLasting).toBeLessThan(0.01);
    expect(expectedMoltFrom(late)?.told).toBe(false);
  });

  it('is mostly assumed for an animal of one dated molt without kin, which is then never called overdue', () => {
    const one = growthRecord({ molts: moltsAfter([100], false) });
    expect(dueOn(one, addDays(one.molts[0]?.happenedTo ?? '', 900)).chanceOfLasting).toBeLessThan(0.05);
    expect(expectedMoltFrom(dueOn(one, addDays(one.molts[0]?.happenedTo ?? '', 900)))).toMatchObject({
      stage: 'past-likely',
      assumed: true,
    });
  });

  it('says nothing where the beginning of the interval was not seen', () => {
    expect(expectedMoltFrom(dueOn(growthRecord({ acquiredOn: '2026-01-01' }), '2026-11-25'))).toBeNull();
  });
});
