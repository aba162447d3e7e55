import type { FileOutcome, TaskSnapshot } from '../../../domain/intake/task.ts';
import { counted, listed } from '../../../words/counts.ts';

export interface OutcomeCounts {
  readonly added: number;
  readonly alreadyHere: number;
  readonly refused: number;
  readonly waiting: number;
}

export function countOutcomes(files: TaskSnapshot['files']): OutcomeCounts {
  const count = (kind: FileOutcome['kind']) => files.filter((file) => file.outcome.kind === kind).length;
  return { added: count('added'), alreadyHere: count('already-here'), refused: count('refused'), waiting: count('waiting') };
}

/** "12 photos added, 2 already here and 1 refused". */
export function outcomesInWords(counts: OutcomeCounts): string {
  const parts = [
    counts.added > 0 ? `${counted(counts.added, 'photo')} added` : '',
    counts.alreadyHere > 0 ? `${counts.alreadyHere} already here` : '',
    counts.refused > 0 ? `${counts.refused} refused` : '',
    counts.waiting > 0 ? `${counts.waiting} not reached` : '',
  ].filter((part) => part !== '');
  return parts.length === 0 ? 'Nothing came in' : listed(parts);
}

/** Keys for a list of files: two files of one intake may share their name, so each is numbered among its namesakes. */
export function withKeys<File extends { readonly name: string }>(files: readonly File[]): { key: string; file: File }[] {
  const seen = new Map<string, number>();
  return files.map((file) => {
    const nth = (seen.get(file.name) ?? 0) + 1;
    seen.set(file.name, nth);
    return { key: `${nth} ${file.name}`, file };
  });
}
