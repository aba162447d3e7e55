import type { Observation } from '../../domain/care/observation.ts';
import type { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import type { Reading } from '../../domain/measuring/reading.ts';
import type { Exuvia, ExuviaDraft } from '../../domain/molting/exuvia.ts';
import type { Molt, MoltDraft } from '../../domain/molting/molt.ts';
import type { Photo } from '../../domain/photo/photo.ts';
import type { Result } from '../../domain/result.ts';
import type { Determination } from '../../domain/sexing/determination.ts';
import type { LiveSign } from '../../domain/sexing/live/liveSign.ts';
import type { Specimen, SpecimenDraft } from '../../domain/specimen/specimen.ts';
import type { Revision } from './revision.ts';

/*
 * `update` takes the version the change was based on and fails with `changed-meanwhile` when the record has moved on.
 */

export interface Specimens {
  /** Fails with `code-taken`; codes differing only in letter case count as equal. */
  create(draft: SpecimenDraft, origin?: { readonly sample: boolean }): Result<Specimen>;
  get(specimenId: string): Result<Specimen>;
  /** By code. */
  list(): readonly Specimen[];
  update(specimenId: string, expectedVersion: number, draft: SpecimenDraft): Result<Specimen>;
  revisions(specimenId: string): readonly Revision<SpecimenDraft>[];
  count(): { readonly all: number; readonly samples: number };
}

/** Stores what it is given; whether molts and instars stand in a sensible order is the domain's question. */
export interface Molts {
  create(specimenId: string, draft: MoltDraft): Result<Molt>;
  get(moltId: string): Result<Molt>;
  /** Oldest first. */
  ofSpecimen(specimenId: string): readonly Molt[];
  update(moltId: string, expectedVersion: number, draft: MoltDraft): Result<Molt>;
  revisions(moltId: string): readonly Revision<MoltDraft>[];
}

export interface Exuviae {
  /** Fails with `skin-already-recorded`: one molt leaves one skin. */
  create(moltId: string, draft: ExuviaDraft): Result<Exuvia>;
  get(exuviaId: string): Result<Exuvia>;
  ofMolt(moltId: string): Exuvia | null;
  ofSpecimen(specimenId: string): readonly Exuvia[];
  /** Of all animals. */
  list(): readonly Exuvia[];
  update(exuviaId: string, expectedVersion: number, draft: ExuviaDraft): Result<Exuvia>;
  revisions(exuviaId: string): readonly Revision<ExuviaDraft>[];
}

/** One skin with everything that its sizes are computed from. */
export interface MeasuredSkin {
  readonly moltId: string;
  /** Its photos that have marks on a scale object, in the order of import, each with all its readings by pass. */
  readonly photos: readonly { readonly photo: Photo; readonly calibration: CalibrationRecord; readonly readings: readonly Reading[] }[];
}

/** What the list of all animals needs about one of them. */
export interface CabinetEntry {
  readonly specimen: Specimen;
  /** Oldest first. */
  readonly molts: readonly Molt[];
  /** Oldest first. */
  readonly determinations: readonly Determination[];
  /** That were signed, and egg sacs noted in a watch, oldest first. */
  readonly liveSigns: readonly LiveSign[];
  /** Notes of a watch that tell it is grown: sperm webs, egg sacs, "mature"; in the order they were recorded. */
  readonly adultNotes: readonly Observation[];
  /** Stages of molts noted in a watch, in the order they were recorded. */
  readonly stageNotes: readonly Observation[];
  /** The latest skin of which a photo has a calibration and a reading with both carapace midline points. */
  readonly lastMeasured: MeasuredSkin | null;
  /** The latest photo of the animal, else of its latest photographed skin. */
  readonly coverPhotoId: string | null;
}

/** Reads for many animals at once, in a fixed number of statements. */
export interface Cabinet {
  /** All animals, by code. */
  entries(): readonly CabinetEntry[];
  entry(specimenId: string): Result<CabinetEntry>;
}
