import { describe, expect, it } from 'vitest';
import { NUMBER_IDS } from '../../src/domain/sexing/evidence/numbers.ts';
import { NUMBER_GROUPS, numberInWords } from '../../src/words/modelNumbers.ts';

describe('the numbers of the evidence model in words', () => {
  it('are all there, each once, under a name of its own', () => {
    const shown = NUMBER_GROUPS.flatMap(({ numbers }) => numbers.map(([id]) => id));
    expect(shown.toSorted()).toEqual([...NUMBER_IDS].toSorted());
    expect(new Set(NUMBER_IDS.map(numberInWords)).size).toBe(NUMBER_IDS.length);
  });
});
