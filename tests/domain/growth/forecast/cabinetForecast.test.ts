import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../../src/domain/dates.ts';
import { type GrowthRecord, seriesOf } from '../../../../src/domain/growth/belief/growthRecord.ts';
import { ForecastBasis } from '../../../../src/domain/growth/forecast/basis.ts';
import { basisFor, readCabinet } from '../../../../src/domain/growth/forecast/cabinetForecast.ts';
import { forecastFrom, GrowthForecast } from '../../../../src/domain/growth/forecast/forecast.ts';
import { forecastFor } from '../../../support/forecastFor.ts';
import { growthRecord, HATCHED, moltsAfter } from './records.ts';

/** Days an instar lasted, as published; `total` is the paper's own figure where it gives one. */
const DURATIONS = {
  // Moreira VSS, Del-Claro K (2011) Zoologia 28:565-570: instars 1 to 10, 271 days to the tenth's end.
  lagotis: [25.27, 21.45, 24.45, 24.54, 25.7, 27.0, 28.1, 29.5, 30.6, 34.58],
  // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239: females mature at 302.5 +- 25.2 days.
  gracilis: [8, 49, 51.4, 58.7, 61.8, 69.2],
  // Lourenco WR, Goodman SM (2006) Zool. Anz. 244:181-185: Grosphus hirtus, both sexes alike. The paper prints no sum: 851 was added up
  // from its durations apart from this project.
  hirtus: [14, 112, 117, 274, 334],
  // Lourenco WR, Leguin EA, Cloudsley-Thompson JL (2011): ages at the molts of Chiromachus ochropus, to 3773 days.
  ochropus: [10, 232, 354, 329, 838, 547, 351, 296, 356, 460],
} as const;

function forecastOf(record: GrowthRecord, today: string, kin: readonly GrowthRecord[] = []): GrowthForecast {
  const forecast = forecastFor(readCabinet([record, ...kin], today), record.specimenId);
  if (!forecast) throw new Error('Expected a forecast');
  expect(GrowthForecast.parse(forecast)).toEqual(forecast);
  return forecast;
}

function daysWide(window: { readonly from: string; readonly to: string }): number {
  return daysBetween(window.from, window.to);
}

describe('the steps that a forecast reads', () => {
  it.each([
    ['lagotis', 271, 1],
    ['gracilis', 302.5, 25.2],
    ['hirtus', 851, 0.5],
    ['ochropus', 3773, 0.5],
  ] as const)('add up to the age that is published for %s', (name, total, within) => {
    const molts = moltsAfter(DURATIONS[name]);
    const { intervals } = seriesOf(growthRecord({ molts }), '2026-01-01');
    const days = intervals.reduce((sum, { readings }) => sum + Math.exp(readings[0]?.value ?? Number.NaN), 0);
    expect(intervals).toHaveLength(DURATIONS[name].length - 1);
    expect(Math.abs(days + DURATIONS[name][0] - total)).toBeLessThanOrEqual(within);
  });

  it('add up, for the females of Spodoptera frugiperda, to a little more than the mean of both sexes', () => {
    // Montezano DG et al. (2019) J. Agric. Sci. 11(8): the durations of the six instars of females make 13.95 days, the abstract gives
    // 13.73 for the larval stage and says that females take longer than males: that mean is of both sexes, so the two do not contradict.
    // In hundredths of a day, since records know whole days.
    const females = [257, 207, 213, 248, 257, 213];
    const { intervals } = seriesOf(growthRecord({ molts: moltsAfter(females) }), '2026-01-01');
    const days = intervals.reduce((sum, { readings }) => sum + Math.exp(readings[0]?.value ?? Number.NaN), females[0] ?? 0) / 100;
    expect(days).toBeCloseTo(13.95, 9);
    expect(days - 13.73).toBeGreaterThan(0);
    expect(days / 13.73 - 1).toBeLessThan(0.02);
  });

  it('count the molts of a gap on record', () => {
    const molts = moltsAfter([30, 40, 50, 60, 70]).filter(({ id }) => id !== 'molt-2');
    const { intervals } = seriesOf(growthRecord({ molts }), '2026-01-01');
    expect(intervals.map(({ readings }) => readings[0]?.molts)).toEqual([1, 2, 1]);
    expect(intervals[1]?.readings[0]?.value).toBeCloseTo(Math.log(55), 12);
    expect(intervals[1]?.along).toBe(3.5);
  });

  it('carry what spans of dates leave open', () => {
    const [first, second] = moltsAfter([30, 40]);
    if (!first || !second) throw new Error('Expected two molts');
    const spanned = { ...second, happenedTo: addDays(second.happenedTo, 10) };
    const [interval] = seriesOf(growthRecord({ molts: [first, spanned] }), '2026-01-01').intervals;
    expect(interval?.readings[0]?.value).toBeCloseTo(Math.log(45), 12);
    expect(interval?.readings[0]?.knownVariance).toBeCloseTo((1 + 11 ** 2) / 12 / 45 ** 2, 12);
  });
});

