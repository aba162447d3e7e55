import type { Archive } from '../../archive/archive.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { type SkinReading, type SkinSizes, sizesOf } from '../../domain/growth/skinSizes.ts';
import type { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import type { Reading } from '../../domain/measuring/reading.ts';
import type { Exuvia } from '../../domain/molting/exuvia.ts';
import type { Molt } from '../../domain/molting/molt.ts';
import type { Photo } from '../../domain/photo/photo.ts';
import { unwrap } from '../../domain/result.ts';
import { type AbdomenDistance, abdomenDistancesOf } from '../../domain/sexing/abdomenDistances.ts';
import { type MeasuredReading, measureReadings, skinReadingsOf } from './measurements.ts';
import { pointingIn } from './pointing.ts';

export interface SkinPhoto {
  readonly photo: Photo;
  readonly calibration: CalibrationRecord | null;
  /** By pass. */
  readonly readings: readonly MeasuredReading[];
}

/** One molt with its skin and everything measured on it. */
export interface MoltedSkin {
  readonly molt: Molt;
  readonly exuvia: Exuvia | null;
  readonly photos: readonly SkinPhoto[];
}

/**
 * The molts of one animal, oldest first; read in a fixed number of statements, however many there are.
 *
 * @param pointing read once for all that one answer measures.
 * @param narrowed leaves only what is to be measured.
 */
export function moltedSkinsOf(
  archive: Archive,
  specimenId: string,
  pointing: Pointing,
  narrowed?: (reading: Reading) => Reading,
): MoltedSkin[] {
  const exuviae = new Map(archive.exuviae.ofSpecimen(specimenId).map((exuvia) => [exuvia.moltId, exuvia]));
  const calibrations = new Map(archive.calibrations.ofSkinsOf(specimenId).map((calibration) => [calibration.photoId, calibration]));
  const readings = Map.groupBy(archive.readings.ofSkinsOf(specimenId), (reading) => reading.photoId);
  const photos = Map.groupBy(archive.photos.ofSkinsOf(specimenId), ({ subject }) => (subject.kind === 'skin' ? subject.exuviaId : null));

  const skinPhotoOf = (photo: Photo): SkinPhoto => {
    const calibration = calibrations.get(photo.id) ?? null;
    return { photo, calibration, readings: measureReadings(photo, calibration, readings.get(photo.id) ?? [], pointing, narrowed) };
  };
  return archive.molts.ofSpecimen(specimenId).map((molt) => {
    const exuvia = exuviae.get(molt.id) ?? null;
    return { molt, exuvia, photos: (exuvia ? (photos.get(exuvia.id) ?? []) : []).map(skinPhotoOf) };
  });
}

/** Everything read of one skin under a sound calibration, whichever photo and pass. */
export function readingsOf(skin: Pick<MoltedSkin, 'photos'>): SkinReading[] {
  return skin.photos.flatMap(({ photo, readings }) => skinReadingsOf(photo.id, readings));
}

/** What was measured on the opened abdomen of one skin. */
export function abdomenDistancesIn({ photos }: Pick<MoltedSkin, 'photos'>): AbdomenDistance[] {
  return abdomenDistancesOf(
    photos.flatMap(({ photo, readings }) =>
      readings.flatMap(({ reading: { landmarks }, measurement }) => (measurement ? [{ photoId: photo.id, landmarks, measurement }] : [])),
    ),
  );
}

/** The sizes of one skin, the same in every room. */
export function skinSizesOf(skin: Pick<MoltedSkin, 'photos'>): SkinSizes {
  return sizesOf(readingsOf(skin));
}

/** One skin without the others of its animal. */
export function measuredSkin(archive: Archive, exuviaId: string): Pick<MoltedSkin, 'photos'> {
  const { id } = unwrap(archive.exuviae.get(exuviaId));
  const pointing = pointingIn(archive);
  const photos = archive.photos.ofExuvia(id).map((photo): SkinPhoto => {
    const calibration = unwrap(archive.calibrations.get(photo.id));
    return { photo, calibration, readings: measureReadings(photo, calibration, archive.readings.ofPhoto(photo.id), pointing) };
  });
  return { photos };
}

/** What the Bench asks for after each change. */
export function sizesOfSkin(archive: Archive, exuviaId: string): SkinSizes {
  return skinSizesOf(measuredSkin(archive, exuviaId));
}
