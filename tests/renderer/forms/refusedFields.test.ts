import { describe, expect, test } from 'vitest';
import { Refusal } from '../../../src/domain/failure.ts';
import { refusedFields } from '../../../src/renderer/forms/refusedFields.ts';

describe('what the archive refused', () => {
  test('stands at the field it speaks of', () => {
    const taken = new Refusal({ code: 'code-taken', specimenCode: 'T-1' });
    expect(refusedFields(taken, ['code', 'hatchedOn'])).toEqual({
      code: 'Another specimen already has the code T-1. Each code is used once: give one of the two animals another.',
    });
    const future = new Refusal({ code: 'date-in-future', field: 'acquiredOn', date: '2030-01-01' });
    expect(Object.keys(refusedFields(future, ['acquiredOn', 'hatchedOn']))).toEqual(['acquiredOn']);
  });

  test('stands at another field in another form', () => {
    const days = { acquiredOn: '2026-02-01', moltDate: '2026-03-01' };
    const refusal = new Refusal({ code: 'acquired-instar-contradicted', acquiredInstar: 8, instarShed: 5, ...days });
    expect(Object.keys(refusedFields(refusal, ['code', 'acquiredInstar']))).toEqual(['acquiredInstar']);
    expect(Object.keys(refusedFields(refusal, ['happenedFrom', 'instarShed']))).toEqual(['instarShed']);
  });

  test('stands below the form where that field is not in it, or there is none', () => {
    expect(refusedFields(new Refusal({ code: 'code-taken', specimenCode: 'T-1' }), ['happenedFrom'])).toEqual({});
    expect(refusedFields(new Refusal({ code: 'disk-full' }), ['code'])).toEqual({});
    expect(refusedFields(new TypeError('x'), ['code'])).toEqual({});
    expect(refusedFields(null, ['code'])).toEqual({});
  });
});