describe('forecastFor', () => {
  it('foretells a usual wait, a little wider, from a molt whose days are years apart', () => {
    const molts = [{ id: 'found', happenedFrom: '2020-01-01', happenedTo: '2026-11-01', instarShed: null }];
    const known = [{ ...molts[0], id: 'found', happenedFrom: '2026-11-01', happenedTo: '2026-11-01', instarShed: null }];
    const wide = forecastOf(growthRecord({ molts }), '2026-11-26');
    const narrow = forecastOf(growthRecord({ molts: known }), '2026-11-26');
    expect(wide.facts).toContain('last-molt-wide');
    expect(wide.due && wide.due.window90.from < (narrow.due?.window90.from ?? '')).toBe(true);
    expect(wide.due && daysWide(wide.due.window90)).toBeLessThan(2.5 * (narrow.due ? daysWide(narrow.due.window90) : 0));
    expect(wide.facts).not.toContain('overdue');
  });

  it('hardly changes where a span of days is treated as starts of their own', () => {
    // 40 days are just under the limit for this animal's intervals, 50 beyond: the windows have to grow steadily.
    const molts = moltsAfter([100, 100, 100, 100, 100, 100]);
    const widths = [30, 40, 50, 60].map((days) => {
      const spanned = molts.map((molt, index) =>
        index < 5 ? molt : { ...molt, happenedFrom: addDays(molt.happenedTo, -days / 2), happenedTo: addDays(molt.happenedTo, days / 2) },
      );
      const { due } = forecastOf(growthRecord({ molts: spanned }), addDays(spanned[5]?.happenedTo ?? HATCHED, 1));
      return due ? daysWide(due.window90) : Number.NaN;
    });
    for (const [index, width] of widths.entries()) expect(Math.abs(width - (widths[index - 1] ?? width))).toBeLessThan(9);
  });

  it.each(['lagotis', 'gracilis', 'ochropus'] as const)('tells the last interval of %s from those before, monotone or not', (name) => {
    const intervals = DURATIONS[name].slice(0, -1);
    const molts = moltsAfter(intervals);
    const last = molts.at(-1)?.happenedTo ?? HATCHED;
    const { due } = forecastOf(growthRecord({ molts }), addDays(last, 1));
    const actual = addDays(last, Math.round(DURATIONS[name].at(-1) ?? 0));
    expect(due && due.window90.from <= actual && actual <= due.window90.to).toBe(true);
    expect(due?.ownIntervals).toBe(intervals.length - 1);
  });

  it('moves on with the waiting and says when it has lasted long', () => {
    const molts = moltsAfter([30, 60, 62, 58, 61, 60]);
    const last = molts.at(-1)?.happenedTo ?? HATCHED;
    const soon = forecastOf(growthRecord({ molts }), addDays(last, 1));
    const late = forecastOf(growthRecord({ molts }), addDays(last, 70));
    const overdue = forecastOf(growthRecord({ molts }), addDays(last, 400));
    expect(late.due && soon.due && late.due.middle > soon.due.middle).toBe(true);
    expect(late.due && late.due.window90.from >= addDays(last, 70)).toBe(true);
    expect(soon.facts).not.toContain('overdue');
    expect(overdue.facts).toContain('overdue');
    expect(overdue.due?.chanceOfLasting).toBeLessThan(0.01);
  });

  it('is wide for an animal with one molt, narrower with siblings, and says so', () => {
    const molts = moltsAfter([30]);
    const one = growthRecord({ molts, eggSacGroup: 'sac', sizes: [{ moltId: 'molt-0', lengthMm: 4, uncertaintyMm: 0.04 }] });
    const siblings = Array.from({ length: 6 }, (_, index) => {
      const own = moltsAfter([30, 45, 48, 52, 55]);
      const sizes = own.map(({ id }, step) => ({ moltId: id, lengthMm: 4 * 1.2 ** step, uncertaintyMm: 0.04 }));
      return growthRecord({ specimenId: `sibling-${index}`, eggSacGroup: 'sac', molts: own, sizes });
    });
    const today = addDays(HATCHED, 300);
    const alone = forecastOf(one, addDays(HATCHED, 31));
    const withKin = forecastOf(one, today, siblings);
    expect(alone.facts).toEqual(expect.arrayContaining(['no-whole-interval', 'one-measured-skin']));
    expect(alone.due?.shares).toMatchObject({ own: 0, siblings: 0, prior: 1 });
    expect(alone.due && daysWide(alone.due.window90)).toBeGreaterThan(100);
    expect(withKin.due?.shares.siblings).toBeGreaterThan(0.3);
    expect(withKin.size?.nextSkin.middleMm).toBeLessThan(alone.size?.nextSkin.middleMm ?? 0);
    const width = (forecast: GrowthForecast) => (forecast.size?.nextSkin.high90Mm ?? 0) - (forecast.size?.nextSkin.low90Mm ?? 0);
    expect(width(withKin)).toBeLessThan(width(alone));
  });

  it('never takes the skin for the animal: after the next molt it is one ratio larger than the next skin', () => {
    const molts = moltsAfter([30, 60, 62, 58, 61, 60]);
    const sizes = molts.map(({ id }, step) => ({ moltId: id, lengthMm: 3 * 1.25 ** step, uncertaintyMm: 0.001 }));
    const { size } = forecastOf(growthRecord({ molts, sizes }), addDays(HATCHED, 340));
    const last = 3 * 1.25 ** 5;
    expect((size?.nextSkin.middleMm ?? 0) / last).toBeCloseTo(1.25, 1);
    expect((size?.afterMolt.middleMm ?? 0) / last).toBeCloseTo(1.25 ** 2, 1);
    const unmeasured = forecastOf(growthRecord({ molts, sizes: sizes.slice(0, -1) }), addDays(HATCHED, 340));
    expect((unmeasured.size?.nextSkin.middleMm ?? 0) / last).toBeCloseTo(1.25, 1);
  });

  it('is made again, years later, from the basis kept with it', () => {
    const molts = moltsAfter([30, 60, 62, 58]);
    const record = growthRecord({ molts, sizes: [{ moltId: 'molt-3', lengthMm: 9, uncertaintyMm: 0.1 }] });
    const cabinet = readCabinet([record], addDays(HATCHED, 230));
    const kept: unknown = JSON.parse(JSON.stringify(basisFor(cabinet, 'one')));
    expect(forecastFrom(ForecastBasis.parse(kept))).toEqual(forecastFor(cabinet, 'one'));
  });
});

