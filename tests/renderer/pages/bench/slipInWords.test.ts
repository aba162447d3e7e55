import { expect, test } from 'vitest';
import { calibrate } from '../../../../src/domain/measuring/calibrate.ts';
import { unwrap } from '../../../../src/domain/result.ts';
import { slipInWords } from '../../../../src/renderer/pages/bench/passes/slipInWords.ts';
import { cardMarks } from '../../../contract/drafts.ts';
import { newPhoto } from '../../../support/testArchive.ts';

const slip = {
  name: 'leg-L1-femur-patella',
  takenFor: 'leg-L1-patella-tibia',
  pass: { pass: 2 },
  other: { pass: 1 },
  places: [
    { xPx: 60, yPx: 60 },
    { xPx: 100, yPx: 60 },
  ],
} as const;

test('a point named wrongly is told with both passes, and how far its two places lie apart on the plane of the scale', () => {
  // The card's 85.60 mm (ISO/IEC 7810 ID-1) span 160 px: 40 px are 21.4 mm.
  const words = slipInWords(slip, unwrap(calibrate(cardMarks, newPhoto({ widthPx: 320, heightPx: 240 }))));
  expect(words).toMatch(/^“.*femur.*” of pass 2 lies 21\.4 mm from that of pass 1, where pass 1 has “.*tibia.*”: another point\?$/);
});

test('without a scale it is told in pixels', () => {
  expect(slipInWords(slip, null)).toContain('of pass 2 lies 40 px from that of pass 1');
});

test('a stray click is asked about as one', () => {
  expect(slipInWords({ ...slip, takenFor: null }, null)).toMatch(/lies 40 px from that of pass 1: a stray click in one of them\?$/);
});
