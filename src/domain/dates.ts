import { z } from 'zod';

/** A calendar day, `YYYY-MM-DD` (ISO 8601-1), without time or zone: keepers log days. */
export const CalendarDay = z.iso.date().meta({ id: 'CalendarDay', description: 'Calendar day, YYYY-MM-DD (ISO 8601-1).' });
export type CalendarDay = z.infer<typeof CalendarDay>;

/** A moment in UTC, `2026-11-25T12:00:00.000Z`. */
export const Instant = z.iso.datetime().meta({ id: 'Instant', description: 'Moment in UTC (ISO 8601-1).' });
export type Instant = z.infer<typeof Instant>;

/**
 * The wall clock of a camera: local date and time, with the offset only where the camera wrote it
 * (EXIF 2.31 OffsetTimeOriginal). Without an offset the moment is not known, only the local time.
 */
export const CameraTime = z
  .object({
    local: z.iso.datetime({ local: true }),
    offset: z
      .string()
      .regex(/^[+-]\d{2}:\d{2}$/)
      .nullable(),
  })
  .meta({ id: 'CameraTime' });
export type CameraTime = z.infer<typeof CameraTime>;

/** A moment with the offset from UTC of the wall clock it was read on: the time passed never depends on the offset, the day does. */
export const Moment = z
  .object({
    at: Instant,
    offset: z.string().regex(/^[+-](0\d|1[0-4]):[0-5]\d$/, 'Expected an offset from UTC such as +02:00'),
  })
  .meta({ id: 'Moment' });
export type Moment = z.infer<typeof Moment>;

const MS_PER_DAY = 86_400_000;
const MS_PER_MINUTE = 60_000;

/** Whole days from one calendar day to a later one; negative if `to` is earlier. */
export function daysBetween(from: CalendarDay, to: CalendarDay): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY);
}

/** So many days later; earlier if negative. */
export function addDays(day: CalendarDay, days: number): CalendarDay {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * MS_PER_DAY).toISOString().slice(0, 10);
}

/**
 * The same date so many calendar months later, or the last day of that month where it has no such date: 31 January and one
 * month is 28 or 29 February. (RFC 5545, 3.3.10, would skip such a month; a wait must end.)
 */
export function addMonths(day: CalendarDay, months: number): CalendarDay {
  const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
  const lastOfMonth = new Date(Date.UTC(year, month + months, 0));
  return new Date(Date.UTC(lastOfMonth.getUTCFullYear(), lastOfMonth.getUTCMonth(), Math.min(date, lastOfMonth.getUTCDate())))
    .toISOString()
    .slice(0, 10);
}

/** The calendar day of a moment on the wall clock it was read on. */
export function dayOf({ at, offset }: Moment): CalendarDay {
  return new Date(Date.parse(at) + minutesOf(offset) * MS_PER_MINUTE).toISOString().slice(0, 10);
}

/** Minutes from one instant to a later one; negative if `to` is earlier. */
export function minutesBetween(from: Instant, to: Instant): number {
  return (Date.parse(to) - Date.parse(from)) / MS_PER_MINUTE;
}

function minutesOf(offset: string): number {
  const [hours = 0, minutes = 0] = offset.slice(1).split(':').map(Number);
  return (offset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}
