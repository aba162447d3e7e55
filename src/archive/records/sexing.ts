import type { Result } from '../../domain/result.ts';
import type {
  Determination,
  DeterminationDraft,
  ExaminationUnderWay,
  SignedAssessment,
  UnfinishedDetermination,
} from '../../domain/sexing/determination.ts';
import type { ModelChange, ModelChangeDraft } from '../../domain/sexing/evidence/model.ts';
import type { ProfileEdit, ProfileEditDraft } from '../../domain/sexing/genus/profile.ts';
import type { LiveSign, LiveSignDraft } from '../../domain/sexing/live/liveSign.ts';

/** Append-only: a determination is never changed, only marked as withdrawn. */
export interface Determinations {
  /** Fails with `not-found` for an unknown skin, evidence photo or superseded determination. */
  sign(exuviaId: string, draft: DeterminationDraft, assessment: SignedAssessment): Result<Determination>;
  get(determinationId: string): Result<Determination>;
  /** Oldest first. */
  ofSpecimen(specimenId: string): readonly Determination[];
  /** Oldest first. */
  ofExuvia(exuviaId: string): readonly Determination[];
  /** Fails with `already-withdrawn`. */
  withdraw(determinationId: string, reason: string): Result<Determination>;
}

/** What was seen of the animal itself. Append-only like determinations. */
export interface LiveSigns {
  /** Fails with `not-found` for an unknown animal or photo. */
  sign(specimenId: string, draft: LiveSignDraft): Result<LiveSign>;
  get(liveSignId: string): Result<LiveSign>;
  /** Oldest first. */
  ofSpecimen(specimenId: string): readonly LiveSign[];
  /** Fails with `already-withdrawn`. */
  withdraw(liveSignId: string, reason: string): Result<LiveSign>;
}

/** The reading under way of each skin: left and resumed, gone once it is signed. */
export interface ReadingsUnderWay {
  /** Version 0 and no reading before the first save. Fails with `not-found` for an unknown skin. */
  get(exuviaId: string): Result<ExaminationUnderWay>;
  /** Skins whose reading has been begun and not yet signed or given up. */
  begun(): ReadonlySet<string>;
  /** Null gives the reading up. */
  put(exuviaId: string, expectedVersion: number, reading: UnfinishedDetermination | null): Result<ExaminationUnderWay>;
  /** With its signature. Fails with `changed-meanwhile` where a later reading is stored; nothing to do where none is. */
  finish(exuviaId: string, expectedVersion: number): Result<void>;
}

/** Edits of genus profiles; every one is kept. */
export interface GenusEdits {
  /** Oldest first. */
  list(): readonly ProfileEdit[];
  /** Fails with `changed-meanwhile` when another edit of this genus came in between. */
  add(genus: string, expectedVersion: number, draft: ProfileEditDraft): Result<ProfileEdit>;
}

/** Changes of the evidence model's numbers; every one is kept. */
export interface ModelChanges {
  /** Oldest first. */
  list(): readonly ModelChange[];
  add(expectedRevision: number, draft: ModelChangeDraft): Result<ModelChange>;
}
