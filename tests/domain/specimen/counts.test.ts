import { describe, expect, it } from 'vitest';
import type { SexSign } from '../../../src/domain/sexing/determination.ts';
import { countBySex, isKept, tradeCount } from '../../../src/domain/specimen/counts.ts';
import { SpecimenStatus } from '../../../src/domain/specimen/specimen.ts';

const MALE: SexSign = { sex: 'male', level: 'strong', conflict: false };
const FEMALE: SexSign = { sex: 'female', level: 'established', conflict: false };
const UNSEXED: SexSign = { sex: 'unsexed', level: null, conflict: false };

describe('the trade form of a count', () => {
  it('names males first, then females, then unsexed (common practice, no source)', () => {
    const signs = [...Array<SexSign>(12).fill(MALE), ...Array<SexSign>(30).fill(FEMALE), ...Array<SexSign>(57).fill(UNSEXED)];
    expect(tradeCount(countBySex(signs))).toBe('12.30.57');
  });

  // Source: the examples of a keepers' glossary (8-legged, Terminology, n.d.): one unsexed, two females, four males.
  it.each([
    ['0.0.1', [UNSEXED]],
    ['0.2.0', [FEMALE, FEMALE]],
    ['4.0.0', [MALE, MALE, MALE, MALE]],
    ['0.0.0', []],
  ])('writes %s', (text, signs) => {
    expect(tradeCount(countBySex(signs))).toBe(text);
  });

  it('counts a leaning and a contradiction as unsexed', () => {
    expect(
      countBySex([
        { ...MALE, level: 'leaning' },
        { sex: 'unsexed', level: null, conflict: true },
        { ...FEMALE, conflict: true },
      ]),
    ).toEqual({
      males: 0,
      females: 0,
      unsexed: 3,
    });
  });

  it('leaves the dead and the sold out of what is kept', () => {
    expect(SpecimenStatus.options.filter(isKept)).toEqual(['living', 'on-loan']);
  });
});
