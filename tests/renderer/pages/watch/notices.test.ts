import { expect, test } from 'vitest';
import { keepNoticesTold, noticesTold } from '../../../../src/renderer/pages/watch/noticesTold.ts';

function storage(kept: Record<string, string> = {}): Storage {
  const all = new Map(Object.entries(kept));
  return {
    get length() {
      return all.size;
    },
    clear: () => all.clear(),
    getItem: (key) => all.get(key) ?? null,
    key: (index) => [...all.keys()][index] ?? null,
    removeItem: (key) => void all.delete(key),
    setItem: (key, value) => void all.set(key, value),
  };
}

test('what was told is known to a page that is opened anew, and forgotten once it is not due any more', () => {
  const kept = storage();
  expect([...noticesTold(kept)]).toEqual([]);
  keepNoticesTold(kept, ['o1 look-closer', 'o2 concern']);
  expect([...noticesTold(kept)]).toEqual(['o1 look-closer', 'o2 concern']);
  keepNoticesTold(kept, ['o2 concern']);
  expect(noticesTold(kept).has('o1 look-closer')).toBe(false);
});
