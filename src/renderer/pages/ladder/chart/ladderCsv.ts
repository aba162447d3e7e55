import type { LiveSize } from '../../../../domain/growth/liveSizes.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import type { SkinSizes } from '../../../../domain/growth/skinSizes.ts';
import type { Estimate } from '../../../../domain/measuring/quantity.ts';
import { formatEstimate } from '../../../../domain/measuring/rounding.ts';
import type { Specimen } from '../../../../domain/specimen/specimen.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import type { Measure } from './measures.ts';

type Row = readonly (string | number | null)[];

/** Whose figures they are: stands in every row, so that a row says it wherever it goes. */
export type Subject = Pick<Specimen, 'name' | 'code' | 'taxon' | 'sample'>;

/**
 * The figures behind all drawings, rounded as the page shows them: a row for each molt on record, then one for each measured photo of the living
 * animal, whose instar had not ended then.
 */
export function ladderRows(
  subject: Subject,
  { rungs }: Ladder,
  { live, measures }: { readonly live: readonly LiveSize[]; readonly measures: readonly Measure[] },
): Row[] {
  const head: Row = [
    ...SUBJECT_HEAD,
    'Measured on',
    'Instar shown',
    'Instar shown, at most',
    'Instar counted, not noted',
    'Molt on record',
    'Molt presumed',
    'Shed, or photo taken, from',
    'Shed, or photo taken, to',
    ...measures.flatMap((measure) => [`${SIZE_LABELS[measure]} (mm)`, `${SIZE_LABELS[measure]} U (95 %) (mm)`]),
    'Carapace ratio to the instar before',
    'Ratio U (95 %)',
    'Instars without a molt on record before',
    'Days since the molt before, from',
    'Days since the molt before, to',
  ];
  const whose = subjectCells(subject);
  const sizesIn = (sizes: SkinSizes) => measures.flatMap((measure) => estimateCells(sizes[measure]));
  return [
    head,
    ...rungs.map(
      (rung): Row => [
        ...whose,
        'skin',
        rung.instar?.number ?? null,
        rung.instar?.number ?? null,
        rung.instar === null ? null : rung.instar.certainty === 'inferred' ? 'yes' : 'no',
        rung.recordedMolt,
        rung.presumed ? 'yes' : 'no',
        rung.happenedFrom,
        rung.happenedTo,
        ...sizesIn(rung),
        ...estimateCells(rung.ratio),
        rung.skippedInstars,
        rung.daysSincePrevious?.from ?? null,
        rung.daysSincePrevious?.to ?? null,
      ],
    ),
    ...live.map(
      (size): Row => [
        ...whose,
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

export const SUBJECT_HEAD: Row = ['Animal', 'Code', 'Species', 'Invented sample data'];

export function subjectCells({ name, code, taxon, sample }: Subject): Row {
  return [name ?? code, code, taxon, sample ? 'yes' : 'no'];
}

/** Value and U as the page shows them. */
export function estimateCells(estimate: Estimate | null): Row {
  if (!estimate) return [null, null];
  const { value, expandedUncertainty } = formatEstimate(estimate);
  return [value, expandedUncertainty];
}
