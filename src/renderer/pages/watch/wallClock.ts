import type { CameraTime, Instant, Moment } from '../../../domain/dates.ts';

/** A day and a time as they stand in their fields. */
export interface TypedMoment {
  readonly day: string;
  readonly time: string;
}

/** The offset from UTC of this machine's clock at an instant. */
export function offsetHere(instant: Instant): string {
  const minutes = -new Date(instant).getTimezoneOffset();
  const twoDigits = (part: number): string => String(part).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${twoDigits(Math.floor(Math.abs(minutes) / 60))}:${twoDigits(Math.abs(minutes) % 60)}`;
}

export function momentHere(instant: Instant): Moment {
  return { at: instant, offset: offsetHere(instant) };
}

/** What fields of day and time show, on the clock of this machine. */
export function typedOf(instant: Instant): TypedMoment {
  const minutes = new Date(instant).getTimezoneOffset();
  const here = new Date(Date.parse(instant) - minutes * 60_000).toISOString();
  return { day: here.slice(0, 10), time: here.slice(11, 16) };
}

/** The moment of a local time as a field of date and time has it, on the clock of this machine; null for one that is empty or not whole. */
export function momentFromField(value: string): Moment | null {
  const time = new Date(value);
  return value === '' || Number.isNaN(time.getTime()) ? null : momentHere(time.toISOString());
}

/** The moment of a day and a time of 24 hours as they were typed, `9:05` or `21:05`; null where either is not whole. */
export function momentTyped({ day, time }: TypedMoment): Moment | null {
  const clock = /^([01]?\d|2[0-3])[:.]([0-5]\d)$/.exec(time.trim());
  return clock && day !== '' ? momentFromField(`${day}T${clock[1]?.padStart(2, '0')}:${clock[2]}`) : null;
}

/** The moment of a camera's clock. One without an offset is taken to have run as this machine's does. */
export function momentOfCamera({ local, offset }: CameraTime): { moment: Moment; offsetAssumed: boolean } | null {
  if (offset === null) {
    const moment = momentFromField(local);
    return moment && { moment, offsetAssumed: true };
  }
  return { moment: { at: new Date(`${local}${offset}`).toISOString(), offset }, offsetAssumed: false };
}
