import { type Calibration, calibrate } from '../calibrate.ts';
import type { ScaleMarks } from '../calibration.ts';
import type { PictureFacts } from '../camera.ts';
import type { Shown } from '../heights.ts';
import { measure } from '../measure.ts';
import type { Measurement, Quantity } from '../quantity.ts';
import type { ReadingDraft } from '../reading.ts';

/**
 * What undoing the lens adds to each quantity of a reading, in the quantity's own unit.
 *
 * @returns empty where no lens is corrected.
 */
export function lensCorrections(
  reading: Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'>,
  marks: ScaleMarks,
  picture: PictureFacts,
  { lens }: Pick<Calibration, 'lens'>,
  { quantities }: Measurement,
  shown: Shown = 'skin',
): ReadonlyMap<Quantity['name'], number> {
  if (!lens.isCorrected || marks.kind === 'two-points' || marks.kind === 'coin') return new Map();
  const asItIs = calibrate({ ...marks, keepsDistortion: true }, picture);
  if (!asItIs.ok) return new Map();
  const before = new Map(measure(reading, asItIs.value, { shown }).quantities.map(({ name, estimate }) => [name, estimate.value]));
  return new Map(
    quantities.flatMap(({ name, estimate }) => {
      const was = before.get(name);
      return was === undefined ? [] : [[name, estimate.value - was] as const];
    }),
  );
}
