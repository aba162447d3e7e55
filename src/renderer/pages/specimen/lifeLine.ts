import type { MoltEntry } from '../../../api/contract/specimens.ts';
import { daysBetween } from '../../../domain/dates.ts';
import type { Molt } from '../../../domain/molting/molt.ts';

/** One molt on the life line, with its place among the others. */
export interface LifeLineEntry {
  readonly entry: MoltEntry;
  /** 1 for the first molt on record. */
  readonly recordedMolt: number;
  /** Since the molt before; a span where a date is one; null for the first. */
  readonly daysSincePrevious: { readonly from: number; readonly to: number } | null;
  /** Instars that ended since the molt before without a molt on record, lowest first; the days since then span them too. */
  readonly missing: readonly number[];
}

/** Newest first, as one looks back on a life. `molts` come oldest first. */
export function lifeLineOf(molts: readonly MoltEntry[]): LifeLineEntry[] {
  return molts
    .map((entry, index) => ({
      entry,
      recordedMolt: index + 1,
      daysSincePrevious: daysFrom(molts[index - 1]?.molt, entry.molt),
      missing: missingBetween(molts[index - 1], entry),
    }))
    .toReversed();
}

function missingBetween(before: MoltEntry | undefined, entry: MoltEntry): number[] {
  const from = before?.instar?.number;
  const to = entry.instar?.number;
  return from === undefined || to === undefined ? [] : Array.from({ length: Math.max(0, to - from - 1) }, (_, place) => from + 1 + place);
}

function daysFrom(before: Molt | undefined, molt: Molt): LifeLineEntry['daysSincePrevious'] {
  if (!before) return null;
  return { from: daysBetween(before.happenedTo, molt.happenedFrom), to: daysBetween(before.happenedFrom, molt.happenedTo) };
}
