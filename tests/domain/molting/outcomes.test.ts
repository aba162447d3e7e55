import { describe, expect, test } from 'vitest';
import { MoltOutcome } from '../../../src/domain/molting/molt.ts';
import { checkOutcomes, checkRecovery, withOutcome } from '../../../src/domain/molting/outcomes.ts';

// What excludes what is common practice, no source.

describe('how a molt went', () => {
  test.each(['slow', 'stuck', 'wet', 'limb-lost', 'deformed', 'died', 'presumed'] as const)('cannot be clean and %s', (other) => {
    expect(checkOutcomes({ outcomes: ['clean', other] })).toMatchObject({ failure: { code: 'outcomes-contradict', one: 'clean', other } });
  });

  test('can be clean with a limb grown back and the skin lost', () => {
    expect(checkOutcomes({ outcomes: ['clean', 'limb-regenerated', 'skin-not-recovered'] }).ok).toBe(true);
  });

  test('can be bad in every way at once', () => {
    expect(checkOutcomes({ outcomes: MoltOutcome.options.filter((one) => one !== 'clean') }).ok).toBe(true);
  });

  test('ticking one outcome takes away what it contradicts, and nothing else', () => {
    expect(withOutcome(['stuck', 'died', 'skin-not-recovered'], 'clean', true)).toEqual(['clean', 'skin-not-recovered']);
    expect(withOutcome(['clean', 'limb-regenerated'], 'slow', true)).toEqual(['slow', 'limb-regenerated']);
    expect(withOutcome(['clean'], 'skin-not-recovered', true)).toEqual(['clean', 'skin-not-recovered']);
    expect(withOutcome(['clean', 'limb-regenerated'], 'clean', false)).toEqual(['limb-regenerated']);
  });

  test('a skin that lies here was recovered', () => {
    expect(checkRecovery('molt-1', ['skin-not-recovered'], true)).toMatchObject({ failure: { code: 'skin-recovered-or-not' } });
    expect(checkRecovery('molt-1', ['skin-not-recovered'], false).ok).toBe(true);
    expect(checkRecovery('molt-1', ['clean'], true).ok).toBe(true);
  });
});
