import type { CameraTime, Instant, Moment } from '../../../domain/dates.ts';

/** The offset from UTC of this machine's clock at an instant. */
export function offsetHere(instant: Instant): string {
  const minutes = -new Date(instant).getTimezoneOffset();
  const twoDigits = (part: number): string => String(part).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${twoDigits(Math.floor(Math.abs(minutes) / 60))}:${twoDigits(Math.abs(minutes) % 60)}`;
}

export function momentHere(instant: Instant): Moment {
  return { at: instant, offset: offsetHere(instant) };
}

/** What a field of date and time shows, on the clock of this machine: `2026-03-05T14:02`. */
export function fieldValueOf(instant: Instant): string {
  const minutes = new Date(instant).getTimezoneOffset();
  return new Date(Date.parse(instant) - minutes * 60_000).toISOString().slice(0, 16);
}

/** The moment written in such a field; null for one that is empty or not whole. */
export function momentFromField(value: string): Moment | null {
  const time = new Date(value);
  return value === '' || Number.isNaN(time.getTime()) ? null : momentHere(time.toISOString());
}

/** The moment of a camera's clock. One without an offset is taken to have run as this machine's does. */
export function momentOfCamera({ local, offset }: CameraTime): { moment: Moment; offsetAssumed: boolean } | null {
  if (offset === null) {
    const moment = momentFromField(local);
    return moment && { moment, offsetAssumed: true };
  }
  return { moment: { at: new Date(`${local}${offset}`).toISOString(), offset }, offsetAssumed: false };
}
