import { describe, expect, test } from 'vitest';
import { Failure, Refusal } from '../../src/domain/failure.ts';
import { wordsFor, wordsForError } from '../../src/words/failures.ts';
import { ONE_OF_EACH_FAILURE } from '../support/failures.ts';

const EXAMPLES = Object.values(ONE_OF_EACH_FAILURE);
const CODES = Failure.options.map((option) => option.shape.code.value);

describe('words for failures', () => {
  test('there is an example of every code of the domain', () => {
    expect(EXAMPLES.map((failure) => failure.code).sort()).toEqual(CODES.toSorted());
    for (const failure of EXAMPLES) expect(Failure.safeParse(failure).error).toBeUndefined();
  });

  test.each(EXAMPLES)('$code says what happened and what can be done, in sentences', (failure) => {
    const { happened, advice } = wordsFor(failure);
    for (const sentence of [happened, advice]) {
      expect(sentence).toMatch(/^[^\sa-z].*[.!?]$|^[a-z]\.\w+ .*\.$/s);
      expect(sentence).not.toContain('undefined');
      expect(sentence).not.toContain('null');
    }
  });

  test.each(EXAMPLES)('$code never shows its code', (failure) => {
    const said = Object.values(wordsFor(failure)).join(' ');
    expect(CODES.filter((code) => code.includes('-') && said.includes(code))).toEqual([]);
  });

  test('facts come through: which file, which date, which number', () => {
    expect(wordsFor(ONE_OF_EACH_FAILURE['file-truncated']).happened).toContain('a.jpg');
    expect(wordsFor(ONE_OF_EACH_FAILURE['molts-out-of-order']).happened).toContain('2 Feb 2026');
    expect(wordsFor(ONE_OF_EACH_FAILURE['file-not-an-image']).happened).toBe('a.txt is not a picture (PDF).');
    expect(wordsFor({ code: 'file-not-an-image', file: 'a.txt', kind: null }).happened).toBe('a.txt is not a picture.');
    expect(wordsFor(ONE_OF_EACH_FAILURE['picture-too-large']).happened).toContain('301');
  });

  test('an animal acquired before it hatched is not told about molts', () => {
    expect(Object.values(wordsFor(ONE_OF_EACH_FAILURE['hatched-after-acquired'])).join(' ')).not.toContain('molt');
  });

  test('a refusal speaks for itself, anything else thrown is a defect of ours', () => {
    expect(wordsForError(new Refusal({ code: 'disk-full' }))).toEqual(wordsFor({ code: 'disk-full' }));
    expect(wordsForError(new TypeError('x is undefined')).happened).not.toContain('undefined');
  });
});