describe('a forecast from little or odd records', () => {
  it.each([
    ['nothing at all', {}, ['no-molts', 'nothing-to-count-from', 'no-whole-interval', 'no-measured-skin', 'instar-assumed']],
    ['a day of arrival', { acquiredOn: '2025-06-01', acquiredInstar: 5 }, ['no-molts', 'start-not-seen']],
    ['a hatching', { hatchedOn: '2025-12-01' }, ['no-molts']],
    ['a day of arrival to come', { acquiredOn: '2027-01-01' }, ['nothing-to-count-from']],
    ['molts to come', { molts: moltsAfter([5000]) }, ['date-in-future', 'no-molts']],
    [
      'molts on one day',
      { molts: moltsAfter([30, 0.2]).map((molt) => ({ ...molt, happenedFrom: '2015-02-01', happenedTo: '2015-02-01' })) },
      ['molts-on-one-day', 'no-whole-interval'],
    ],
    [
      'numbers that contradict',
      { molts: moltsAfter([30, 40]).map((molt) => ({ ...molt, instarShed: 4 })) },
      ['instars-contradict', 'instar-assumed'],
    ],
    ['no numbers', { molts: moltsAfter([30, 40], false) }, ['instar-assumed']],
    [
      'impossible sizes',
      { molts: moltsAfter([30]), sizes: [{ moltId: 'molt-0', lengthMm: 0, uncertaintyMm: Number.NaN }] },
      ['no-measured-skin', 'size-unusable'],
    ],
  ] satisfies [string, Partial<GrowthRecord>, string[]][])(
    'with %s says what it lacks, in numbers that fit its schema',
    (_, part, facts) => {
      const forecast = forecastOf(growthRecord(part), '2026-01-01');
      expect(forecast.facts).toEqual(expect.arrayContaining(facts));
      expect(forecast.due === null).toBe(
        facts.includes('nothing-to-count-from') || (facts.includes('no-molts') && facts.includes('date-in-future')),
      );
      if (forecast.due) expect(forecast.due.window90.to > '2026-01-01').toBe(true);
    },
  );

  it('foretells the day but no size while the last skin is in doubt, and says so', () => {
    const molts = moltsAfter([30, 40, 50]);
    const sizes = [9, 8, 6].map((lengthMm, index) => ({ moltId: `molt-${index}`, lengthMm, uncertaintyMm: 0 }));
    const forecast = forecastOf(growthRecord({ molts, sizes }), '2015-07-01');
    expect(forecast).toMatchObject({ size: null, facts: expect.arrayContaining(['step-doubted', 'last-skin-doubted']) });
    expect(forecast.due).not.toBeNull();
    const within = sizes.map((size) => ({ ...size, uncertaintyMm: 2 }));
    expect(forecastOf(growthRecord({ molts, sizes: within }), '2015-07-01').size).not.toBeNull();
  });

  it('foretells from a skin that the ones around it confirm, as if the doubted growth before were not on record', () => {
    const molts = moltsAfter([30, 40, 50, 60]);
    const sized = (lengthsMm: readonly number[]) =>
      lengthsMm.map((lengthMm, index) => ({ moltId: `molt-${index + 1}`, lengthMm, uncertaintyMm: 0.05 }));
    const doubted = forecastOf(
      growthRecord({ molts, sizes: [{ moltId: 'molt-0', lengthMm: 40, uncertaintyMm: 0.1 }, ...sized([6, 8])] }),
      '2015-07-01',
    );
    const without = forecastOf(growthRecord({ molts, sizes: sized([6, 8]) }), '2015-07-01');
    expect(doubted.facts).toContain('step-doubted');
    expect(doubted.facts).not.toContain('last-skin-doubted');
    expect(doubted.size).toEqual(without.size);
  });

  it('tells that few intervals of its own fix their level long before they fix how they lengthen', () => {
    const trendAfter = (molts: number) => {
      const { due } = forecastOf(
        growthRecord({ molts: moltsAfter(Array.from({ length: molts }, (_, index) => 40 * 1.1 ** index)) }),
        '2018-07-01',
      );
      return { level: due?.shares.own ?? Number.NaN, trend: due?.ownTrend ?? Number.NaN };
    };
    const few = trendAfter(5);
    expect(few.level).toBeGreaterThan(0.5);
    expect(few.trend).toBeLessThan(0.5);
    expect(trendAfter(14).trend).toBeGreaterThan(2 * few.trend);
    expect(trendAfter(2).trend).toBeLessThan(few.trend);
  });

  it('learns nothing from a sibling whose skins were measured by a wrong scale', () => {
    const molts = moltsAfter([30, 40, 50]);
    const family = { taxon: 'Grammostola pulchra', eggSacGroup: 'A' };
    const sizes = (lengthsMm: readonly number[]) =>
      lengthsMm.map((lengthMm, index) => ({ moltId: `molt-${index}`, lengthMm, uncertaintyMm: 0.05 }));
    const own = growthRecord({ ...family, specimenId: 'own', molts, sizes: sizes([5, 6.5]) });
    const sibling = (lengthsMm: readonly number[]) => growthRecord({ ...family, specimenId: 'sibling', molts, sizes: sizes(lengthsMm) });
    const sizeBeside = (lengthsMm: readonly number[]) => {
      const basis = basisFor(readCabinet([own, sibling(lengthsMm)], '2015-07-01'), 'own');
      return basis && forecastFrom(basis).size;
    };
    expect(sizeBeside([5, 6.4, 4.1])).toEqual(sizeBeside([5, 6.4]));
    expect(sizeBeside([5, 6.4, 8.2])).not.toEqual(sizeBeside([5, 6.4]));
  });

  it('learns from a sibling as if a skin that a scale made 1.6 times too large were not measured', () => {
    const molts = moltsAfter([30, 40, 50, 60, 70]);
    const family = { taxon: 'Grammostola pulchra', eggSacGroup: 'A' };
    const sizes = (lengthsMm: readonly number[]) =>
      lengthsMm.map((lengthMm, index) => ({ moltId: `molt-${index}`, lengthMm, uncertaintyMm: 0.05 }));
    const own = growthRecord({ ...family, specimenId: 'own', molts, sizes: sizes([5]) });
    const sizeBeside = (lengthsMm: readonly number[], left: number | null) => {
      const sibling = growthRecord({
        ...family,
        specimenId: 'sibling',
        molts,
        sizes: sizes(lengthsMm).filter((_, index) => index !== left),
      });
      return forecastOf(own, '2015-09-15', [sibling]).size;
    };
    const wrong = sizeBeside([5, 6.25, 7.8 * 1.6, 9.8, 12.2], null);
    expect(wrong).toEqual(sizeBeside([5, 6.25, 7.8, 9.8, 12.2], 2));
    expect(wrong).not.toBeNull();
  });
});
