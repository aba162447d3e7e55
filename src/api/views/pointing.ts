import type { Archive } from '../../archive/archive.ts';
import { agreementOfPasses, type PassAgreement } from '../../domain/agreement/passes.ts';
import { type Pointing, pointingFrom, scattersOf } from '../../domain/agreement/pointing.ts';
import { slipsIn } from '../../domain/agreement/slips.ts';
import { dependsOn } from '../../domain/measuring/quantityDefinitions.ts';
import type { CarapaceHeight, Reading } from '../../domain/measuring/reading.ts';
import { unwrap } from '../../domain/result.ts';
import { measureReadings } from './measurements.ts';

/** How well each observer points, as far as repeated passes tell. */
export function pointingIn(archive: Archive): Pointing {
  return pointingFrom(scattersOf(archive.readings.repeated()));
}

/**
 * How well all passes over photos that were read more than once agree, as errors of the hand: all of one photo at the same height of
 * the carapace, and lengths between points that slipped left out.
 */
export function agreementIn(archive: Archive): PassAgreement {
  const repeated = archive.readings.repeated();
  const pointing = pointingFrom(scattersOf(repeated));
  const slips = slipsIn(repeated);
  const passes = [...Map.groupBy(repeated, ({ photoId }) => photoId)].flatMap(([photoId, readings]) => {
    const [photo, calibration] = [unwrap(archive.photos.get(photoId)), unwrap(archive.calibrations.get(photoId))];
    const carapaceHeight = commonHeightOf(readings);
    const measured = measureReadings(photo, calibration, readings, pointing, (reading) => ({ ...reading, carapaceHeight }));
    return measured.flatMap(({ reading: { observer }, measurement }) => {
      if (!measurement) return [];
      const slipped = new Set(
        slips.flatMap((slip) => (slip.pass.photoId === photoId && slip.pass.observer === observer ? [slip.name] : [])),
      );
      return [{ photoId, observer, quantities: measurement.quantities.filter(({ name }) => !dependsOn(name, slipped)) }];
    });
  });
  return agreementOfPasses(passes);
}

/** The height that was said last; an assumed one only where nobody has said any. */
function commonHeightOf(readings: readonly Reading[]): CarapaceHeight {
  const said = readings.findLast(({ carapaceHeight }) => carapaceHeight.kind !== 'assumed');
  return said?.carapaceHeight ?? { kind: 'assumed' };
}
