import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Estimate } from '../../domain/measuring/quantity.ts';
import { instarNowOf } from '../../domain/molting/instars.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { SpecimenSummary } from '../contract/specimens.ts';
import { carapaceLengthOf, measureReadings } from './measurements.ts';

/** One animal as the list of all shows it. */
export function summaryOf(archive: Archive, entry: CabinetEntry): SpecimenSummary {
  const { specimen, molts, determinations, coverPhotoId } = entry;
  return {
    specimen,
    sex: signOf(determinations),
    instarNow: instarNowOf(molts, specimen),
    recordedMolts: molts.length,
    lastMoltOn: molts.at(-1)?.happenedTo ?? null,
    lastCarapaceLengthMm: lastCarapaceLengthOf(archive, entry),
    coverPhotoId,
  };
}

function lastCarapaceLengthOf(archive: Archive, { lastMeasured }: CabinetEntry): Estimate | null {
  if (lastMeasured === null) return null;
  const { photo, calibration, reading } = lastMeasured;
  const measured = measureReadings(photo, calibration, archive.readings.ofPhoto(photo.id));
  return carapaceLengthOf(measured.find((one) => one.reading.id === reading.id)?.measurement ?? null);
}
