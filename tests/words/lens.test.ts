import { expect, test } from 'vitest';
import { lensInWords } from '../../src/words/lens.ts';

const shows = { value: -1.372, standardUncertainty: 0.36, expandedUncertainty: 0.72 };

test('what a lens did is told in millimeters at the outermost mark, with its uncertainty and which way', () => {
  const found = { reason: 'found', isCorrected: true } as const;
  expect(lensInWords(found, 'rectangle', shows)).toMatch(/^The straight edges .* outermost corner 1\.37 ± 0\.72 mm too near to the middle/);
  expect(lensInWords(found, 'rule-ticks', { ...shows, value: 1.372 })).toMatch(/outermost tick 1\.37 ± 0\.72 mm too far from the middle/);
});

test('a lens that is left says what it may do, and none speaks of pixels', () => {
  expect(lensInWords({ reason: 'switched-off', isCorrected: false }, 'points', { ...shows, value: 0 })).toMatch(
    /as you chose: the outermost point may be up to 0\.72 mm beside its place/,
  );
  for (const reason of ['nothing-straight', 'not-determined', 'not-significant', 'implausible', 'uneven'] as const) {
    expect(lensInWords({ reason, isCorrected: false }, 'rectangle', null)).toMatch(
      /^Not corrected: .* up to 0\.5 % at the corner of the picture\.$/,
    );
  }
});
