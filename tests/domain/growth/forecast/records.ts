import { addDays, type CalendarDay } from '../../../../src/domain/dates.ts';
import type { GrowthRecord } from '../../../../src/domain/growth/belief/growthRecord.ts';
import type { DatedMolt } from '../../../../src/domain/molting/instars.ts';

export const HATCHED = '2015-01-01';

export function growthRecord(part: Partial<GrowthRecord> = {}): GrowthRecord {
  return {
    specimenId: 'one',
    taxon: 'Brachypelma hamorii',
    eggSacGroup: null,
    hatchedOn: null,
    acquiredOn: null,
    acquiredInstar: null,
    molts: [],
    sizes: [],
    ...part,
  };
}

/** Molts known to the day, so many days after each other from `HATCHED` on, the first shedding instar 1. */
export function moltsAfter(intervals: readonly number[], isNumbered = true): DatedMolt[] {
  let age = 0;
  return intervals.map((days, index) => {
    age += days;
    const day: CalendarDay = addDays(HATCHED, Math.round(age));
    return { id: `molt-${index}`, happenedFrom: day, happenedTo: day, instarShed: isNumbered ? index + 1 : null };
  });
}
