import type { CalendarDay } from '../dates.ts';
import type { Exuvia } from '../molting/exuvia.ts';
import type { Molt } from '../molting/molt.ts';

/** One molt of an animal, in a list with the oldest first. */
export interface SkinInOrder {
  /** Null where the molt left no skin on record: the ones beside it do not follow each other. */
  readonly exuviaId: string | null;
  /** The last day on which it can have been shed. */
  readonly shedUntil: CalendarDay;
}

/** @param molts oldest first. */
export function skinsInOrderOf(
  molts: readonly Pick<Molt, 'id' | 'happenedTo'>[],
  skins: readonly Pick<Exuvia, 'id' | 'moltId'>[],
): SkinInOrder[] {
  const skinOf = new Map(skins.map(({ id, moltId }) => [moltId, id]));
  return molts.map(({ id, happenedTo }) => ({ exuviaId: skinOf.get(id) ?? null, shedUntil: happenedTo }));
}

/** The skins that were certainly off by a day. */
export function shedBy(day: CalendarDay, skinsInOrder: readonly SkinInOrder[]): ReadonlySet<string> {
  return new Set(skinsInOrder.flatMap(({ exuviaId, shedUntil }) => (exuviaId !== null && shedUntil <= day ? [exuviaId] : [])));
}

/** Whether two skins are of molts that follow each other. */
export function areSuccessive(one: string, other: string, skinsInOrder: readonly SkinInOrder[]): boolean {
  const here = skinsInOrder.findIndex(({ exuviaId }) => exuviaId === one);
  const there = skinsInOrder.findIndex(({ exuviaId }) => exuviaId === other);
  return here >= 0 && there >= 0 && Math.abs(here - there) === 1;
}
