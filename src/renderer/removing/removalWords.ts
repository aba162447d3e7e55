import type { RemovableKind, RemovalCounts } from '../../domain/removal.ts';
import { counted, listed } from '../../words/counts.ts';

/** What a removal takes, beyond what was named: "2 molts, 1 skin and 3 readings"; '' when nothing hangs on it. */
export function whatGoesToo(kind: RemovableKind, counts: RemovalCounts): string {
  const own = (of: RemovableKind) => (kind === of ? 1 : 0);
  return listed(
    [
      said(counts.specimens - own('specimen'), 'specimen'),
      said(counts.molts - own('molt'), 'molt'),
      said(counts.exuviae - own('exuvia'), 'skin'),
      said(counts.photos - own('photo'), 'photo'),
      said(counts.readings - own('reading'), 'reading'),
      said(counts.determinations, 'determination'),
    ].filter((part) => part !== ''),
  );
}

function said(count: number, one: string): string {
  return count > 0 ? counted(count, one) : '';
}
