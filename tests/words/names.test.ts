import { describe, expect, test } from 'vitest';
import { counted, listed } from '../../src/words/counts.ts';
import { estimateAsText } from '../../src/words/estimates.ts';
import { instarInWords, instarMark, instarSpanInWords, missingInWords, moltName, whatSkinShows } from '../../src/words/instars.ts';
import { quantityName } from '../../src/words/quantities.ts';
import { sexInWords } from '../../src/words/sex.ts';

describe('words for what is on record', () => {
  test('name measured quantities', () => {
    expect(quantityName('carapace-length')).toBe('Carapace length');
    expect(quantityName('leg-L1')).toBe('Leg I left');
    expect(quantityName('leg-R4-metatarsus')).toBe('Leg IV right, metatarsus');
    expect(quantityName('span-L1-R4')).toBe('Laid-out span, I left to IV right');
  });

  test('say which molts are not on record', () => {
    expect(missingInWords([8])).toBe('The molt of instar 8 is not on record.');
    expect(missingInWords([7, 8])).toBe('The molts of instars 7 and 8 are not on record.');
  });

  test('say the sex with its level and never leave out a contradiction', () => {
    expect(sexInWords({ sex: 'female', level: 'strong', conflict: false })).toBe('female, strong');
    expect(sexInWords({ sex: 'unsexed', level: null, conflict: false })).toBe('unsexed');
    expect(sexInWords({ sex: 'male', level: 'leaning', conflict: true })).toBe('male, leaning (contradicted)');
  });

  test('say of a skin that its instar has ended', () => {
    expect(whatSkinShows({ number: 7, certainty: 'known' })).toContain('instar 7, which has ended');
    expect(whatSkinShows(null)).toContain('ended with this molt');
    expect(moltName(null, 3)).toBe('Molt 3 on record');
  });

  test('never say an instar that is only counted as a fact', () => {
    const counted = { number: 9, certainty: 'inferred' } as const;
    expect(instarInWords(counted)).toBe('instar 9 if no molt was missed');
    expect(moltName(counted, 3)).toBe('Shed instar 9 if no molt was missed');
    expect(whatSkinShows(counted)).toContain('instar 9 if no molt was missed, which has ended');
    expect(instarMark(counted)).toBe('9?');
    expect(instarSpanInWords({ from: 8, to: 9, certainty: 'inferred' })).toBe('instar 8 or 9 if no molt was missed');
    expect(instarInWords({ number: 9, certainty: 'known' })).toBe('instar 9');
  });

  test('give a length with its uncertainty in either unit, each rounded by its own', () => {
    const estimate = { value: 15.732, standardUncertainty: 0.155, expandedUncertainty: 0.31 };
    expect(estimateAsText(estimate, 'mm')).toBe('15.73 mm ± 0.31 mm');
    expect(estimateAsText(estimate, 'in')).toBe('0.619 in ± 0.012 in');
    expect(estimateAsText({ ...estimate, value: 1.275 }, '1')).toBe('1.28 ± 0.31');
  });

  test('count and list things', () => {
    expect([counted(1, 'molt'), counted(0, 'molt'), counted(2, 'exuvia', 'exuviae')]).toEqual(['1 molt', '0 molts', '2 exuviae']);
    expect([listed([]), listed(['a']), listed(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
  });
});
