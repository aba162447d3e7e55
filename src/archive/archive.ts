import type { Preferences } from '../domain/preferences.ts';
import type { Result } from '../domain/result.ts';
import type { Cabinet, Exuviae, Molts, Specimens } from './records/animals.ts';
import type { Forecasts } from './records/forecasts.ts';
import type { Imports } from './records/imports.ts';
import type { Observations } from './records/observations.ts';
import type { Originals } from './records/originals.ts';
import type { Calibrations, Photos, Readings } from './records/photos.ts';
import type { PrintChecks } from './records/printChecks.ts';
import type { Removals } from './records/removals.ts';
import type { Renditions } from './records/renditions.ts';
import type { Determinations, GenusEdits, LiveSigns, ModelChanges, ReadingsUnderWay } from './records/sexing.ts';

/**
 * The one way to everything that is kept. Reads and writes of the catalogue are synchronous and durable when they return.
 *
 * Whatever a person must be told about comes back as a `Result`. Trouble of the disk itself (full, damaged catalogue)
 * can meet any call and is thrown as a `Refusal`. A single record that can't be read is left out of lists, noted in
 * `damaged()`, and answered with `archive-damaged` when asked for by its id.
 */
export interface Archive {
  readonly folder: string;
  readonly specimens: Specimens;
  readonly molts: Molts;
  readonly exuviae: Exuviae;
  readonly determinations: Determinations;
  readonly readingsUnderWay: ReadingsUnderWay;
  readonly liveSigns: LiveSigns;
  readonly genusEdits: GenusEdits;
  readonly modelChanges: ModelChanges;
  readonly cabinet: Cabinet;
  readonly observations: Observations;
  readonly forecasts: Forecasts;
  readonly photos: Photos;
  readonly calibrations: Calibrations;
  readonly readings: Readings;
  readonly removals: Removals;
  readonly preferences: PreferenceStore;
  readonly printChecks: PrintChecks;
  readonly imports: Imports;
  readonly originals: Originals;
  readonly renditions: Renditions;

  /** All or nothing: when `work` returns a failure, refuses or throws, nothing it wrote remains. Must not await. */
  transaction<Value>(work: () => Result<Value>): Result<Value>;

  /** How many records were ever made here, removed ones included: never falls, and rises with each. */
  recordsMade(): number;

  /** Records met so far that could not be read, as "kind id: what is wrong". */
  damaged(): readonly string[];

  /** Folds the journal into one file and gives the lock back. Nothing may be called afterwards. */
  close(): void;
}

export interface PreferenceStore {
  get(): Preferences;
  set(preferences: Preferences): Preferences;
}
