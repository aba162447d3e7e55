import { describe, expect, test } from 'vitest';
import { checkHatching, checkSpecimenDates } from '../../../src/domain/specimen/dates.ts';

const TODAY = '2026-11-25';
const codeOf = (hatchedOn: string | null, acquiredOn: string | null) => {
  const result = checkSpecimenDates({ hatchedOn, acquiredOn }, TODAY);
  return result.ok ? 'fits' : result.failure.code;
};

test.each([
  [null, null, 'fits'],
  ['2023-05-01', '2023-05-01', 'fits'],
  ['2023-05-02', '2023-05-01', 'hatched-after-acquired'],
  [null, '2026-11-26', 'date-in-future'],
  ['1850-05-01', '2023-05-01', 'date-too-early'],
  [null, '0202-05-01', 'date-too-early'],
  ['1950-01-01', null, 'fits'],
] as const)('an animal hatched on %s and acquired on %s: %s', (hatchedOn, acquiredOn, code) => {
  expect(codeOf(hatchedOn, acquiredOn)).toBe(code);
});

describe('a molt of an animal that hatched', () => {
  const molts = [{ happenedTo: '2023-06-01' }, { happenedTo: '2023-04-30' }];

  test('is not over before that day', () => {
    expect(checkHatching('2023-05-01', molts)).toEqual({
      ok: false,
      failure: { code: 'date-before-hatching', field: 'happenedTo', date: '2023-04-30', hatchedOn: '2023-05-01' },
    });
  });

  test('may have been on that day, or on any where it is not known', () => {
    expect(checkHatching('2023-04-30', molts).ok).toBe(true);
    expect(checkHatching(null, molts).ok).toBe(true);
  });
});
