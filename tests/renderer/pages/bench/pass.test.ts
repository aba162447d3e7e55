import { describe, expect, test } from 'vitest';
import type { Reading } from '../../../../src/domain/measuring/reading.ts';
import { isInHand, newPass, passOf, storedReading } from '../../../../src/renderer/pages/bench/pass.ts';
import { EMPTY_READING } from '../../../support/emptyReading.ts';

const entered = (heightMm: number) => ({ kind: 'entered', heightMm, standardUncertaintyMm: 0.5 }) as const;

function readingOf(pass: number, carapaceHeight: Reading['carapaceHeight']): Reading {
  const at = '2024-05-01T10:00:00.000Z';
  return {
    ...EMPTY_READING,
    id: `pass-${pass}`,
    observer: '',
    photoId: 'photo',
    version: 1,
    createdAt: at,
    changedAt: at,
    pass,
    carapaceHeight,
  };
}

describe('the pass in hand', () => {
  const ours = readingOf(2, { kind: 'assumed' });
  const theirs = { ...ours, id: 'of another window' };

  test('is known by its id, so that another of the same number is one of the others', () => {
    expect([ours, theirs].map((reading) => isInHand(reading, passOf(ours)))).toEqual([true, false]);
  });

  test('is known by number and observer until it is stored', () => {
    const begun = { observer: ' ', pass: 2, reading: null };
    expect(isInHand(ours, begun)).toBe(true);
    expect(isInHand({ ...ours, pass: 1 }, begun)).toBe(false);
    expect(isInHand({ ...ours, observer: 'B. Keeper' }, begun)).toBe(false);
  });
});

test('what is stored of a pass says whether the ones before it were looked at', () => {
  const blind = readingOf(2, { kind: 'assumed' });
  expect(storedReading(blind).draft).not.toHaveProperty('earlierSeen');
  expect(storedReading({ ...blind, earlierSeen: true }).draft.earlierSeen).toBe(true);
});

describe('a new pass', () => {
  test('begins with the height of the carapace that was entered last, in whichever order the passes come', () => {
    const sheet = { readings: [readingOf(3, { kind: 'assumed' }), readingOf(2, entered(4.2)), readingOf(1, entered(9))] };
    expect(newPass(sheet, ' A. Keeper ')).toMatchObject({ observer: 'A. Keeper', pass: 4, reading: null, inheritedHeight: entered(4.2) });
  });

  test('begins without one where none was entered', () => {
    expect(newPass({ readings: [readingOf(1, { kind: 'assumed' })] }, '').inheritedHeight).toBeNull();
    expect(newPass({ readings: [] }, '')).toMatchObject({ pass: 1, inheritedHeight: null });
  });
});
