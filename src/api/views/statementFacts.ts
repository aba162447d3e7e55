import type { Archive } from '../../archive/archive.ts';
import { unwrap } from '../../domain/result.ts';
import type { Determination } from '../../domain/sexing/determination.ts';
import { standingLiveSigns } from '../../domain/sexing/live/liveSign.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import type { StatementFacts, StatementPromise } from '../../domain/sexing/statement/statement.ts';
import { animalSignsOf } from './animalSigns.ts';
import { sizesOfSkin } from './skins.ts';

/** What is on record for a statement of one animal's sex. An evidence photo whose record can't be read is left out. */
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
  const leading =
    standing.findLast(({ sex, level }) => sex === sign.sex && level === sign.level) ??
    standing.findLast(({ sex }) => sex === sign.sex) ??
    null;
  return {
    today,
    ...{ code, taxon, name, sign, leading },
    skin: leading && skinOf(archive, leading),
    otherReadings: standing.length - (leading ? 1 : 0),
    liveSigns: standingLiveSigns(liveSigns),
    photos: (leading?.evidencePhotoIds ?? []).flatMap((photoId) => {
      const photo = archive.photos.get(photoId);
      return photo.ok ? [{ photoId, originalName: photo.value.originalName }] : [];
    }),
    promise,
  };
}

/** Measured sizes before those that the reader wrote down. */
function skinOf(archive: Archive, { exuviaId, checklist }: Determination): StatementFacts['skin'] {
  const { moltId } = unwrap(archive.exuviae.get(exuviaId));
  const { happenedFrom, happenedTo } = unwrap(archive.molts.get(moltId));
  const { carapaceLengthMm, legSpanMm } = sizesOfSkin(archive, exuviaId);
  return {
    shedFrom: happenedFrom,
    shedTo: happenedTo,
    carapaceMm: carapaceLengthMm?.value ?? checklist.carapaceLengthMm,
    legSpanMm: legSpanMm?.value ?? checklist.legSpanMm,
  };
}
