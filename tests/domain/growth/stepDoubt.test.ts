import { describe, expect, it } from 'vitest';
import { isBeyondMolts, skinsInDoubt } from '../../../src/domain/growth/stepDoubt.ts';

const sure = { uncertainty: 0.02, molts: 1, noneMissed: false };

/** Steps between skins of these lengths, each molt named by its place. */
function stepsOf(lengthsMm: readonly number[], part: Partial<typeof sure> = {}) {
  return lengthsMm.slice(1).map((laterMm, index) => ({
    ...sure,
    ...part,
    earlierMoltId: `${index}`,
    laterMoltId: `${index + 1}`,
    logRatio: Math.log(laterMm / (lengthsMm[index] ?? laterMm)),
  }));
}

describe('isBeyondMolts', () => {
  it('finds no molt that makes a carapace smaller than its readings leave open', () => {
    expect(isBeyondMolts({ ...sure, logRatio: -0.041 })).toBe(true);
    expect(isBeyondMolts({ ...sure, logRatio: -0.039 })).toBe(false);
  });

  // Growth of tarantulas at one molt: 1.2 to 1.6 (common practice, no source); three molts of 1.6 make 4.1.
  it('takes growth that up to two unseen molts more explain for growth, unless the keeper knows of none', () => {
    expect(isBeyondMolts({ ...sure, logRatio: Math.log(1.6 ** 3) })).toBe(false);
    expect(isBeyondMolts({ ...sure, logRatio: Math.log(1.6 ** 3), noneMissed: true })).toBe(true);
    expect(isBeyondMolts({ ...sure, logRatio: Math.log(1.6), noneMissed: true })).toBe(false);
    expect(isBeyondMolts({ ...sure, logRatio: Math.log(10) })).toBe(true);
    expect(isBeyondMolts({ ...sure, logRatio: Math.log(10), molts: 4 })).toBe(false);
  });
});

describe('skinsInDoubt', () => {
  it.each([
    ['none of a sound row', [5, 6.5, 8.4], []],
    ['both of two that do not fit', [5, 2.5], ['0', '1']],
    ['the last one, ten times too large', [5, 6.5, 84], ['2']],
    ['the one in the middle', [5, 6.5, 84, 11, 14.3], ['2']],
    ['the one in the middle alone, whose neighbors fit each other', [5, 6.5, 84, 11], ['2']],
    ['the last two, which nothing confirms', [5, 6.5, 84, 40], ['2', '3']],
    [
      'one in the middle that a scale made 1.6 times too large, though unseen molts would explain the rise',
      [5, 6.25, 12.5, 9.77, 12.2],
      ['2'],
    ],
    ['one in the middle that a scale made 1.6 times too small', [5, 6.25, 7.81, 6.1, 12.2, 15.3], ['3']],
    ['one in the middle that a scale made 2.5 times too large', [5, 6.25, 19.5, 9.77, 12.2], ['2']],
    ['the last but one, where the first two tell which growth is right', [5, 6.25, 7.81, 24.4, 12.2], ['3']],
    ['two apart, each odd for itself', [5, 10, 7.81, 9.77, 19.5, 15.3, 19.1], ['1', '4']],
    ['nobody where growth stops and either may be wrong', [5, 6.25, 5.9, 7.4], []],
    ['the first one', [50, 6.5, 8.4], ['0']],
  ] satisfies [string, number[], string[]][])('doubts %s', (_, lengthsMm, doubted) => {
    expect([...skinsInDoubt(stepsOf(lengthsMm))]).toEqual(doubted);
  });
});
