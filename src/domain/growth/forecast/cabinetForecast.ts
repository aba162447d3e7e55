import { type CalendarDay, daysBetween } from '../../dates.ts';
import { growthGroundIn } from '../belief/growthBelief.ts';
import { type ForecastFact, type GrowthRecord, type GrowthSeries, hatchingSeen, instarNow } from '../belief/growthRecord.ts';
import { lineBasisIn } from '../belief/lineBasis.ts';
import { allSeries, growthIn, intervalsIn, type Pooled } from '../belief/pooledCabinet.ts';
import { FORECAST_MODEL, type ForecastBasis, type IntervalStart } from './basis.ts';
import type { DueForecast } from './dueForecast.ts';
import { dueFrom } from './forecast.ts';

/** What the animals of a cabinet say of each other. Either may hold fewer animals than the cabinet does. */
export interface CabinetGrowth {
  readonly intervals: Pooled;
  readonly growth: Pooled;
}

/** @param records all animals of a cabinet, with the sizes that are known of them. */
export function readCabinet(records: readonly GrowthRecord[], today: CalendarDay): CabinetGrowth {
  const series = allSeries(records, today);
  return { intervals: intervalsIn(series, today), growth: growthIn(series, today) };
}

/** What the forecast for one animal follows from; null for an animal that is not in the cabinet. */
export function basisFor({ intervals, growth }: CabinetGrowth, specimenId: string): ForecastBasis | null {
  const series = growth.series.get(specimenId);
  const ground = growthGroundIn(growth, specimenId);
  if (!series || !ground) return null;
  const interval = lineBasisIn(intervals.pool, specimenId, ground.instar);
  const start = startOf(series, growth.today);
  return (
    interval && {
      model: FORECAST_MODEL,
      madeOn: growth.today,
      start,
      instar: ground.instar,
      facts: factsOf(series, start),
      interval,
      growth: ground.growth,
      lastSkin: ground.lastSkin,
    }
  );
}

/** The day alone, from intervals alone; null for an animal that is not among them, or where there is nothing to count from. */
export function dueOf(intervals: Pooled, specimenId: string): DueForecast | null {
  const series = intervals.series.get(specimenId);
  if (!series) return null;
  const instar = instarNow(series, intervals.today);
  const interval = lineBasisIn(intervals.pool, specimenId, instar);
  return interval && dueFrom({ start: startOf(series, intervals.today), madeOn: intervals.today, instar, interval });
}

/**
 * The last molt; without one the hatching, if no molt can have gone by before the animal came; else the day it came, on which
 * the interval was running already.
 */
function startOf({ record, placed }: GrowthSeries, today: CalendarDay): IntervalStart | null {
  const last = placed.at(-1);
  if (last) return { kind: 'molt', moltId: last.molt.id, from: last.molt.happenedFrom, to: last.molt.happenedTo };
  const { acquiredOn } = record;
  const hatchedOn = hatchingSeen(record, today);
  if (hatchedOn !== null) return { kind: 'hatched', on: hatchedOn };
  return acquiredOn !== null && acquiredOn <= today ? { kind: 'acquired', on: acquiredOn } : null;
}

/** From here on the days of a molt widen a window so that a person would see it. */
const WIDE_DAYS = 60;

function factsOf({ placed, intervals, growth, facts: found }: GrowthSeries, start: IntervalStart | null): ForecastFact[] {
  const facts = new Set(found);
  if (placed.length === 0) facts.add('no-molts');
  if (!start) facts.add('nothing-to-count-from');
  if (start?.kind === 'acquired') facts.add('start-not-seen');
  if (start?.kind === 'molt' && daysBetween(start.from, start.to) > WIDE_DAYS) facts.add('last-molt-wide');
  if (intervals.length === 0) facts.add('no-whole-interval');
  if (growth.length === 0 && !facts.has('step-doubted')) {
    facts.add(placed.some(({ size }) => size !== null) ? 'one-measured-skin' : 'no-measured-skin');
  }
  return [...facts];
}
