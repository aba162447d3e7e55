import { expect, test } from 'vitest';
import { inOrderOfGravity, warningInWords } from '../../src/words/calibration.ts';

test('an unknown tilt is told of what was marked, not of two points whatever it was', () => {
  expect(warningInWords({ code: 'tilt-unknown', by: 'two-points' })).toMatch(/^Two points/);
  expect(warningInWords({ code: 'tilt-unknown', by: 'coin' })).toMatch(/^A coin .* focal length/);
  expect(warningInWords({ code: 'tilt-unknown', by: 'rule-ticks' })).toMatch(/^These ticks/);
  expect(warningInWords({ code: 'tilt-unknown', by: 'rectangle' })).toMatch(/^One side of the card was not seen/);
  expect(warningInWords({ code: 'ticks-scatter', scatterPx: 0.83, scatterMm: 0.061, expectedPx: 0.21 })).toMatch(
    /0\.8 px \(0\.06 mm\).*0\.2 px.*bent or worn, its graduation another/,
  );
  expect(warningInWords({ code: 'side-hidden', side: 3 })).toMatch(/^The edge from corner 4 to 1 was not seen/);
});

test('corners beside the picture are named as a keeper numbers them, with what to do', () => {
  expect(warningInWords({ code: 'corners-beside-picture', corners: [0] })).toMatch(/^Corner 1 lies beside the picture.*“Fit to the edges”/);
  expect(warningInWords({ code: 'corners-beside-picture', corners: [0, 3] })).toMatch(/^Corners 1 and 4 lie beside/);
});

test('a card seen edge-on is told so, not as one that is merely aslant', () => {
  expect(warningInWords({ code: 'strong-tilt', tiltDeg: 76 })).toMatch(/almost edge-on: .*76° away.*Take a photo from straight above/);
  expect(warningInWords({ code: 'strong-tilt', tiltDeg: 35 })).not.toContain('edge-on');
});

test('a misfit that no inexact corner makes is told without figures, a small one with them', () => {
  const hopeless = warningInWords({ code: 'shape-disagrees', of: 'rectangle', aspectErrorPercent: 2394.3, angleErrorDeg: 0.2 });
  expect(hopeless).toMatch(/almost edge-on.*Mark the corners anew/);
  expect(hopeless).not.toContain('2394');
  expect(warningInWords({ code: 'shape-disagrees', of: 'rectangle', aspectErrorPercent: -1.9, angleErrorDeg: 2 })).toContain(
    'sides 1.9 %, angle 2.0° off',
  );
});

test('corners that fit no such sheet are told before a size that is known coarsely', () => {
  const coarse = { code: 'scale-object-coarse', relativeStandardUncertainty: 0.0055 } as const;
  const unfit = { code: 'shape-disagrees', of: 'rectangle', aspectErrorPercent: 12, angleErrorDeg: 3 } as const;
  const aslant = { code: 'strong-tilt', tiltDeg: 35 } as const;
  expect(inOrderOfGravity([coarse, aslant, unfit])).toEqual([unfit, aslant, coarse]);
  expect(inOrderOfGravity([{ code: 'focal-length-unknown' }, { code: 'picture-mirrored' }])[0]?.code).toBe('picture-mirrored');
});
