import { describe, expect, it } from 'vitest';
import { allSeries, growthIn } from '../../../../src/domain/growth/belief/pooledCabinet.ts';
import { simulateCabinet, USUAL_TRUTH } from '../../../../src/domain/growth/simulation/simulatedCabinet.ts';
import { growthRecord, moltsAfter } from '../forecast/records.ts';

const TODAY = '2026-11-25';

describe('the growth of a cabinet', () => {
  it.each([0.05, 0.08])('gives the scatter of single molts, %f, unbiased by the line being fitted to it', (scatter) => {
    const truth = { ...USUAL_TRUTH, animals: 400, missed: 0, growth: { ...USUAL_TRUTH.growth, scatter, scatterSpread: 0 } };
    const records = simulateCabinet(truth, TODAY, 7).map(({ record }) => record);
    const { pool } = growthIn(allSeries(records, TODAY), TODAY);
    expect(Math.sqrt(pool.scatterVariance) / scatter).toBeGreaterThan(0.97);
    expect(Math.sqrt(pool.scatterVariance) / scatter).toBeLessThan(1.03);
  });

  it('is the same beside animals of which no skin was measured', () => {
    const records = simulateCabinet({ ...USUAL_TRUTH, animals: 30 }, TODAY, 8).map(({ record }) => record);
    const strangers = Array.from({ length: 50 }, (_, index) =>
      growthRecord({ specimenId: `unmeasured-${index}`, taxon: 'Genus0 species0', molts: moltsAfter([100, 120]) }),
    );
    const alone = growthIn(allSeries(records, TODAY), TODAY).pool;
    const beside = growthIn(allSeries([...records, ...strangers], TODAY), TODAY).pool;
    expect(beside.spreads).toEqual(alone.spreads);
    expect(beside.scatterVariance).toBe(alone.scatterVariance);
    for (const { specimenId } of records) {
      expect(beside.tree.animals.get(specimenId)?.prior.level).toBeCloseTo(alone.tree.animals.get(specimenId)?.prior.level ?? 0, 12);
    }
  });
});
