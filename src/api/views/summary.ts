import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import { instarNowOf } from '../../domain/molting/instars.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { SpecimenSummary } from '../contract/specimens.ts';
import { carapaceLengthOf } from './measurements.ts';

/** One animal as the list of all shows it. */
export function summaryOf(archive: Archive, entry: CabinetEntry): SpecimenSummary {
  const { specimen, molts, determinations, lastMeasured, coverPhotoId } = entry;
  return {
    specimen,
    sex: signOf(determinations),
    instarNow: instarNowOf(molts, specimen),
    recordedMolts: molts.length,
    lastMoltOn: molts.at(-1)?.happenedTo ?? null,
    lastCarapaceLengthMm: lastMeasured && carapaceLengthOf(lastMeasured, archive.readings.ofPhoto(lastMeasured.photo.id)),
    coverPhotoId,
  };
}
