import type { CalendarDay } from '../dates.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { SpecimenDraft } from './specimen.ts';

/** An animal hatched before it was acquired, and neither lies after today. Failures: `hatched-after-acquired`, `date-in-future`. */
export function checkSpecimenDates<Draft extends Pick<SpecimenDraft, 'hatchedOn' | 'acquiredOn'>>(
  draft: Draft,
  today: CalendarDay,
): Result<Draft> {
  const { hatchedOn, acquiredOn } = draft;
  if (acquiredOn !== null && acquiredOn > today) return fail({ code: 'date-in-future', field: 'acquiredOn', date: acquiredOn });
  if (hatchedOn !== null && hatchedOn > today) return fail({ code: 'date-in-future', field: 'hatchedOn', date: hatchedOn });
  if (hatchedOn !== null && acquiredOn !== null && hatchedOn > acquiredOn) {
    return fail({ code: 'hatched-after-acquired', hatchedOn, acquiredOn });
  }
  return succeed(draft);
}
