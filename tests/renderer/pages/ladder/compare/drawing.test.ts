import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { alignAnimal } from '../../../../../src/domain/growth/compare/aligned.ts';
import { groupBand } from '../../../../../src/domain/growth/compare/group.ts';
import { buildLadder } from '../../../../../src/domain/growth/ladder.ts';
import { animalPath, bandPath } from '../../../../../src/renderer/pages/ladder/compare/comparePaths.ts';
import { compareRows } from '../../../../../src/renderer/pages/ladder/compare/compareRows.ts';
import { lookOf } from '../../../../../src/renderer/pages/ladder/compare/lineLooks.ts';
import { namePlaces } from '../../../../../src/renderer/pages/ladder/compare/namePlaces.ts';
import { moltOn } from '../../../../domain/growth/skins.ts';

const same = (value: number) => value;
const animal = (called: string, factor: number) => {
  const molts = [moltOn('2024-01-01', 5, 4 * factor), moltOn('2024-01-31', 6, 5 * factor), moltOn('2024-06-01', 8, 8 * factor)];
  return alignAnimal({ specimenId: called, called, rungs: buildLadder(molts).rungs }, 'since-molt', 5);
};

describe('lines of a comparison', () => {
  it('are level through the life of an instar, with a riser from the one before and none across a gap', () => {
    expect(animalPath(animal('A', 1).sizes, 'since-molt', same, same)).toBe('M-14 4H0M0 4V5H30M138 8H152');
  });

  it('have a band that is level too, and absent where too few sizes are known', () => {
    const band = groupBand([animal('A', 1), animal('B', 1.1), animal('C', 0.9)], 'since-molt');
    expect(bandPath(band, 'since-molt', same, Math.round)).toMatch(/^M0 \dH30V\dH0Z$/);
  });

  it('look different for as many animals as are fetched at first', () => {
    const looks = [null, ...Array.from({ length: 12 }, (_, place) => place)].map(lookOf);
    expect(new Set(looks.map(({ shape, dash }) => `${shape} ${dash}`)).size).toBe(13);
  });

  it('have names that never lie on each other nor below the chart', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 20, max: 330, noNaN: true }), { minLength: 1, maxLength: 13 }), (ends) => {
        const names = [
          ...namePlaces(
            ends.map((yPx, index) => ({ specimenId: String(index), yPx })),
            334,
          ).values(),
        ].sort((a, b) => a - b);
        expect(names).toHaveLength(ends.length);
        for (const [index, yPx] of names.entries()) {
          expect(yPx).toBeLessThanOrEqual(334);
          if (index > 0) expect(yPx - (names[index - 1] ?? 0)).toBeGreaterThanOrEqual(16 - 1e-9);
        }
      }),
    );
  });
});

describe('compareRows', () => {
  it('says whose each figure is, and gives the band below', () => {
    const animals = [animal('A', 1), animal('B', 1.1), animal('C', 0.9)];
    const subjects = new Map([['A', { name: 'Ash', code: 'T-9', taxon: 'Aphonopelma seemanni', sample: false }]]);
    const rows = compareRows(animals, groupBand(animals, 'since-molt'), { alignment: 'since-molt', subjects });
    expect(new Set(rows.map((row) => row.length))).toEqual(new Set([14]));
    expect(rows[2]?.slice(0, 11)).toEqual([
      'Ash',
      'T-9',
      'Aphonopelma seemanni',
      'no',
      6,
      '2024-01-31',
      '2024-01-31',
      0,
      30,
      '5.00',
      '0.20',
    ]);
    expect(rows.at(-1)?.[0]).toBe('band of the group');
    expect(rows.at(-1)?.at(-1)).toBe(3);
  });
});
