import { addDays, daysBetween } from '../../dates.ts';
import { inDateOrder } from '../../molting/instars.ts';
import type { Molt, MoltDraft } from '../../molting/molt.ts';
import { fail, type Result, succeed } from '../../result.ts';
import type { Gap } from './gap.ts';

/** A molt that was put in because growth tells of it: it counts as one, and says neither a day nor a size. */
export function isPresumed({ outcomes }: Pick<Molt, 'outcomes'>): boolean {
  return outcomes.includes('presumed');
}

/**
 * The gap of a row in which no molt has a number: so many molts that nobody saw, without skins, between the molt before and this
 * one. One is dated as the span from the one to the other; of several each gets an equal share of those days, for molts follow each
 * other, and no more than their order is meant by it.
 *
 * Failures: `not-found` for a molt of another animal, `gap-misplaced` before the first molt, `gap-uncounted` where the days between
 * leave no room.
 *
 * @param molts all of one animal.
 */
export function presumeMolts(molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[], gap: Gap): Result<MoltDraft[]> {
  const ordered = inDateOrder(molts);
  const place = ordered.findIndex(({ id }) => id === gap.beforeMoltId);
  const after = ordered[place];
  if (!after) return fail({ code: 'not-found', what: 'molt', id: gap.beforeMoltId });
  const before = ordered[place - 1];
  if (!before) return fail({ code: 'gap-misplaced', moltDate: after.happenedFrom });
  const days = daysBetween(before.happenedTo, after.happenedFrom);
  if (days <= gap.skipped) return fail({ code: 'gap-uncounted', moltDate: after.happenedFrom });
  const cut = (share: number) => addDays(before.happenedTo, Math.floor((days * share) / gap.skipped));
  return succeed(
    Array.from({ length: gap.skipped }, (_, index) => ({
      happenedFrom: cut(index),
      happenedTo: cut(index + 1),
      instarShed: null,
      position: 'not-seen',
      outcomes: ['skin-not-recovered', 'presumed'],
      notes: '',
    })),
  );
}
