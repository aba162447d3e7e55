import { describe, expect, it } from 'vitest';
import { readCabinet } from '../../../../src/domain/growth/forecast/cabinetForecast.ts';
import { coverageOf } from '../../../../src/domain/growth/forecast/coverage.ts';
import { simulateCabinet, USUAL_TRUTH } from '../../../../src/domain/growth/simulation/simulatedCabinet.ts';
import { scoresByNearestKin, scoresOf } from '../../../support/simulatedForecasts.ts';

const TODAY = '2026-11-25';

const SEEDS = [1, 2, 3, 4];

describe('forecasts for four cabinets of 2,000 simulated animals of known truth', () => {
  const cabinets = SEEDS.map((seed) => simulateCabinet(USUAL_TRUTH, TODAY, seed));
  const [animals = []] = cabinets;
  const cabinet = readCabinet(
    animals.map(({ record }) => record),
    TODAY,
  );
  const coverage = coverageOf(cabinets.flatMap((one) => scoresOf(one, TODAY)));

  it('hold the next molt in their windows as often as these say', () => {
    expect(coverage.due.scored).toBe(8000);
    expect(coverage.due.within90 / coverage.due.scored).toBeGreaterThan(0.89);
    expect(coverage.due.within90 / coverage.due.scored).toBeLessThan(0.915);
    expect(coverage.due.within50 / coverage.due.scored).toBeGreaterThan(0.48);
    expect(coverage.due.within50 / coverage.due.scored).toBeLessThan(0.52);
  });

  it('hold the next skin in their intervals as often as these say', () => {
    expect(coverage.size.scored).toBeGreaterThan(7200);
    expect(coverage.size.within90 / coverage.size.scored).toBeGreaterThan(0.88);
    expect(coverage.size.within90 / coverage.size.scored).toBeLessThan(0.92);
    expect(coverage.size.within50 / coverage.size.scored).toBeGreaterThan(0.47);
    expect(coverage.size.within50 / coverage.size.scored).toBeLessThan(0.53);
  });

  it('hold it as often where only the nearest kin of an animal are read, as in every room', () => {
    const { size } = coverageOf(cabinets.slice(0, 2).flatMap((one) => scoresByNearestKin(one, TODAY)));
    expect(size.scored).toBeGreaterThan(3600);
    expect(size.within90 / size.scored).toBeGreaterThan(0.88);
    expect(size.within90 / size.scored).toBeLessThan(0.92);
    expect(size.within50 / size.scored).toBeGreaterThan(0.47);
    expect(size.within50 / size.scored).toBeLessThan(0.53);
  });

  it('learn the scatter, the spread of kin and the share of unseen molts', () => {
    expect(Math.sqrt(cabinet.intervals.pool.scatterVariance)).toBeCloseTo(USUAL_TRUTH.interval.scatter, 1);
    expect(Math.sqrt(cabinet.growth.pool.scatterVariance)).toBeCloseTo(USUAL_TRUTH.growth.scatter, 2);
    expect(Math.sqrt(cabinet.intervals.pool.spreads.animal.levelVariance)).toBeCloseTo(USUAL_TRUTH.interval.spread.animal, 1);
    expect(cabinet.intervals.pool.unseen).toBeGreaterThan(0.01);
    expect(cabinet.intervals.pool.unseen).toBeLessThan(0.04);
  });

  it('come out the same from the same seed', () => {
    expect(simulateCabinet({ ...USUAL_TRUTH, animals: 50 }, TODAY, 5)).toEqual(simulateCabinet({ ...USUAL_TRUTH, animals: 50 }, TODAY, 5));
  });
});
