import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import { isOverdue } from '../../../domain/growth/forecast/expectedMolt.ts';
import type { Level, Sex } from '../../../domain/sexing/determination.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import type { SpecimenStatus } from '../../../domain/specimen/specimen.ts';

const SORT_KEYS = ['code', 'taxon', 'sex', 'instar', 'size', 'lastMolt', 'nextMolt', 'status'] as const;
export type SortKey = (typeof SORT_KEYS)[number];

/** What of the cabinet is shown, and in which order. */
export interface CabinetView {
  search: string;
  sex: 'any' | Sex | 'contradicted';
  status: 'kept' | 'any' | SpecimenStatus;
  sortBy: SortKey;
  descending: boolean;
}

/** All animals still kept, by code. */
export const FIRST_VIEW: CabinetView = { search: '', sex: 'any', status: 'kept', sortBy: 'code', descending: false };

export function shownIn(view: CabinetView, summaries: readonly SpecimenSummary[]): SpecimenSummary[] {
  const words = folded(view.search).split(/\s+/).filter(Boolean);
  return summaries
    .filter(
      (summary) =>
        fitsStatus(view.status, summary) && fitsSex(view.sex, summary) && words.every((word) => searched(summary).includes(word)),
    )
    .toSorted(orderBy(view));
}

/** Pressing the column that already sorts turns its direction. */
export function sortedBy(view: CabinetView, key: SortKey): CabinetView {
  return { ...view, sortBy: key, descending: view.sortBy === key ? !view.descending : false };
}

export function isNarrowed(view: CabinetView): boolean {
  return view.search.trim() !== '' || view.sex !== FIRST_VIEW.sex || view.status !== FIRST_VIEW.status;
}

/** The species on record, each once, to be offered where one is written. */
export function taxaOf(summaries: readonly SpecimenSummary[]): string[] {
  return [...new Set(summaries.map((summary) => summary.specimen.taxon).filter((taxon) => taxon !== ''))].sort();
}

function fitsStatus(status: CabinetView['status'], { specimen }: SpecimenSummary): boolean {
  if (status === 'any') return true;
  return status === 'kept' ? isKept(specimen.status) : specimen.status === status;
}

function fitsSex(sex: CabinetView['sex'], summary: SpecimenSummary): boolean {
  if (sex === 'any') return true;
  return sex === 'contradicted' ? summary.sex.conflict : summary.sex.sex === sex;
}

function searched({ specimen }: SpecimenSummary): string {
  return folded([specimen.code, specimen.taxon, specimen.name, specimen.eggSacGroup, specimen.origin].filter(Boolean).join('\n'));
}

/** Lower case without accents: "Café" is found by "cafe". */
function folded(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}

type Comparable = string | number | null;

const SEX_ORDER: Readonly<Record<Sex, number>> = { female: 0, male: 10, unsexed: 20, anomalous: 30 };
const LEVEL_ORDER: Readonly<Record<Level, number>> = { established: 0, strong: 1, probable: 2, leaning: 3 };

const VALUE_OF: Readonly<Record<SortKey, (summary: SpecimenSummary) => Comparable>> = {
  code: ({ specimen }) => specimen.code,
  taxon: ({ specimen }) => specimen.taxon || null,
  sex: ({ sex }) => SEX_ORDER[sex.sex] + (sex.level === null ? 0 : LEVEL_ORDER[sex.level]),
  instar: ({ instarNow }) => instarNow?.number ?? null,
  size: ({ lastMeasuredSkin }) => lastMeasuredSkin?.carapaceLengthMm.value ?? null,
  lastMolt: ({ lastMolt, moltWatched }) => (moltWatched?.state === 'not-recorded' ? moltWatched.on : (lastMolt?.to ?? null)),
  nextMolt: dueOrder,
  status: ({ specimen }) => specimen.status,
};

/** Who molts now, then who is overdue, then by the day in the middle. */
function dueOrder({ nextMolt, moltWatched }: SpecimenSummary): Comparable {
  if (moltWatched?.state === 'under-way') return '0';
  return nextMolt && `${isOverdue(nextMolt) ? 1 : 2} ${nextMolt.middle}`;
}

/** What is not known stands last in both directions; equals stand by code. Codes count as people do: G-2 before G-12. */
function orderBy({ sortBy, descending }: CabinetView): (a: SpecimenSummary, b: SpecimenSummary) => number {
  const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });
  const compare = (a: Exclude<Comparable, null>, b: Exclude<Comparable, null>) =>
    typeof a === 'number' && typeof b === 'number' ? a - b : collator.compare(String(a), String(b));
  return (a, b) => {
    const [valueA, valueB] = [VALUE_OF[sortBy](a), VALUE_OF[sortBy](b)];
    if (valueA === null || valueB === null) {
      if (valueA !== valueB) return valueA === null ? 1 : -1;
    } else {
      const order = compare(valueA, valueB);
      if (order !== 0) return descending ? -order : order;
    }
    return collator.compare(a.specimen.code, b.specimen.code);
  };
}
