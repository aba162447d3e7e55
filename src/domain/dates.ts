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

const MS_PER_DAY = 86_400_000;

/** Whole days from one calendar day to a later one; negative if `to` is earlier. */
export function daysBetween(from: CalendarDay, to: CalendarDay): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / MS_PER_DAY);
}
