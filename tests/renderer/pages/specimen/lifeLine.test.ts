import { describe, expect, test } from 'vitest';
import type { MoltEntry } from '../../../../src/api/contract/specimens.ts';
import { keySizesOf, lifeLineOf } from '../../../../src/renderer/pages/specimen/lifeLine.ts';
import { aMolt } from '../../../support/records.ts';

function entry(from: string, to: string = from, part: Partial<MoltEntry> = {}): MoltEntry {
  return {
    molt: aMolt({ id: from, happenedFrom: from, happenedTo: to }),
    exuvia: null,
    photos: [],
    measurement: null,
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

  test('counts the days since the molt before, as a span where a date is one', () => {
    const [second, first] = lifeLineOf([entry('2025-01-01', '2025-01-03'), entry('2025-01-31')]);
    expect(second?.daysSincePrevious).toEqual({ from: 28, to: 30 });
    expect(first?.daysSincePrevious).toBeNull();
  });
});

describe('the key sizes of a skin', () => {
  test('are none without a measurement', () => {
    expect(keySizesOf(entry('2025-01-01'))).toBeNull();
  });

  test('leave out a leg that is growing back', () => {
    const leg = (name: string, value: number, flags: ('regenerated' | 'posture-dependent')[] = []) => ({
      name,
      unit: 'mm' as const,
      estimate: { value, standardUncertainty: 0.1, expandedUncertainty: 0.2 },
      flags,
      budget: [],
      heightCorrection: null,
    });
    const measurement = { quantities: [leg('leg-L1', 40), leg('leg-R1', 22, ['regenerated'])], absent: [] };
    const sizes = keySizesOf(entry('2025-01-01', '2025-01-01', { measurement }));
    expect(sizes?.legFirstMm?.value).toBeCloseTo(40, 10);
    expect(sizes?.carapaceLengthMm).toBeNull();
  });
});
