import ical, { ICalCalendarMethod, ICalEventStatus, ICalEventTransparency } from 'ical-generator';
import type { CalendarEntry, CanceledEntry } from '../../domain/care/calendar.ts';
import { addDays, type Instant } from '../../domain/dates.ts';
import { calendarWords } from '../../words/calendar.ts';

interface CalendarOptions {
  readonly nameOf: (specimenId: string) => string;
  readonly now: Instant;
  /** The latest moment that any record bears; null without records. */
  readonly lastRecordedAt: Instant | null;
}

/** From here the revisions of an entry are counted in seconds; it keeps the number within 31 bits until 2088. */
const FIRST_DAY = '2020-01-01';
const FIRST_REVISION = `${FIRST_DAY}T00:00:00Z`;
const MS_PER_SECOND = 1_000;
const CHECK_TAKES_MS = 15 * 60 * MS_PER_SECOND;

/**
 * The entries as an iCalendar stream (RFC 5545). Days are written as dates without a zone, an end on the day after the last
 * (3.6.1); moments in UTC. A later feed has a higher SEQUENCE (3.8.7.4), so that a calendar takes its dates over the old ones.
 *
 * SEQUENCE is the time in seconds, and no less than that of the latest record: it does not fall when a clock is set back that was
 * ahead while something was put on record. Only a feed taken in between, with nothing recorded, leaves a higher one behind, until the
 * clock has passed it; what was published is stored nowhere. At an equal SEQUENCE the later DTSTAMP counts (RFC 5546, 2.1.5).
 *
 * What is not due any more has the status CANCELLED (3.8.1.11), and lies on a day long past for a calendar that knows no status.
 */
export function writeCalendar(
  entries: readonly (CalendarEntry | CanceledEntry)[],
  { nameOf, now, lastRecordedAt }: CalendarOptions,
): string {
  const stamp = new Date(now);
  const sequence = Math.max(0, secondsAt(now), lastRecordedAt === null ? 0 : secondsAt(lastRecordedAt));
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
      status: entry.kind === 'not-due' ? ICalEventStatus.CANCELLED : null,
    });
  }
  return calendar.toString();
}

/** Whole seconds since the first revision. */
function secondsAt(instant: Instant): number {
  return Math.floor((Date.parse(instant) - Date.parse(FIRST_REVISION)) / MS_PER_SECOND);
}

function timesOf(entry: CalendarEntry | CanceledEntry): { start: Date; end: Date; allDay: boolean } {
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
    case 'not-due':
      return days(FIRST_DAY, addDays(FIRST_DAY, 1));
  }
}

/** The end is the first day that no longer belongs to it. */
function days(first: string, end: string): { start: Date; end: Date; allDay: boolean } {
  return { start: new Date(`${first}T00:00:00Z`), end: new Date(`${end}T00:00:00Z`), allDay: true };
}
