import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { instarNowOf, instarOfAnimalPhoto, recordedMoltNumber } from '../../../src/domain/molting/instars.ts';
import { molts } from './molts.ts';

// Source of the rule: common practice, no source; it follows from what a molt is. The skin shows the instar that ended.

describe('the instar of the living animal', () => {
  test.each([
    ['is one more than the last instar shed', molts(['2025-01-01', 5], ['2025-06-01', 6]), 7],
    ['counts later molts whose instar nobody noted', molts(['2025-01-01', 5], ['2025-06-01'], ['2026-01-01']), 8],
    ['is unknown while no instar is known', molts(['2025-01-01'], ['2025-06-01']), null],
    ['is unknown without molts', [], null],
    ['does not care for the order of the list', molts(['2025-06-01', 6], ['2025-01-01', 5]), 7],
  ] as const)('%s', (_, recorded, instar) => {
    expect(instarNowOf(recorded)).toBe(instar);
  });

  it('starts from the instar at which the animal was acquired', () => {
    const acquisition = { acquiredOn: '2025-03-01', acquiredInstar: 4 };
    expect(instarNowOf([], acquisition)).toBe(4);
    expect(instarNowOf(molts(['2025-06-01'], ['2025-09-01']), acquisition)).toBe(6);
    expect(instarNowOf(molts(['2025-01-01'], ['2025-09-01']), acquisition)).toBe(5);
  });

  it('leaves the acquisition aside when it fell into the days of a molt', () => {
    expect(instarNowOf(molts(['2025-02-25 to 2025-03-05']), { acquiredOn: '2025-03-01', acquiredInstar: 4 })).toBeNull();
  });

  it('prefers an instar noted at a molt to an older count from the acquisition', () => {
    expect(instarNowOf(molts(['2025-06-01', 7]), { acquiredOn: '2025-03-01', acquiredInstar: 4 })).toBe(8);
  });
});

describe('a photo of the living animal', () => {
  const recorded = molts(['2025-01-10', 5], ['2025-06-01 to 2025-06-04', 6], ['2026-01-10', 8]);

  test.each([
    ['before the first molt shows the instar it sheds', '2024-12-01', { from: 5, to: 5 }],
    ['after a molt shows the next instar', '2025-02-01', { from: 6, to: 6 }],
    ['from within the days of a molt can show either side', '2025-06-02', { from: 6, to: 8 }],
    ['where a molt went unrecorded can show either side of it', '2025-09-01', { from: 7, to: 8 }],
    ['after the last molt shows the instar of now', '2026-03-01', { from: 9, to: 9 }],
    ['on the day of a molt can show either side', '2026-01-10', { from: 7, to: 9 }],
  ])('%s', (_, takenOn, span) => {
    expect(instarOfAnimalPhoto(takenOn, recorded)).toEqual(span);
  });

  it('shows an unknown instar when none is known', () => {
    expect(instarOfAnimalPhoto('2025-02-01', molts(['2025-01-01']))).toBeNull();
  });

  it('always belongs to the instar after the one on the skin of the molt before it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 9 }), (first, count) => {
        const months = Array.from({ length: count }, (_, index) => `2025-0${index + 1}`);
        const row = molts(...months.map((month, index) => [`${month}-01`, first + index] as const));
        for (const [index, month] of months.entries()) {
          expect(instarOfAnimalPhoto(`${month}-15`, row)).toEqual({ from: first + index + 1, to: first + index + 1 });
        }
        expect(instarNowOf(row)).toBe(first + count);
      }),
    );
  });
});

describe('the number of a molt among those recorded', () => {
  const recorded = molts(['2025-06-01'], ['2024-06-01'], ['2026-06-01']);

  it('follows the dates', () => {
    expect(['molt-2', 'molt-1', 'molt-3'].map((id) => recordedMoltNumber(id, recorded))).toEqual([1, 2, 3]);
  });

  it('is null for a molt of another animal', () => {
    expect(recordedMoltNumber('molt-9', recorded)).toBeNull();
  });
});
