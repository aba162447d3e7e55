import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { moltWatchedOf } from '../../domain/care/lastMolt.ts';
import type { DueForecast } from '../../domain/growth/forecast/dueForecast.ts';
import { instarsOfSkins } from '../../domain/molting/instars.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { LastMeasuredSkin, SpecimenSummary } from '../contract/specimens.ts';
import { livingInstarOf } from './livingInstar.ts';
import { isMaleMaturityContradicted, maleMaturityOf } from './maleMaturity.ts';
import { carapaceLengthOf } from './measurements.ts';

/** One animal as the list of all shows it. */
export function summaryOf(entry: CabinetEntry, pointing: Pointing, nextMolt: DueForecast | null): SpecimenSummary {
  const { specimen, molts, determinations, liveSigns, coverPhotoId } = entry;
  const watched = moltWatchedOf(entry.stageNotes, molts);
  const last = molts.at(-1);
  return {
    specimen,
    sex: signOf(determinations, liveSigns),
    instarNow: livingInstarOf(entry, watched),
    recordedMolts: molts.length,
    lastMolt: last ? { from: last.happenedFrom, to: last.happenedTo } : null,
    lastMeasuredSkin: lastMeasuredSkinOf(entry, pointing),
    coverPhotoId,
    nextMolt,
    matureMaleBy: maleMaturityOf(entry),
    maleContradicted: isMaleMaturityContradicted(entry),
    moltWatched: watched,
  };
}

function lastMeasuredSkinOf({ specimen, molts, lastMeasured }: CabinetEntry, pointing: Pointing): LastMeasuredSkin | null {
  const carapaceLengthMm = lastMeasured && carapaceLengthOf(lastMeasured, pointing);
  const index = molts.findIndex(({ id }) => id === lastMeasured?.moltId);
  if (!carapaceLengthMm || index < 0) return null;
  return {
    carapaceLengthMm,
    instar: instarsOfSkins(molts, specimen)[index] ?? null,
    recordedMolt: index + 1,
    isOfLastMolt: index === molts.length - 1,
  };
}
