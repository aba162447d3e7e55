import { expect, test } from 'vitest';
import { waitingInWords } from '../../../../src/renderer/pages/bench/choose/waitingInWords.ts';

const skin = { photo: { subject: { kind: 'skin', exuviaId: 'e1' }, view: 'dorsal' } } as const;
const animal = { photo: { subject: { kind: 'animal', specimenId: 's1' }, view: 'dorsal' } } as const;

test('what is left to measure is said of skins from above first', () => {
  expect(waitingInWords([{ ...skin, measured: false }])).toBe('1 photo of a skin from above waits to be measured.');
  expect(
    waitingInWords([
      { ...skin, measured: false },
      { ...skin, measured: false },
      { ...animal, measured: false },
    ]),
  ).toBe('2 photos of skins from above wait to be measured.');
});

test('photos that show no skin from above are not passed over as measured', () => {
  const unmeasured = { ...animal, measured: false };
  expect(waitingInWords([unmeasured, unmeasured])).toBe('2 photos are not measured yet; none is marked as a skin seen from above.');
  expect(waitingInWords([{ ...skin, measured: true }, unmeasured])).toBe(
    'Every photo of a skin from above is measured, 1 other photo is not.',
  );
});

test('all is measured only where all is', () => {
  expect(
    waitingInWords([
      { ...skin, measured: true },
      { ...animal, measured: true },
    ]),
  ).toBe('Every photo is measured.');
});
