import type { FeedingRow, FeedingTable, Wait } from './feedingTable.ts';

/** Spans for which two tables differ: from one limit to the next. */
export interface WaitDifference {
  readonly fromMm: number;
  readonly fromIncluded: boolean;
  /** Null for the longest spans, without an upper limit. */
  readonly to: { readonly mm: number; readonly included: boolean } | null;
  readonly before: Wait;
  readonly after: Wait;
  readonly change: 'shorter' | 'longer' | 'same-or-a-few-days';
}

/** Mean length of a month in the Gregorian calendar, 146097 days in 4800 months: only to tell which wait is longer. */
const DAYS_PER_MONTH = 146_097 / 4_800;

/** Where and how one table differs from another, shortest spans first; neighboring spans that change alike are one. */
export function differenceOf(before: FeedingTable, after: FeedingTable): WaitDifference[] {
  const limits = [...before, ...after].toSorted(byLimit).filter((row, index, all) => index === 0 || !sameLimit(row, all[index - 1]));
  const pieces = limits.flatMap((row, index): WaitDifference[] => {
    const [was, is] = [waitAt(before, row), waitAt(after, row)];
    if (!was || !is) return [];
    const next = limits[index + 1];
    const to = next ? { mm: next.fromMm, included: !next.fromIncluded } : null;
    return [{ fromMm: row.fromMm, fromIncluded: row.fromIncluded, to, before: was, after: is, change: changeOf(was, is) }];
  });
  const merged: WaitDifference[] = [];
  for (const piece of pieces) {
    const last = merged.at(-1);
    if (last && sameWait(last.before, piece.before) && sameWait(last.after, piece.after))
      merged[merged.length - 1] = { ...last, to: piece.to };
    else merged.push(piece);
  }
  return merged.filter((piece) => !sameWait(piece.before, piece.after));
}

type Limit = Pick<FeedingRow, 'fromMm' | 'fromIncluded'>;

/** A limit that includes its own span comes before one that does not. */
function byLimit(a: Limit, b: Limit): number {
  return a.fromMm - b.fromMm || Number(b.fromIncluded) - Number(a.fromIncluded);
}

function sameLimit(a: Limit, b: Limit | undefined): boolean {
  return a.fromMm === b?.fromMm && a.fromIncluded === b.fromIncluded;
}

function waitAt(table: FeedingTable, limit: Limit): Wait | null {
  return table.findLast((row) => byLimit(row, limit) <= 0)?.wait ?? null;
}

function sameWait(a: Wait, b: Wait): boolean {
  return a.count === b.count && a.unit === b.unit;
}

function changeOf(before: Wait, after: Wait): WaitDifference['change'] {
  const days = ({ count, unit }: Wait) => count * (unit === 'days' ? 1 : DAYS_PER_MONTH);
  const change = days(after) - days(before);
  if (before.unit !== after.unit && Math.abs(change) < 3) return 'same-or-a-few-days';
  return change < 0 ? 'shorter' : 'longer';
}
