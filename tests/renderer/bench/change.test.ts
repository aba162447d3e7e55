import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { apply, type Change, changeBy, isEmpty, join, reverse, sameValue } from '../../../src/renderer/bench/change.ts';
import type { BenchDocument, BenchEntries } from '../../../src/renderer/bench/document.ts';
import { documents, patches } from './arbitraries.ts';

/** Changes in a row, each made on the document that the earlier ones left. */
const runs = fc.tuple(documents, fc.array(patches, { maxLength: 8 })).map(([start, list]) => {
  let document: BenchDocument = start;
  const changes: Change<BenchEntries>[] = [];
  for (const patch of list) {
    const change = changeBy<BenchEntries>(document, patch);
    changes.push(change);
    document = apply<BenchEntries>(document, change);
  }
  return { start, changes, end: document };
});

describe('the algebra of changes', () => {
  test('applying a change and then its reverse gives the document back', () => {
    fc.assert(
      fc.property(documents, patches, (document, patch) => {
        const change = changeBy<BenchEntries>(document, patch);
        expect(apply(apply(document, change), reverse(change))).toEqual(document);
      }),
    );
  });

  test('joining a list of changes equals applying them in turn', () => {
    fc.assert(
      fc.property(runs, ({ start, changes, end }) => {
        const joined = changes.reduce<Change<BenchEntries>>((all, change) => join(all, change), {});
        expect(apply(start, joined)).toEqual(end);
        expect(isEmpty(joined)).toBe(sameValue(start, end));
      }),
    );
  });

  test('joining is associative', () => {
    fc.assert(
      fc.property(runs, ({ changes }) => {
        const [first = {}, second = {}, third = {}] = changes;
        expect(join(join(first, second), third)).toEqual(join(first, join(second, third)));
      }),
    );
  });

  test('reversing a joined change equals joining the reverses backwards', () => {
    fc.assert(
      fc.property(runs, ({ changes }) => {
        const forwards = changes.reduce<Change<BenchEntries>>((all, change) => join(all, change), {});
        const backwards = changes.toReversed().reduce<Change<BenchEntries>>((all, change) => join(all, reverse(change)), {});
        expect(reverse(forwards)).toEqual(backwards);
      }),
    );
  });

  test('a patch that says what is already there is no change', () => {
    fc.assert(
      fc.property(documents, (document) => {
        expect(changeBy<BenchEntries>(document, structuredClone(document))).toEqual({});
      }),
    );
  });

  test('taking a key away leaves no key behind', () => {
    const document: BenchDocument = { height: { kind: 'assumed' } };
    expect(Object.keys(apply(document, changeBy<BenchEntries>(document, { height: undefined })))).toEqual([]);
  });
});
