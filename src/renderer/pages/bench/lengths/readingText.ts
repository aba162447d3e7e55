import type { Measurement } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { estimateAsText, plusMinusMeans, unusableInWords } from '../../../../words/estimates.ts';
import { FLAG_LABELS } from '../../../../words/labels.ts';
import { absentInWords, quantityName } from '../../../../words/quantities.ts';

export interface ReadingTextHead {
  /** Whose skin, which photo, which instar: a line each. */
  readonly lines: readonly string[];
  /** What the keeper calls the distance of their own. */
  readonly own?: string | null;
}

/** A reading as plain text with tabs between its columns, for a letter or a spreadsheet: name, mm, inches, remarks. */
export function readingAsText(measurement: Measurement, head: ReadingTextHead): string {
  const rows = measurement.quantities.map(({ name, unit, estimate, flags }) => [
    quantityName(name, head.own),
    isUsable(estimate) ? estimateAsText(estimate, unit) : unusableInWords(unit),
    unit === 'mm' && isUsable(estimate) ? estimateAsText(estimate, 'in') : '',
    flags.map((flag) => FLAG_LABELS[flag]).join('; '),
  ]);
  const absent = measurement.absent
    .filter(({ reason }) => reason !== 'not-placed')
    .map((one) => [quantityName(one.name, head.own), '', '', absentInWords(one, measurement.absent)]);
  return [...head.lines, plusMinusMeans(measurement.quantities), '', ...[...rows, ...absent].map((row) => row.join('\t').trimEnd())].join(
    '\n',
  );
}
