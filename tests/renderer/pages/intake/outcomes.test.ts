import { expect, test } from 'vitest';
import type { TaskSnapshot } from '../../../../src/domain/intake/task.ts';
import { countOutcomes, outcomesInWords, withKeys } from '../../../../src/renderer/pages/intake/outcomes.ts';

const FILES: TaskSnapshot['files'] = [
  { name: 'a.jpg', outcome: { kind: 'added', photoId: '1' } },
  { name: 'a.jpg', outcome: { kind: 'already-here', photoId: '1' } },
  { name: 'b.txt', outcome: { kind: 'refused', failure: { code: 'file-not-an-image', file: 'b.txt', kind: null } } },
  { name: 'c.jpg', outcome: { kind: 'waiting' } },
];

test('the outcomes of an import are counted and said in one line', () => {
  expect(outcomesInWords(countOutcomes(FILES))).toBe('1 photo added, 1 already here, 1 refused and 1 not reached');
  expect(outcomesInWords(countOutcomes([]))).toBe('Nothing came in');
});

test('two files of one name have keys of their own', () => {
  const keys = withKeys(FILES).map((one) => one.key);
  expect(new Set(keys).size).toBe(FILES.length);
});
