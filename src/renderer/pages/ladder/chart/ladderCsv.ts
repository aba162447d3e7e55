import type { Ladder } from '../../../../domain/growth/rung.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import type { Measure } from './measures.ts';

type Row = readonly (string | number | null)[];

/** The figures behind all drawings, a row for each molt on record, unrounded. */
export function ladderRows({ rungs }: Ladder, measures: readonly Measure[]): Row[] {
  const head: Row = [
    'Instar that ended',
    'Instar counted, not noted',
    'Molt on record',
    'Shed from',
    'Shed to',
    ...measures.flatMap((measure) => [`${SIZE_LABELS[measure]} (mm)`, `${SIZE_LABELS[measure]} U, k = 2 (mm)`]),
    'Carapace ratio to the instar before',
    'Ratio U, k = 2',
    'Instars without a molt on record before',
    'Days since the molt before, from',
    'Days since the molt before, to',
  ];
  return [
    head,
    ...rungs.map(
      (rung): Row => [
        rung.instar?.number ?? null,
        rung.instar === null ? null : rung.instar.certainty === 'inferred' ? 'yes' : 'no',
        rung.recordedMolt,
        rung.happenedFrom,
        rung.happenedTo,
        ...measures.flatMap((measure) => [rung[measure]?.value ?? null, rung[measure]?.expandedUncertainty ?? null]),
        rung.ratio?.value ?? null,
        rung.ratio?.expandedUncertainty ?? null,
        rung.skippedInstars,
        rung.daysSincePrevious?.from ?? null,
        rung.daysSincePrevious?.to ?? null,
      ],
    ),
  ];
}
