import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LevelReason } from '../../../../src/domain/sexing/reason.ts';
import { neededOf } from '../../../../src/renderer/pages/examination/weighing/needed.ts';

const REASONS = ['grade-below-a', 'skin-small', 'fusillae-not-seen', 'egg-sac-not-laid'] as const satisfies LevelReason[];

describe('what a level still needs', () => {
  it('names what every way lacks once, and then the ways apart', () => {
    expect(
      neededOf([
        ['grade-below-a', 'skin-small'],
        ['grade-below-a', 'fusillae-not-seen'],
      ]),
    ).toEqual({ always: ['grade-below-a'], either: [['skin-small'], ['fusillae-not-seen']] });
  });

  it('names no way that asks for more than another, nor one twice', () => {
    expect(neededOf([['skin-small'], ['skin-small', 'grade-below-a']])).toEqual({ always: ['skin-small'], either: [] });
    expect(neededOf([['skin-small'], ['egg-sac-not-laid'], ['skin-small']]).either).toEqual([['skin-small'], ['egg-sac-not-laid']]);
  });

  it('is met by exactly what meets one of the ways', () => {
    fc.assert(
      fc.property(
        fc.array(fc.subarray([...REASONS], { minLength: 1 }), { minLength: 1, maxLength: 5 }),
        fc.subarray([...REASONS]),
        (ways, met) => {
          const isMet = (way: readonly LevelReason[]) => way.every((reason) => met.some((one) => one === reason));
          const { always, either } = neededOf(ways);
          expect(isMet(always) && (either.length === 0 || either.some(isMet))).toBe(ways.some(isMet));
        },
      ),
    );
  });
});
