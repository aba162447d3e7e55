import { describe, expect, it } from 'vitest';
import { GRADE_LABELS, GRADE_MEANINGS } from '../../src/words/labels.ts';
import { NUMBER_GROUPS } from '../../src/words/modelNumbers.ts';

describe('letters from A to D', () => {
  it('are named by what they are wherever the numbers of the model speak of them: a grade of the strip, or a size class', () => {
    const said = NUMBER_GROUPS.flatMap(({ title, note, numbers }) => [title, note, ...numbers.map(([, words]) => words)]);
    expect(said.filter((words) => /class/i.test(words)).length).toBeGreaterThan(10);
    for (const words of said) expect(words).not.toMatch(/(?<!size )class/i);
  });

  it('of a grade say on whichever page asks for one what may be read of such a strip', () => {
    expect(Object.keys(GRADE_MEANINGS)).toEqual(Object.keys(GRADE_LABELS));
    expect(GRADE_MEANINGS.D).toContain('neither seen nor absent');
  });
});
