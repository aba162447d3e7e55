import { expect, test } from 'vitest';
import { LEG_SEGMENTS } from '../../src/domain/measuring/landmarks.ts';
import type { AbsentQuantity } from '../../src/domain/measuring/quantity.ts';
import { absentInWords, shareInWords } from '../../src/words/quantities.ts';

test('a leg that is missing as a whole is called so, one that lost its end has a part missing', () => {
  const leg: AbsentQuantity = { name: 'leg-L2', reason: 'missing' };
  const segments = LEG_SEGMENTS.map((segment): AbsentQuantity => ({ name: `leg-L2-${segment}`, reason: 'missing' }));
  expect(absentInWords(leg, [leg, ...segments])).toBe('leg missing');
  expect(absentInWords(leg, [leg, ...segments.slice(-1)])).toBe('part missing');
  expect(absentInWords({ name: 'leg-L1', reason: 'missing' }, [leg, ...segments])).toBe('part missing');
  expect(absentInWords({ name: 'leg-L2', reason: 'not-visible' }, segments)).toBe('not visible');
});

test('a small share is not told as none', () => {
  expect(shareInWords(0.004)).toBe('under 1\u00A0%');
  expect(shareInWords(0.0099)).toBe('under 1\u00A0%');
  expect(shareInWords(0.426)).toBe('43\u00A0%');
  expect(shareInWords(0)).toBe('0\u00A0%');
});
