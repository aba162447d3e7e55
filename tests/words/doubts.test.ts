import { describe, expect, test } from 'vitest';
import { doubtInWords } from '../../src/words/doubts.ts';

describe('doubts about points, in words', () => {
  test('name the legs that begin on the wrong side', () => {
    expect(doubtInWords({ code: 'legs-on-other-side', legs: ['L1', 'R4'] })).toMatch(
      /^Leg I left and leg IV right begin on the other side/,
    );
    expect(doubtInWords({ code: 'legs-on-other-side', legs: ['L2'] })).toMatch(/^Leg II left begins on/);
  });

  test('give both sides of a pair, of the whole leg or of one segment', () => {
    const sides = { code: 'sides-differ', pair: 4, leftMm: 76.12, rightMm: 41.2 } as const;
    expect(doubtInWords({ ...sides, segment: null })).toMatch(/^Leg IV measures 76\.1 mm left and 41\.2 mm right\./);
    expect(doubtInWords({ ...sides, segment: 'tibia' })).toMatch(/^The tibia of leg IV measures 76\.1 mm left/);
  });

  test('say of a span what it is measured against, and that a skin may be folded', () => {
    const words = doubtInWords({ code: 'span-too-short', span: 'span-R1-L4', spanMm: 4.81, legsAndCarapaceMm: 90 });
    expect(words).toBe(
      'Laid-out span, I right to IV left, 4.8 mm, is much shorter than both its legs and the carapace (90.0 mm). A tip may lie wrong, or the skin lies folded.',
    );
  });
});
