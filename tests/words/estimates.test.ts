import { describe, expect, it } from 'vitest';
import { estimateFrom } from '../../src/domain/measuring/quantity.ts';
import { coverageInWords, estimateAsText, plusMinusMeans } from '../../src/words/estimates.ts';

describe('an estimate in words', () => {
  it('tells k where it is not 2', () => {
    const few = estimateFrom(15.731, 0.1, 2.366);
    expect(estimateAsText(few, 'mm')).toBe('15.73 mm ± 0.24 mm (k = 2.37)');
    expect(coverageInWords(few)).toBe('2.37');
    expect(plusMinusMeans([{ estimate: few }])).toContain('or the k beside it');
  });

  it('leaves the usual k = 2 to the line below the table, also when many repeats stand behind it', () => {
    for (const usual of [estimateFrom(15.731, 0.1), estimateFrom(15.731, 0.1, 2.001)]) {
      expect(estimateAsText(usual, 'mm')).toBe('15.73 mm ± 0.20 mm');
      expect(coverageInWords(usual)).toBe('2');
      expect(plusMinusMeans([{ estimate: usual }])).toContain('k = 2 (about 95 %)');
    }
  });
});
