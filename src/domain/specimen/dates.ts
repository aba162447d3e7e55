import type { CalendarDay } from '../dates.ts';
import type { Molt } from '../molting/molt.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { SpecimenDraft } from './specimen.ts';

/**
 * No day before this is kept. Judgment: long before any animal that lives now, and late enough that a slip in the year such as 1850 or
 * 0202 does not pass.
 */
export const EARLIEST_DAY: CalendarDay = '1950-01-01';

export function checkNotTooEarly(field: string, date: CalendarDay): Result<null> {
  return date < EARLIEST_DAY ? fail({ code: 'date-too-early', field, date, earliest: EARLIEST_DAY }) : succeed(null);
}

/** No molt is surely over before the animal hatched. Failure: `date-before-hatching`. */
export function checkHatching(hatchedOn: CalendarDay | null, molts: readonly Pick<Molt, 'happenedTo'>[]): Result<null> {
  const before = hatchedOn === null ? undefined : molts.find(({ happenedTo }) => happenedTo < hatchedOn);
  return before && hatchedOn !== null
    ? fail({ code: 'date-before-hatching', field: 'happenedTo', date: before.happenedTo, hatchedOn })
    : succeed(null);
}

/**
 * An animal hatched before it was acquired, and neither lies after today nor too long ago. Failures: `hatched-after-acquired`,
 * `date-in-future`, `date-too-early`.
 */
export function checkSpecimenDates<Draft extends Pick<SpecimenDraft, 'hatchedOn' | 'acquiredOn'>>(
  draft: Draft,
  today: CalendarDay,
): Result<Draft> {
  const { hatchedOn, acquiredOn } = draft;
  if (acquiredOn !== null && acquiredOn > today) return fail({ code: 'date-in-future', field: 'acquiredOn', date: acquiredOn });
  if (hatchedOn !== null && hatchedOn > today) return fail({ code: 'date-in-future', field: 'hatchedOn', date: hatchedOn });
  for (const [field, date] of [['acquiredOn', acquiredOn] as const, ['hatchedOn', hatchedOn] as const]) {
    const early = date === null ? succeed(null) : checkNotTooEarly(field, date);
    if (!early.ok) return early;
  }
  if (hatchedOn !== null && acquiredOn !== null && hatchedOn > acquiredOn) {
    return fail({ code: 'hatched-after-acquired', hatchedOn, acquiredOn });
  }
  return succeed(draft);
}
