import type { CalendarDay, CameraTime, Instant, Moment } from '../domain/dates.ts';

/** The calendar day of a moment in the time zone of this machine. */
export function keepersDay(instant: Instant): CalendarDay {
  const moment = new Date(instant);
  return `${moment.getFullYear()}-${twoDigits(moment.getMonth() + 1)}-${twoDigits(moment.getDate())}`;
}

/** An instant as a clock on the wall here shows it. */
export function keepersMoment(instant: Instant): Moment {
  const east = -new Date(instant).getTimezoneOffset();
  const minutes = Math.abs(east);
  return { at: instant, offset: `${east < 0 ? '-' : '+'}${twoDigits(Math.floor(minutes / 60))}:${twoDigits(minutes % 60)}` };
}

/** @param clock hours and minutes on a wall here, `21:40`. */
export function momentOnWall(day: CalendarDay, clock: string): Moment {
  return keepersMoment(new Date(`${day}T${clock}:00`).toISOString());
}

/** When a camera's clock showed a time; one that wrote no offset from UTC is taken to have run as this machine's does. */
export function instantOfCamera({ local, offset }: CameraTime): Instant {
  return new Date(`${local}${offset ?? ''}`).toISOString();
}

function twoDigits(part: number): string {
  return String(part).padStart(2, '0');
}
