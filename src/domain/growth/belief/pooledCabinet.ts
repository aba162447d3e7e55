import type { CalendarDay } from '../../dates.ts';
import { GROWTH_PRIOR, INTERVAL_PRIOR } from '../priors.ts';
import { type GrowthRecord, type GrowthSeries, seriesOf } from './growthRecord.ts';
import { type Pool, pool } from './pooling.ts';

export type AllSeries = ReadonlyMap<string, GrowthSeries>;

/** What animals say of each other in one quantity, prepared once. */
export interface Pooled {
  readonly today: CalendarDay;
  readonly series: AllSeries;
  readonly pool: Pool;
}

/** @param records those of animals no longer kept included: their molts still speak for their kin. */
export function allSeries(records: readonly GrowthRecord[], today: CalendarDay): AllSeries {
  return new Map(records.map((record) => [record.specimenId, seriesOf(record, today)]));
}

/**
 * Days between molts, in time linear in the molts. An interval still running says nothing to kin here: males that have grown
 * up and animals whose keeper stopped writing never end theirs, and would lengthen everyone's.
 */
export function intervalsIn(series: AllSeries, today: CalendarDay): Pooled {
  return { today, series, pool: pool([...series.values()].map(membersOf('intervals')), INTERVAL_PRIOR) };
}

/** Growth at molts, likewise. An animal without two measured skins says nothing of its kin and learns all the same. */
export function growthIn(series: AllSeries, today: CalendarDay): Pooled {
  return { today, series, pool: pool([...series.values()].map(membersOf('growth')), GROWTH_PRIOR) };
}

function membersOf(steps: 'intervals' | 'growth') {
  return ({ record: { specimenId, taxon, eggSacGroup }, instarVariance, [steps]: own }: GrowthSeries) => ({
    specimenId,
    taxon,
    eggSacGroup,
    instarVariance,
    steps: own,
  });
}
