import type { Instant } from '../../domain/dates.ts';
import type { CalibrationRecord, ScaleMarks } from '../../domain/measuring/calibration.ts';
import type { Reading, ReadingDraft } from '../../domain/measuring/reading.ts';
import type { Photo, PhotoDraft } from '../../domain/photo/photo.ts';
import type { Result } from '../../domain/result.ts';
import type { Revision } from './revision.ts';

/** A photo about to be recorded; its original must already be published. */
export type NewPhoto = Omit<Photo, 'id' | 'version' | 'importedAt'>;

export interface Photos {
  /** Fails with `not-found` when the subject does not exist. Content already recorded is found by `bySha256` first. */
  add(photo: NewPhoto): Result<Photo>;
  get(photoId: string): Result<Photo>;
  bySha256(sha256: string): Photo | null;
  /** Newest import first. */
  list(filter: { readonly unassigned: boolean }): readonly Photo[];
  /** Oldest first, by the day taken, then by import. */
  ofExuvia(exuviaId: string): readonly Photo[];
  /** Photos of all skins of an animal, oldest first. */
  ofSkinsOf(specimenId: string): readonly Photo[];
  /** For each photographed skin, by its id, the photo that stands for it: of the inner side of its abdomen where there is one. */
  coversOfSkins(): ReadonlyMap<string, string>;
  /** Photos of the living animal, oldest first. */
  ofAnimal(specimenId: string): readonly Photo[];
  update(photoId: string, expectedVersion: number, draft: PhotoDraft): Result<Photo>;
  count(): number;
}

export interface Calibrations {
  /** Version 0 and null marks before the first. Fails with `not-found` for an unknown photo. */
  get(photoId: string): Result<CalibrationRecord>;
  /** Of the photos of all skins of an animal that have one. */
  ofSkinsOf(specimenId: string): readonly CalibrationRecord[];
  put(photoId: string, expectedVersion: number, marks: ScaleMarks | null, check?: ScaleMarks): Result<CalibrationRecord>;
  revisions(photoId: string): readonly Revision<ScaleMarks | null>[];
}

export interface Readings {
  /** @param measuredAt now, unless it is of earlier and only written down now. */
  create(photoId: string, draft: ReadingDraft, measuredAt?: Instant): Result<Reading>;
  get(readingId: string): Result<Reading>;
  /** By pass, then by creation. */
  ofPhoto(photoId: string): readonly Reading[];
  /** Of the photos of all skins of an animal. */
  ofSkinsOf(specimenId: string): readonly Reading[];
  /** All passes over photos that have more than one, photo by photo. */
  repeated(): readonly Reading[];
  /** Photos with a scale and at least one reading of anything, or of what tells the size of the skin. */
  measuredPhotoIds(of: 'anything' | 'size'): ReadonlySet<string>;
  update(readingId: string, expectedVersion: number, draft: ReadingDraft): Result<Reading>;
  revisions(readingId: string): readonly Revision<ReadingDraft>[];
}
