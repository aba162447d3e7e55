import { describe, expect, it } from 'vitest';
import { type Alignment, alignAnimal } from '../../../../src/domain/growth/compare/aligned.ts';
import { groupBand, latestSharedInstar, ranksAt } from '../../../../src/domain/growth/compare/group.ts';
import { buildLadder, type MoltOnRecord } from '../../../../src/domain/growth/ladder.ts';
import { moltOn } from '../skins.ts';

function animal(called: string, molts: MoltOnRecord[], alignment: Alignment = 'instar', since: number | null = null) {
  return alignAnimal({ specimenId: called, called, rungs: buildLadder(molts).rungs }, alignment, since);
}

const A = [moltOn('2024-01-01', 5, 4), moltOn('2024-03-01', 6, 5)];
const B = [moltOn('2024-02-01', 5, 4.4), moltOn('2024-04-11', 6, 5.5)];
const C = [moltOn('2024-01-20', 5, 3.8), moltOn('2024-05-01', 6, 4.8)];

describe('alignAnimal', () => {
  it('counts days from the molt of one instar', () => {
    expect(animal('B', B, 'since-molt', 5).sizes.map(({ at }) => at)).toEqual([0, 70]);
    expect(animal('B', B, 'since-molt', 6).sizes.map(({ at }) => at)).toEqual([-70, 0]);
  });

  it('says how many skins have no place on the axis', () => {
    const unnumbered = animal('D', [moltOn('2024-01-01', null, 4), moltOn('2024-03-01', null, 5)]);
    expect(unnumbered).toMatchObject({ sizes: [], left: 2 });
    expect(animal('B', B, 'since-molt', 9).left).toBe(2);
  });
});

describe('the time at one size', () => {
  it('begins with the molt before, and is not known for the first skin, across a gap and along instars', () => {
    const row = animal('E', [...A, moltOn('2024-08-01', 8, 8)], 'date');
    expect(row.sizes.map(({ from, at }) => (from === null ? null : at - from))).toEqual([null, 60, null]);
    expect(animal('A', A).sizes.map(({ from }) => from)).toEqual([null, null]);
  });
});

describe('groupBand', () => {
  it('is the prediction interval of ln L: 4, 4.4 and 3.8 mm by hand, t(0.95; 2) = 2.920 (common tables)', () => {
    const [band] = groupBand([animal('A', A), animal('B', B), animal('C', C)], 'instar');
    const logs = [4, 4.4, 3.8].map(Math.log);
    const mean = (Math.log(4) + Math.log(4.4) + Math.log(3.8)) / 3;
    const deviation = Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 2);
    expect(band?.middleMm).toBeCloseTo(Math.exp(mean), 9);
    expect(band?.highMm).toBeCloseTo(Math.exp(mean + 2.91999 * deviation * Math.sqrt(4 / 3)), 4);
  });

  it('needs three animals', () => {
    expect(groupBand([animal('A', A), animal('B', B)], 'instar')).toEqual([]);
  });

  it('takes the size an animal has on a day from the skin it sheds next', () => {
    const band = groupBand(
      [A, B, C].map((molts, index) => animal(String(index), molts, 'since-molt', 5)),
      'since-molt',
    );
    // From the molt of instar 5 on all live in instar 6, until the first of them molts again: A after 60 days.
    expect(band).toHaveLength(1);
    expect(band[0]).toMatchObject({ from: 0, to: 60, animals: 3 });
    expect(band[0]?.middleMm).toBeCloseTo(Math.cbrt(5 * 5.5 * 4.8), 9);
  });
});

describe('ranksAt', () => {
  it('ranks the largest first, against the mean of all', () => {
    const ranks = ranksAt([animal('A', A), animal('B', B), animal('C', C)], 6);
    expect(ranks.map(({ called }) => called)).toEqual(['B', 'A', 'C']);
    expect(ranks[0]?.fromMeanPercent).toBeCloseTo(100 * (5.5 / Math.cbrt(5 * 5.5 * 4.8) - 1), 9);
  });

  it('leaves places open where sizes differ by less than both uncertainties together', () => {
    // U is 0.2 mm each, 0.28 mm of a difference: 5.5 is told from 5.0, 5.0 is not told from 4.8.
    const ranks = ranksAt([animal('A', A), animal('B', B), animal('C', C)], 6);
    expect(ranks.map(({ rankFrom, rankTo }) => [rankFrom, rankTo])).toEqual([
      [1, 1],
      [2, 3],
      [2, 3],
    ]);
  });

  it('offers the latest instar in which the animal stands beside another, else its row’s end', () => {
    const older = animal('B', [...B, moltOn('2024-09-01', 7, 7)]);
    const oldest = animal('C', [...C, moltOn('2024-10-01', 7, 6)]);
    expect(latestSharedInstar([animal('A', A), older, oldest], 'A')).toBe(6);
    expect(latestSharedInstar([animal('A', A), older, oldest], 'B')).toBe(7);
    expect(latestSharedInstar([older], 'B')).toBe(7);
    expect(latestSharedInstar([], 'A')).toBeNull();
  });
});
