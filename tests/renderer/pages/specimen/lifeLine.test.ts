import { describe, expect, test } from 'vitest';
import type { MoltEntry } from '../../../../src/api/contract/specimens.ts';
import { lifeLineOf } from '../../../../src/renderer/pages/specimen/lifeLine.ts';
import { aMolt, NO_SIZES } from '../../../support/records.ts';

function entry(from: string, to: string = from, part: Partial<MoltEntry> = {}): MoltEntry {
  return {
    molt: aMolt({ id: from, happenedFrom: from, happenedTo: to }),
    exuvia: null,
    photos: [],
    instar: null,
    sizes: NO_SIZES,
    determinations: [],
    ...part,
  };
}

describe('the life line', () => {
  test('runs from the newest molt to the oldest, each with its place among those recorded', () => {
    const line = lifeLineOf([entry('2025-01-01'), entry('2025-05-01'), entry('2025-12-01')]);
    expect(line.map((stop) => [stop.entry.molt.id, stop.recordedMolt])).toEqual([
      ['2025-12-01', 3],
      ['2025-05-01', 2],
      ['2025-01-01', 1],
    ]);
  });

  test('names the instars between two molts whose own molts are not on record', () => {
    const numbered = (from: string, number: number) => entry(from, from, { instar: { number, certainty: 'known' } });
    const line = lifeLineOf([numbered('2024-01-01', 5), numbered('2024-06-01', 6), numbered('2025-09-25', 9), entry('2026-01-01')]);
    expect(line.map((stop) => stop.missing)).toEqual([[], [7, 8], [], []]);
  });

  test('counts the days since the molt before, as a span where a date is one', () => {
    const [second, first] = lifeLineOf([entry('2025-01-01', '2025-01-03'), entry('2025-01-31')]);
    expect(second?.daysSincePrevious).toEqual({ from: 28, to: 30 });
    expect(first?.daysSincePrevious).toBeNull();
  });
});
