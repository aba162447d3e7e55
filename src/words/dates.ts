import { type CalendarDay, type CameraTime, dayOf, type Instant, type Moment } from '../domain/dates.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** `2026-03-05` as "5 Mar 2026": the month in letters, so that nobody can take it for the third of May. */
export function dayInWords(day: CalendarDay): string {
  const [year, month, date] = day.split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1]} ${year}`;
}

/** The order in which a place writes the numbers of a day: "month, day, year" in the United States, "day, month, year" in France. */
export function dayOrderInWords(place: Intl.DateTimeFormat): string {
  const parts = place.formatToParts(0).map(({ type }) => type);
  return parts.filter((type) => type === 'year' || type === 'month' || type === 'day').join(', ');
}

/** The mark of a day on an axis of dates: "12 Mar", "Mar" for the first of a month, "2026" for the first of a year. */
export function dayOnAxis(day: CalendarDay): string {
  const [year = '', month, date] = day.split('-');
  const named = MONTHS[Number(month) - 1] ?? '';
  if (date !== '01') return `${Number(date)} ${named}`;
  return month === '01' ? year : named;
}

/** The calendar day of a moment on this machine's clock. */
export function dayHere(instant: Instant): CalendarDay {
  const moment = new Date(instant);
  const twoDigits = (part: number): string => String(part).padStart(2, '0');
  return `${moment.getFullYear()}-${twoDigits(moment.getMonth() + 1)}-${twoDigits(moment.getDate())}`;
}

/** One day, or the span between two days with what they share said once: "3 to 5 Mar 2026". */
export function spanInWords(from: CalendarDay, to: CalendarDay): string {
  if (from === to) return dayInWords(from);
  const [fromYear, fromMonth] = from.split('-');
  const [toYear, toMonth] = to.split('-');
  const date = Number(from.slice(8));
  if (fromYear !== toYear) return `${dayInWords(from)} to ${dayInWords(to)}`;
  if (fromMonth !== toMonth) return `${date} ${MONTHS[Number(fromMonth) - 1]} to ${dayInWords(to)}`;
  return `${date} to ${dayInWords(to)}`;
}

/** The camera's clock as it stood: "5 Mar 2026, 14:02 (UTC+01:00)". */
export function cameraTimeInWords(time: CameraTime): string {
  const clock = `${dayInWords(time.local.slice(0, 10))}, ${time.local.slice(11, 16)}`;
  return time.offset === null ? clock : `${clock} (UTC${time.offset})`;
}

/** A moment on the wall clock it was read on: "5 Mar 2026, 14:02". The offset is said where it differs from the reader's. */
export function momentInWords(moment: Moment, readerOffset: string = moment.offset): string {
  const clock = `${dayInWords(dayOf(moment))}, ${clockOf(moment)}`;
  return moment.offset === readerOffset ? clock : `${clock} (UTC${moment.offset})`;
}

/** "14:02". */
export function clockOf({ at, offset }: Moment): string {
  const [hours = 0, minutes = 0] = offset.slice(1).split(':').map(Number);
  const shifted = Date.parse(at) + (offset.startsWith('-') ? -1 : 1) * (hours * 60 + minutes) * 60_000;
  return new Date(shifted).toISOString().slice(11, 16);
}

/** Time passed, as exact as it helps: "25 min", "1 h 5 min", "26 h". */
export function durationInWords(minutes: number): string {
  const whole = Math.floor(minutes);
  if (whole < 60) return `${whole} min`;
  const rest = whole % 60;
  return rest === 0 || whole >= 24 * 60 ? `${Math.floor(whole / 60)} h` : `${Math.floor(whole / 60)} h ${rest} min`;
}

/** "1 day", "12 days", or "10 to 14 days" where dates are spans. */
export function daysInWords(from: number, to: number = from): string {
  if (from !== to) return `${from} to ${to} days`;
  return from === 1 ? '1 day' : `${from} days`;
}

/** How long something still takes, no finer than can be promised: "about 40 seconds", "about 3 minutes". */
export function remainingInWords(seconds: number): string {
  if (seconds < 10) return 'a few seconds';
  if (seconds < 90) return `about ${Math.round(seconds / 10) * 10} seconds`;
  const minutes = Math.round(seconds / 60);
  return minutes < 90 ? `about ${minutes} minutes` : `about ${Math.round(minutes / 60)} hours`;
}
