import type { CalendarDay } from '../../dates.ts';
import { GROWTH_PRIOR, INTERVAL_PRIOR } from '../priors.ts';
import { FORECAST_MODEL, type ForecastBasis, type IntervalStart, type LineBasis } from './basis.ts';
import { type ForecastFact, type GrowthRecord, type GrowthSeries, instarWithoutMolts, seriesOf } from './growthRecord.ts';
import { type Pool, type PooledAnimal, pool } from './pooling.ts';
import { kinShares } from './shares.ts';

/** What all animals of a cabinet say of each other, prepared once. */
export interface CabinetGrowth {
  readonly today: CalendarDay;
  readonly series: ReadonlyMap<string, GrowthSeries>;
  readonly intervals: Pool;
  readonly growth: Pool;
}

/**
 * Reads a whole cabinet, in time linear in its molts. An interval still running says nothing to kin here: males that have grown
 * up and animals whose keeper stopped writing never end theirs, and would lengthen everyone's.
 *
 * @param records all animals, those no longer kept included: their skins still speak for their kin.
 */
export function readCabinet(records: readonly GrowthRecord[], today: CalendarDay): CabinetGrowth {
  const series = records.map((record) => seriesOf(record, today));
  const pooled = (steps: 'intervals' | 'growth'): PooledAnimal[] =>
    series.map((one) => ({ ...labelsOf(one.record), instarVariance: one.instarVariance, steps: one[steps] }));
  return {
    today,
    series: new Map(series.map((one) => [one.record.specimenId, one])),
    intervals: pool(pooled('intervals'), INTERVAL_PRIOR),
    growth: pool(pooled('growth'), GROWTH_PRIOR),
  };
}

/** What the forecast for one animal follows from; null for an animal that is not in the cabinet. */
export function basisFor(cabinet: CabinetGrowth, specimenId: string): ForecastBasis | null {
  const series = cabinet.series.get(specimenId);
  if (!series) return null;
  const { record, placed, facts } = series;
  const last = placed.at(-1);
  const start = startOf(series, cabinet.today);
  const instar = last ? last.instar + 1 : start?.kind === 'hatched' ? 1 : instarWithoutMolts(record);
  const skin = placed.findLast(({ size, stepKnown }) => size !== null && stepKnown);
  const interval = lineBasis(cabinet.intervals, specimenId, instar);
  const growth = lineBasis(cabinet.growth, specimenId, instar - 0.5);
  if (!interval || !growth) return null;
  return {
    model: FORECAST_MODEL,
    madeOn: cabinet.today,
    start,
    instar,
    facts: factsOf(series, start, facts),
    interval,
    growth,
    lastSkin: skin?.size ? { ...sizeOf(skin.size), instar: skin.instar } : null,
  };
}

function sizeOf({ moltId, lengthMm, uncertaintyMm }: NonNullable<GrowthSeries['placed'][number]['size']>) {
  return { moltId, lengthMm, uncertaintyMm };
}

function labelsOf({ specimenId, taxon, eggSacGroup }: GrowthRecord) {
  return { specimenId, taxon, eggSacGroup };
}

function lineBasis(from: Pool, specimenId: string, along: number): LineBasis | null {
  const node = from.tree.animals.get(specimenId);
  const own = from.own.get(specimenId);
  return node && own ? { kin: node.prior, kinShares: kinShares(node, along), ...own, rows: [...own.rows] } : null;
}

/**
 * The last molt; without one the hatching, if no molt can have gone by before the animal came; else the day it came, on which
 * the interval was running already.
 */
function startOf({ record, placed }: GrowthSeries, today: CalendarDay): IntervalStart | null {
  const last = placed.at(-1);
  if (last) return { kind: 'molt', moltId: last.molt.id, from: last.molt.happenedFrom, to: last.molt.happenedTo };
  const { hatchedOn, acquiredOn, acquiredInstar } = record;
  const isBred = acquiredInstar === 1 || (acquiredInstar === null && acquiredOn === null);
  if (hatchedOn !== null && hatchedOn <= today && isBred) return { kind: 'hatched', on: hatchedOn };
  return acquiredOn !== null && acquiredOn <= today ? { kind: 'acquired', on: acquiredOn } : null;
}

function factsOf(
  { placed, intervals, growth }: GrowthSeries,
  start: IntervalStart | null,
  found: ReadonlySet<ForecastFact>,
): ForecastFact[] {
  const facts = new Set(found);
  if (placed.length === 0) facts.add('no-molts');
  if (!start) facts.add('nothing-to-count-from');
  if (start?.kind === 'acquired') facts.add('start-not-seen');
  if (intervals.length === 0) facts.add('no-whole-interval');
  if (growth.length === 0) facts.add(placed.some(({ size }) => size !== null) ? 'one-measured-skin' : 'no-measured-skin');
  return [...facts];
}
