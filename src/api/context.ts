import type { Archive } from '../archive/archive.ts';
import type { Ambient } from '../domain/ambient.ts';
import type { CalendarDay } from '../domain/dates.ts';
import type { ShippedProfile } from '../domain/sexing/genus/profile.ts';
import type { Cutter } from '../tasks/cuts/cutter.ts';
import type { ScaleFinding } from '../tasks/finding/scaleFinding.ts';
import type { Importer } from '../tasks/importing/importer.ts';
import { keepersDay } from '../tasks/localTime.ts';
import type { Tasks } from '../tasks/registry.ts';

/** What the handlers work with. */
export interface ApiContext {
  readonly archive: Archive;
  readonly tasks: Tasks;
  readonly importer: Importer;
  readonly scaleFinding: ScaleFinding;
  readonly cutter: Cutter;
  readonly ambient: Ambient;
  /** Of the program. */
  readonly version: string;
  /** Folder of the sample cabinet. */
  readonly sampleFolder: string;
  /** Profiles of genera as shipped. */
  readonly genera: readonly ShippedProfile[];
}

/** The keeper's day: the calendar day in the time zone of this machine. In UTC, a morning in Sydney would lie in the future. */
export function todayOf(context: Pick<ApiContext, 'ambient'>): CalendarDay {
  return keepersDay(context.ambient.now());
}
