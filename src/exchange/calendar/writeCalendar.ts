import ical, { ICalCalendarMethod, ICalEventTransparency } from 'ical-generator';
import type { CalendarEntry } from '../../domain/care/calendar.ts';
import { addDays, type Instant } from '../../domain/dates.ts';
import { calendarWords } from '../../words/calendar.ts';

interface CalendarOptions {
  readonly nameOf: (specimenId: string) => string;
  readonly now: Instant;
}

/** From here the revisions of an entry are counted in seconds; it keeps the number within 31 bits until 2088. */
const FIRST_REVISION = '2020-01-01T00:00:00Z';
const MS_PER_SECOND = 1_000;
const CHECK_TAKES_MS = 15 * 60 * MS_PER_SECOND;

/**
 * The entries as an iCalendar stream (RFC 5545). Days are written as dates without a zone, an end on the day after the last
 * (3.6.1); moments in UTC. A later feed has a higher SEQUENCE (3.8.7.4), so that a calendar takes its dates over the old ones.
 */
export function writeCalendar(entries: readonly CalendarEntry[], { nameOf, now }: CalendarOptions): string {
  const stamp = new Date(now);
  const sequence = Math.max(0, Math.floor((stamp.getTime() - Date.parse(FIRST_REVISION)) / MS_PER_SECOND));
  const calendar = ical({
    name: 'Exuviary',
    prodId: { company: 'Exuviary', product: 'Watch', language: 'EN' },
    method: ICalCalendarMethod.PUBLISH,
  });
  for (const entry of entries) {
    calendar.createEvent({
      id: entry.uid,
      sequence,
      stamp,
      ...timesOf(entry),
      ...calendarWords(entry, nameOf(entry.specimenId)),
      transparency: ICalEventTransparency.TRANSPARENT,
    });
  }
  return calendar.toString();
}

function timesOf(entry: CalendarEntry): { start: Date; end: Date; allDay: boolean } {
  switch (entry.kind) {
    case 'molt-check': {
      const start = new Date(entry.at);
      return { start, end: new Date(start.getTime() + CHECK_TAKES_MS), allDay: false };
    }
    case 'feeding-hold':
      return days(entry.from, entry.until > entry.from ? entry.until : addDays(entry.from, 1));
    case 'molt-expected':
      return days(entry.from, addDays(entry.to, 1));
    case 'fang-check':
    case 'skin-check':
      return days(entry.on, addDays(entry.on, 1));
  }
}

/** The end is the first day that no longer belongs to it. */
function days(first: string, end: string): { start: Date; end: Date; allDay: boolean } {
  return { start: new Date(`${first}T00:00:00Z`), end: new Date(`${end}T00:00:00Z`), allDay: true };
}
