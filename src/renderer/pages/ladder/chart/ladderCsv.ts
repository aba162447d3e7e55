import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import type { SkinSizes } from '../../../../domain/growth/skinSizes.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import type { Measure } from './measures.ts';

type Row = readonly (string | number | null)[];

/**
 * The figures behind all drawings, unrounded: a row for each molt on record, then one for each measured photo of the living
 * animal, whose instar had not ended then.
 */
export function ladderRows({ rungs }: Ladder, live: readonly LiveSize[], measures: readonly Measure[]): Row[] {
  const head: Row = [
    'Measured on',
    'Instar shown',
    'Instar shown, at most',
    'Instar counted, not noted',
    'Molt on record',
    'Molt presumed',
    'Shed, or photo taken, from',
    'Shed, or photo taken, to',
    ...measures.flatMap((measure) => [`${SIZE_LABELS[measure]} (mm)`, `${SIZE_LABELS[measure]} U, k = 2 (mm)`]),
    'Carapace ratio to the instar before',
    'Ratio U, k = 2',
    'Instars without a molt on record before',
    'Days since the molt before, from',
    'Days since the molt before, to',
  ];
  const sizesIn = (sizes: SkinSizes) =>
    measures.flatMap((measure) => [sizes[measure]?.value ?? null, sizes[measure]?.expandedUncertainty ?? null]);
  return [
    head,
    ...rungs.map(
      (rung): Row => [
        'skin',
        rung.instar?.number ?? null,
        rung.instar?.number ?? null,
        rung.instar === null ? null : rung.instar.certainty === 'inferred' ? 'yes' : 'no',
        rung.recordedMolt,
        rung.presumed ? 'yes' : 'no',
        rung.happenedFrom,
        rung.happenedTo,
        ...sizesIn(rung),
        rung.ratio?.value ?? null,
        rung.ratio?.expandedUncertainty ?? null,
        rung.skippedInstars,
        rung.daysSincePrevious?.from ?? null,
        rung.daysSincePrevious?.to ?? null,
      ],
    ),
    ...live.map(
      (size): Row => [
        'living animal',
        size.instarFrom,
        size.instarTo,
        null,
        null,
        null,
        size.takenOn,
        size.takenOn,
        ...sizesIn(size),
        null,
        null,
        null,
        null,
        null,
      ],
    ),
  ];
}
