import { type CalendarDay, daysBetween } from '../../../domain/dates.ts';
import type { Photo } from '../../../domain/photo/photo.ts';

/** Photos of one skin are taken within days of each other; beyond this many somebody is asked (our assumption). */
export const ONE_SKIN_WITHIN_DAYS = 7;

type Taken = Pick<Photo, 'takenOn' | 'facts' | 'originalName'>;

/** In the order in which they were taken; those without a day last. Of one moment, by name, numbers as people count. */
export function inOrderTaken<P extends Taken>(photos: readonly P[]): P[] {
  const collator = new Intl.Collator('en', { numeric: true });
  // The corrected day counts, and the camera's clock only within it. '~' comes after every figure.
  const key = ({ takenOn, facts }: Taken) => `${takenOn ?? '~'} ${facts.takenAt?.local.slice(11) ?? '~'}`;
  const keyed = photos.map((photo) => ({ photo, key: key(photo) }));
  return keyed
    .toSorted((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : collator.compare(a.photo.originalName, b.photo.originalName)))
    .map(({ photo }) => photo);
}

/** First and last day of photos too far apart to be of one skin unasked; null where they are not. */
export function farApart(
  photos: readonly Taken[],
): { readonly first: CalendarDay; readonly last: CalendarDay; readonly days: number } | null {
  const taken = photos.flatMap(({ takenOn }) => (takenOn === null ? [] : [takenOn])).toSorted();
  const [first, last] = [taken[0], taken.at(-1)];
  if (first === undefined || last === undefined) return null;
  const days = daysBetween(first, last);
  return days > ONE_SKIN_WITHIN_DAYS ? { first, last, days } : null;
}
