import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { AnimalRecords, SkinState } from '../../domain/care/followed.ts';
import type { Observation } from '../../domain/care/observation.ts';
import { growthFactorFrom, type LastSkinSize } from '../../domain/care/spanNow.ts';
import { buildLadder } from '../../domain/growth/ladder.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import { onRecord } from './ladderPage.ts';
import { type MoltedSkin, moltedSkinsOf, skinSizesOf } from './skins.ts';

/** All that following one animal needs. Its sizes are measured anew only where a skin was measured at all. */
export function animalRecordsOf(archive: Archive, entry: CabinetEntry, observations: readonly Observation[]): AnimalRecords {
  const { specimen, molts, determinations, lastMeasured } = entry;
  const skins = moltedSkinsOf(archive, specimen.id);
  const sexed = new Set(standingOf(determinations).map(({ exuviaId }) => exuviaId));
  const fit = lastMeasured ? buildLadder(skins.map(onRecord), specimen).fit : null;
  return {
    specimen,
    observations,
    molts,
    skins: skins.flatMap(({ molt, exuvia, photos }): SkinState[] => {
      if (!exuvia) return [];
      const measured = photos.some(({ readings }) => readings.some(({ measurement }) => measurement !== null));
      return [{ moltId: molt.id, exuvia, photographed: photos.length > 0, measured, sexed: sexed.has(exuvia.id) }];
    }),
    lastSkinSize: lastMeasured && lastSkinSizeOf(skins),
    factor: growthFactorFrom(fit),
    sex: signOf(determinations).sex,
    forecast: null,
  };
}

/** Of the latest skin that gives a length an animal's span can be told from. */
function lastSkinSizeOf(skins: readonly MoltedSkin[]): LastSkinSize | null {
  for (const [index, skin] of skins.toReversed().entries()) {
    const { legSpanMm, carapaceLengthMm } = skinSizesOf(skin);
    if (legSpanMm || carapaceLengthMm) return { legSpanMm, carapaceLengthMm, moltsSince: index + 1 };
  }
  return null;
}
