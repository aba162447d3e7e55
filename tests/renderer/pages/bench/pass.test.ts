import { describe, expect, test } from 'vitest';
import type { Reading } from '../../../../src/domain/measuring/reading.ts';
import { newPass } from '../../../../src/renderer/pages/bench/pass.ts';
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
