import type { ReactElement } from 'react';
import type { CalendarDay } from '../../domain/dates.ts';
import { dayInWords, spanInWords } from '../../words/dates.ts';

/** A day, or the span up to `to`, with the month in letters. */
export function DayText({ day, to }: { day: CalendarDay; to?: CalendarDay }): ReactElement {
  if (to === undefined || to === day) return <time dateTime={day}>{dayInWords(day)}</time>;
  return <span className="figures">{spanInWords(day, to)}</span>;
}
