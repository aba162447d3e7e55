import type { Molt } from '../../molting/molt.ts';
import { fail, type Result, succeed } from '../../result.ts';
import { checkNotTooEarly } from '../../specimen/dates.ts';
import type { LiveSignDraft } from './liveSign.ts';

export interface LiveSignContext {
  readonly today: string;
  /** Of the animal. */
  readonly hatchedOn: string | null;
  readonly molts: readonly Pick<Molt, 'id' | 'happenedFrom'>[];
  readonly animalPhotoIds: ReadonlySet<string>;
}

/**
 * Decides whether a sign of the animal may be recorded. Fails with `date-in-future`, `date-too-early`, `date-before-hatching`,
 * `photo-not-of-animal`, `not-found` for an ultimate molt that is none of this animal's, `bulbs-before-molt` for bulbs seen before the molt that brought them.
 */
export function checkLiveSign(draft: LiveSignDraft, { today, hatchedOn, molts, animalPhotoIds }: LiveSignContext): Result<LiveSignDraft> {
  const { finding, seenOn, photoIds } = draft;
  if (seenOn > today) return fail({ code: 'date-in-future', field: 'seenOn', date: seenOn });
  const early = checkNotTooEarly('seenOn', seenOn);
  if (!early.ok) return early;
  if (hatchedOn !== null && seenOn < hatchedOn) return fail({ code: 'date-before-hatching', field: 'seenOn', date: seenOn, hatchedOn });
  const foreign = photoIds.find((id) => !animalPhotoIds.has(id));
  if (foreign !== undefined) return fail({ code: 'photo-not-of-animal', photoId: foreign });
  if (finding.kind !== 'palpal-bulbs' || finding.ultimateMoltId === null) return succeed(draft);
  const molt = molts.find(({ id }) => id === finding.ultimateMoltId);
  if (!molt) return fail({ code: 'not-found', what: 'molt', id: finding.ultimateMoltId });
  return seenOn < molt.happenedFrom ? fail({ code: 'bulbs-before-molt', seenOn, moltedFrom: molt.happenedFrom }) : succeed(draft);
}
