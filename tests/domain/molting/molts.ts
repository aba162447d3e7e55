import type { Molt, MoltDraft } from '../../../src/domain/molting/molt.ts';

/** A molt known to the day, or to the days between `from` and `to`. */
export function moltDraft(days: string, instarShed: number | null = null): MoltDraft {
  const [from = days, to = from] = days.split(' to ');
  return { happenedFrom: from, happenedTo: to, instarShed, position: 'not-seen', outcomes: [], notes: '' };
}

/** Recorded molts of one animal, in the order given; `molt-1` is the first of the list. */
export function molts(...list: readonly (readonly [days: string, instarShed?: number | null])[]): Molt[] {
  return list.map(([days, instarShed], index) => ({
    ...moltDraft(days, instarShed ?? null),
    id: `molt-${index + 1}`,
    specimenId: 'specimen-1',
    version: 1,
    createdAt: '2026-01-01T12:00:00.000Z',
  }));
}
