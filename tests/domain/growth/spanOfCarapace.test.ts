import { describe, expect, it } from 'vitest';
import { isSpanLikely } from '../../../src/domain/growth/spanOfCarapace.ts';

describe('a leg span beside a carapace', () => {
  // Legs I and IV of described specimens: 5.2 to 7.5 carapaces (Hamilton, Hendrixson & Bond 2016, ZooKeys 560; Yamamoto, Lucas & Brescovit 2012, Zootaxa 3172).
  it.each([5.2, 6.5, 7.5, 8.5])('of %s carapaces is likely', (ratio) => {
    expect(isSpanLikely(22 * ratio, 22)).toBe(true);
  });

  it('of 8 mm, or in inches, or of the other unit is not', () => {
    expect(isSpanLikely(8, 22)).toBe(false);
    expect(isSpanLikely(140 / 25.4, 22)).toBe(false);
    expect(isSpanLikely(140, 2.2)).toBe(false);
  });
});
