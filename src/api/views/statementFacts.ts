import type { Archive } from '../../archive/archive.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { unwrap } from '../../domain/result.ts';
import type { Determination } from '../../domain/sexing/determination.ts';
import { claimOf } from '../../domain/sexing/live/claim.ts';
import { type LiveSign, standingLiveSigns } from '../../domain/sexing/live/liveSign.ts';
import { shownBy } from '../../domain/sexing/live/shown.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import type { OtherReading, StatementFacts, StatementPromise } from '../../domain/sexing/statement/statement.ts';
import { animalSignsOf } from './animalSigns.ts';
import { abdomenDistancesIn, measuredSkin, skinSizesOf } from './skins.ts';

/** What is on record for a statement of one animal's sex. An evidence photo whose record can't be read is only counted. */
export function statementFactsOf(
  archive: Archive,
  specimenId: string,
  { today, promise }: { today: string; promise: StatementPromise },
): StatementFacts {
  const { code, taxon, name } = unwrap(archive.specimens.get(specimenId));
  const determinations = archive.determinations.ofSpecimen(specimenId);
  const liveSigns = animalSignsOf(archive, specimenId);
  const sign = signOf(determinations, liveSigns);
  const standing = standingOf(determinations);
  const leading = sign.conflict ? null : (standing.findLast(({ sex, level }) => sex === sign.sex && level === sign.level) ?? null);
  const carrying = standingLiveSigns(liveSigns).filter((live) => {
    const claim = sign.conflict ? null : claimOf(live);
    return claim !== null && claim.sex === sign.sex && claim.level === sign.level;
  });
  const otherwise = ({ sex }: Determination) => sex !== 'unsexed' && (sign.conflict || sex !== sign.sex);
  const against = standing.filter(otherwise);
  const takenBack = determinations.filter((determination) => !standing.includes(determination) && otherwise(determination));
  // In a conflict the photos of both sides: of the readings against each other, and of the animal.
  const named = leading ? [leading] : sign.conflict ? against : [];
  const signs = leading ? [] : sign.conflict ? standingLiveSigns(liveSigns).filter((live) => claimOf(live) !== null) : carrying;
  const photoIds = [...new Set([...named, ...signs].flatMap(photosOf))];
  const photos = photoIds.map((photoId) => archive.photos.get(photoId));
  return {
    today,
    ...{ code, taxon, name, sign, leading },
    carrying: carrying.map(({ finding }) => finding),
    skin: leading && skinOf(archive, leading),
    otherReadings: standing.length - (leading ? 1 : 0) - against.length,
    against: against.map((determination) => otherReadingOf(archive, determination)),
    takenBack: takenBack.map((determination) => otherReadingOf(archive, determination)),
    shown: shownBy({ determinations, liveSigns }, new Set()).map(({ finding, on, by, determinationId }) => ({
      ...{ finding, on, by },
      inReading: determinationId !== null,
    })),
    photos: photos.flatMap((photo) => {
      if (!photo.ok) return [];
      const { id, originalName, view, subject, widthPx, heightPx } = photo.value;
      const pins = named.flatMap((determination) => determination.pins.filter((pin) => pin.photoId === id));
      return [{ photoId: id, originalName, view, filedElsewhere: specimenIn(archive, subject) !== specimenId, widthPx, heightPx, pins }];
    }),
    photosGone: photos.filter(({ ok }) => !ok).length,
    promise,
  };
}

function photosOf(evidence: Determination | LiveSign): readonly string[] {
  return 'photoIds' in evidence ? evidence.photoIds : evidence.evidencePhotoIds;
}

function specimenIn(archive: Archive, subject: PhotoSubject): string | null {
  if (subject.kind === 'animal') return subject.specimenId;
  return subject.kind === 'skin' ? unwrap(archive.molts.get(unwrap(archive.exuviae.get(subject.exuviaId)).moltId)).specimenId : null;
}

function otherReadingOf(archive: Archive, determination: Determination): OtherReading {
  const { happenedFrom, happenedTo } = unwrap(archive.molts.get(unwrap(archive.exuviae.get(determination.exuviaId)).moltId));
  return { determination, shedFrom: happenedFrom, shedTo: happenedTo };
}

/** Measured sizes before those that the reader wrote down. */
function skinOf(archive: Archive, { exuviaId, checklist }: Determination): StatementFacts['skin'] {
  const { moltId } = unwrap(archive.exuviae.get(exuviaId));
  const { happenedFrom, happenedTo } = unwrap(archive.molts.get(moltId));
  const skin = measuredSkin(archive, exuviaId);
  const { carapaceLengthMm, legSpanMm } = skinSizesOf(skin);
  return {
    shedFrom: happenedFrom,
    shedTo: happenedTo,
    carapaceMm: carapaceLengthMm?.value ?? checklist.carapaceLengthMm,
    legSpanMm: legSpanMm?.value ?? checklist.legSpanMm,
    distances: abdomenDistancesIn(skin),
  };
}
