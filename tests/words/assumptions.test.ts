import { describe, expect, it } from 'vitest';
import { ASSUMPTIONS } from '../../src/words/assumptions.ts';

describe('ASSUMPTIONS', () => {
  it('tell the figures as priors.ts states them, each with what it rests on', () => {
    expect(ASSUMPTIONS.map(({ figure }) => figure)).toEqual([
      '80 (95 % 19 to 330)',
      '1.11 (95 % 0.99 to 1.23) times as long',
      '30 %',
      '1.30 (95 % 1.10 to 1.54) times as long',
      '0.99 (95 % 0.97 to 1.01) times that',
      '5 %',
      '10 %',
    ]);
    for (const { source } of ASSUMPTIONS) expect(source).not.toBe('');
  });
});
