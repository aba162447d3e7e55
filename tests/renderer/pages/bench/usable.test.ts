import { expect, test } from 'vitest';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { isUsable } from '../../../../src/domain/measuring/usable.ts';
import { readingAsText } from '../../../../src/renderer/pages/bench/lengths/readingText.ts';

test('a value is told in figures while its expanded uncertainty is at most half of it', () => {
  expect(isUsable(estimateFrom(27, 17))).toBe(false);
  expect(isUsable(estimateFrom(20, 5))).toBe(true);
  expect(isUsable(estimateFrom(20, 5.01))).toBe(false);
  // The factor counts, not the standard uncertainty alone.
  expect(isUsable(estimateFrom(20, 4.5, 2.37))).toBe(false);
  expect(isUsable(estimateFrom(0, 0.1))).toBe(false);
});

test('a copied reading gives no figures for a length that is not usable, and keeps its remarks', () => {
  const estimate = estimateFrom(27, 17);
  const text = readingAsText(
    {
      quantities: [{ name: 'carapace-length', unit: 'mm', estimate, flags: ['tilt-unknown'], budget: [], heightCorrection: null }],
      absent: [],
    },
    { lines: [] },
  );
  expect(text.split('\n')).toContain('Carapace length\tno usable length\t\ttilt unknown');
});
