import type { CalendarDay, Instant } from '../dates.ts';
import { groundsIn } from '../growth/forecast/expectedMolt.ts';
import { type FollowedAnimal, unrecordedMoltOf } from './followed.ts';

/** One entry for a keeper's calendar: what it is about as facts, on days or at a moment. `uid` stays the same as dates move. */
export type CalendarEntry = {
  /** Globally unique and stable (RFC 5545, 3.8.4.7): a later feed with the same one moves the entry. */
  readonly uid: string;
  readonly specimenId: string;
} & (
  | { readonly kind: 'feeding-hold'; readonly from: CalendarDay; readonly until: CalendarDay }
  | { readonly kind: 'fang-check'; readonly on: CalendarDay }
  | { readonly kind: 'molt-expected'; readonly from: CalendarDay; readonly to: CalendarDay; readonly likely: CalendarDay }
  | { readonly kind: 'molt-check'; readonly at: Instant; readonly state: 'look-closer' | 'concern' }
  | { readonly kind: 'skin-check'; readonly on: CalendarDay }
);

const MS_PER_MINUTE = 60_000;

/**
 * Holds, expected molts and checks of all animals. Their names hang on the molt or the observation they come from and not on
 * any date, so that a corrected date moves the entry instead of adding one: on the count of molts for what follows the last
 * one, because a watched molt is put on record later and must keep its entries.
 */
export function calendarEntriesOf(animals: readonly FollowedAnimal[]): CalendarEntry[] {
  return animals.flatMap((animal): CalendarEntry[] => {
    const { records, hold, timer } = animal;
    const specimenId = records.specimen.id;
    const unrecorded = unrecordedMoltOf(animal);
    const name = (kind: string, of: string | number) => ({ uid: `${kind}.${specimenId}.${of}@exuviary`, specimenId });
    const molted = records.molts.length + (unrecorded === null ? 0 : 1);
    const entries: CalendarEntry[] = [];
    if (timer) {
      const start = Date.parse(timer.startedAt.at);
      for (const [state, minutes] of [
        ['look-closer', timer.lookCloserAfterMinutes],
        ['concern', timer.concernAfterMinutes],
      ] as const) {
        const at = new Date(start + minutes * MS_PER_MINUTE).toISOString();
        entries.push({ ...name(`molt-${state}`, timer.observationId), kind: 'molt-check', at, state });
      }
    }
    if (hold) {
      entries.push({ ...name('feeding-hold', molted), kind: 'feeding-hold', from: hold.moltedOn, until: hold.until });
      if (hold.missing.includes('fangs')) entries.push({ ...name('fang-check', molted), kind: 'fang-check', on: hold.until });
    }
    const forecast = groundsIn(records.forecast);
    if (forecast && !timer) {
      const { from, likely, to } = forecast;
      entries.push({ ...name('molt-expected', molted), kind: 'molt-expected', from, likely, to });
    }
    if (unrecorded !== null) entries.push({ ...name('skin-check', molted), kind: 'skin-check', on: unrecorded });
    return entries;
  });
}
