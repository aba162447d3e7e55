import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '../../../../src/domain/dates.ts';
import type { GrowthRecord } from '../../../../src/domain/growth/belief/growthRecord.ts';
import { ForecastBasis } from '../../../../src/domain/growth/forecast/basis.ts';
import { basisFor, readCabinet } from '../../../../src/domain/growth/forecast/cabinetForecast.ts';
import { forecastFrom, GrowthForecast } from '../../../../src/domain/growth/forecast/forecast.ts';

const TODAY = '2026-06-15';
const day = fc.integer({ min: -9000, max: 400 }).map((days) => addDays(TODAY, days));
const perhaps = <Value>(arbitrary: fc.Arbitrary<Value>) => fc.option(arbitrary, { nil: null });
const molt = fc.record({ from: day, days: fc.integer({ min: 0, max: 60 }), instarShed: perhaps(fc.integer({ min: 1, max: 60 })) });
const animal = fc.record({
  taxon: fc.constantFrom('', 'Brachypelma', 'Brachypelma sp.', 'Brachypelma hamorii', 'Grammostola pulchra'),
  eggSacGroup: perhaps(fc.constantFrom('sac', ' SAC', '')),
  hatchedOn: perhaps(day),
  acquiredOn: perhaps(day),
  acquiredInstar: perhaps(fc.integer({ min: 1, max: 60 })),
  molts: fc.array(molt, { maxLength: 8 }),
  lengthsMm: fc.array(fc.double({ min: -1, max: 600 }), { minLength: 8, maxLength: 8 }),
});

describe('any cabinet whatever', () => {
  it('gets forecasts that fit their schema, windows in order and after today, and shares of one', () => {
    fc.assert(
      fc.property(fc.array(animal, { minLength: 1, maxLength: 6 }), (animals) => {
        const records = animals.map(({ molts, lengthsMm, ...one }, index): GrowthRecord => {
          const dated = molts.map(({ from, days, instarShed }, place) => ({
            id: `${index}-${place}`,
            happenedFrom: from,
            happenedTo: addDays(from, days),
            instarShed,
          }));
          const sizes = dated.map(({ id }, place) => ({ moltId: id, lengthMm: lengthsMm[place] ?? 0, uncertaintyMm: 0.1 }));
          return { specimenId: String(index), ...one, molts: dated, sizes };
        });
        const cabinet = readCabinet(records, TODAY);
        for (const { specimenId } of records) {
          const basis = basisFor(cabinet, specimenId);
          expect(ForecastBasis.parse(basis)).toEqual(basis);
          const forecast = forecastFrom(ForecastBasis.parse(basis));
          expect(GrowthForecast.parse(forecast)).toEqual(forecast);
          const { due, size } = forecast;
          if (due) {
            const days = [due.window90.from, due.window50.from, due.window50.to, due.window90.to];
            expect(days.toSorted()).toEqual(days);
            expect(due.window90.to >= TODAY).toBe(true);
          }
          for (const shares of [due?.shares, size?.shares]) {
            if (shares) expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});
