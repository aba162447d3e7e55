import { addDays, type CalendarDay, type Instant } from '../dates.ts';
import { groundsIn } from '../growth/forecast/expectedMolt.ts';
import { skinsToRecover } from './board.ts';
import { type AnimalRecords, type FollowedAnimal, unrecordedMoltOf } from './followed.ts';

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

const OF_AN_ANIMAL = ['feeding-hold', 'fang-check', 'molt-expected', 'molt-look-closer', 'molt-concern', 'skin-check'] as const;
type EntryName = (typeof OF_AN_ANIMAL)[number];

/** A name under which an earlier feed may have had an entry that is not due any more. */
export interface CanceledEntry {
  readonly uid: string;
  readonly specimenId: string;
  readonly kind: 'not-due';
  readonly was: EntryName;
}

const MS_PER_MINUTE = 60_000;

/** Skins of so long ago are not called off any more: their entries lie as far back in any calendar. Judgment. */
const SKINS_CALLED_OFF_DAYS = 365;

function uidOf(name: EntryName, ...of: readonly string[]): string {
  return `${[name, ...of].join('.')}@exuviary`;
}

/**
 * Holds, expected molts and checks of all animals. An animal has one of each at a time, so they bear its name alone: whatever is
 * added, corrected or put on record, a later feed moves the entry instead of adding one. The skin of the last molt too; skins of
 * before that are named by their molt.
 */
export function calendarEntriesOf(animals: readonly FollowedAnimal[], today: CalendarDay): CalendarEntry[] {
  return animals.flatMap((animal): CalendarEntry[] => {
    const { records, hold, timer, lastMolt } = animal;
    const specimenId = records.specimen.id;
    const name = (...of: Parameters<typeof uidOf>) => ({ uid: uidOf(...of), specimenId });
    const entries: CalendarEntry[] = [];
    if (timer) {
      const start = Date.parse(timer.startedAt.at);
      for (const [state, minutes] of [
        ['look-closer', timer.lookCloserAfterMinutes],
        ['concern', timer.concernAfterMinutes],
      ] as const) {
        const at = new Date(start + minutes * MS_PER_MINUTE).toISOString();
        entries.push({ ...name(`molt-${state}`, specimenId), kind: 'molt-check', at, state });
      }
    }
    if (hold) {
      entries.push({ ...name('feeding-hold', specimenId), kind: 'feeding-hold', from: hold.moltedOn, until: hold.until });
      if (hold.missing.includes('fangs')) entries.push({ ...name('fang-check', specimenId), kind: 'fang-check', on: hold.until });
    }
    const forecast = groundsIn(records.forecast);
    if (forecast?.told) {
      const { from, likely, to } = forecast;
      entries.push({ ...name('molt-expected', specimenId), kind: 'molt-expected', from, likely, to });
    }
    const unrecorded = unrecordedMoltOf(animal);
    if (unrecorded !== null) entries.push({ ...name('skin-check', specimenId), kind: 'skin-check', on: unrecorded });
    for (const { moltId, moltedOn } of skinsToRecover(animal, today)) {
      const ofLast = moltId === lastMolt?.moltId;
      entries.push({
        ...(ofLast ? name('skin-check', specimenId) : name('skin-check', specimenId, moltId)),
        kind: 'skin-check',
        on: moltedOn,
      });
    }
    return entries;
  });
}

/**
 * What else an earlier feed may have had of these animals, whether they are still kept or not. Left out of a feed it would stay in a
 * calendar for ever, such as the concern about a molt that has ended: it is published as canceled.
 */
export function canceledEntriesOf(
  animals: readonly { readonly specimenId: string; readonly molts: AnimalRecords['molts'] }[],
  due: readonly CalendarEntry[],
  today: CalendarDay,
): CanceledEntry[] {
  const isDue = new Set(due.map(({ uid }) => uid));
  const calledOffFrom = addDays(today, -SKINS_CALLED_OFF_DAYS);
  return animals.flatMap(({ specimenId, molts }) => {
    const skins = molts.filter(({ happenedTo }) => happenedTo >= calledOffFrom);
    const names = [
      ...OF_AN_ANIMAL.map((was) => ({ uid: uidOf(was, specimenId), was })),
      ...skins.map(({ id }) => ({ uid: uidOf('skin-check', specimenId, id), was: 'skin-check' as const })),
    ];
    return names.filter(({ uid }) => !isDue.has(uid)).map((name) => ({ ...name, specimenId, kind: 'not-due' as const }));
  });
}
