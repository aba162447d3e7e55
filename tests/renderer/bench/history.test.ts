import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Patch } from '../../../src/renderer/bench/change.ts';
import type { BenchDocument, BenchEntries } from '../../../src/renderer/bench/document.ts';
import {
  abandon,
  amend,
  begin,
  type Edited,
  freshlyOpened,
  NUDGE_JOIN_MS,
  nudge,
  record,
  redo,
  settle,
  undo,
} from '../../../src/renderer/bench/history.ts';
import { documents, patches } from './arbitraries.ts';

type State = Edited<BenchEntries>;

const verbs: fc.Arbitrary<(state: State) => State> = fc.oneof(
  fc.constant((state: State) => begin(state, 'move-point')),
  patches.map((patch) => (state: State) => amend(state, patch)),
  fc.constant((state: State) => settle(state)),
  fc.constant((state: State) => abandon(state)),
  fc.constant((state: State) => undo(state)),
  fc.constant((state: State) => redo(state)),
  patches.map((patch) => (state: State) => record(state, 'mark-point', patch)),
  fc.tuple(patches, fc.integer({ min: 0, max: 3000 })).map(
    ([patch, atMs]) =>
      (state: State) =>
        nudge(state, 'move-point', patch, 'carapace-front', atMs),
  ),
);

function undoAll(state: State): State {
  const before = undo(state);
  return before === state ? state : undoAll(before);
}

function redoAll(state: State): State {
  const after = redo(state);
  return after === state ? state : redoAll(after);
}

const place = (xPx: number): Patch<BenchEntries> => ({ 'carapace-front': { state: 'placed', at: { xPx, yPx: 0 } } });

describe('the history', () => {
  test('after any sequence of verbs, undoing everything gives the document that was opened, redoing everything the last one', () => {
    fc.assert(
      fc.property(documents, fc.array(verbs, { maxLength: 30 }), (document, list) => {
        const end = redoAll(settle(list.reduce((state, verb) => verb(state), freshlyOpened<BenchEntries>(document))));
        const start = undoAll(end);
        expect(start.document).toEqual(document);
        expect(redoAll(start).document).toEqual(end.document);
      }),
    );
  });

  test('no sequence of verbs records an empty change', () => {
    fc.assert(
      fc.property(documents, fc.array(verbs, { maxLength: 30 }), (document, list) => {
        const end = list.reduce((state, verb) => verb(state), freshlyOpened<BenchEntries>(document));
        expect([...end.past, ...end.future].every((entry) => Object.keys(entry.change).length > 0)).toBe(true);
      }),
    );
  });

  test('an abandoned gesture leaves document, past and future as they were', () => {
    fc.assert(
      fc.property(documents, fc.array(verbs, { maxLength: 10 }), fc.array(patches, { maxLength: 5 }), (document, list, moves) => {
        const before = settle(list.reduce((state, verb) => verb(state), freshlyOpened<BenchEntries>(document)));
        const during = moves.reduce((state, patch) => amend(state, patch), begin(before, 'move-point'));
        expect(abandon(during)).toEqual(before);
      }),
    );
  });

  test('many moves of one gesture are one entry', () => {
    const opened = freshlyOpened<BenchEntries>({});
    const moved = settle(amend(amend(amend(begin(opened, 'move-point'), place(1)), place(2)), place(3)));
    expect(moved.past).toHaveLength(1);
    expect(undo(moved).document).toEqual({});
  });

  test('a gesture that ends where it began is not recorded and keeps the future', () => {
    const undone = undo(record(freshlyOpened<BenchEntries>({}), 'place-point', place(1)));
    const idle = settle(amend(amend(begin(undone, 'move-point'), place(2)), { 'carapace-front': undefined }));
    expect(idle.past).toHaveLength(0);
    expect(idle.future).toHaveLength(1);
  });

  test('undo and redo are refused during a gesture', () => {
    const during = amend(begin(record(freshlyOpened<BenchEntries>({}), 'place-point', place(1)), 'move-point'), place(2));
    expect(undo(during)).toBe(during);
    expect(redo(during)).toBe(during);
  });

  test('a new change empties the future', () => {
    const undone = undo(record(freshlyOpened<BenchEntries>({}), 'place-point', place(1)));
    expect(record(undone, 'place-point', place(2)).future).toHaveLength(0);
  });

  test('nudges of one point within the pause are one entry, later ones or other points begin another', () => {
    const opened: State = freshlyOpened<BenchEntries>({});
    const nudged = nudge(
      nudge(opened, 'move-point', place(1), 'carapace-front', 0),
      'move-point',
      place(2),
      'carapace-front',
      NUDGE_JOIN_MS,
    );
    expect(nudged.past).toHaveLength(1);
    const later = nudge(nudged, 'move-point', place(3), 'carapace-front', 2 * NUDGE_JOIN_MS + 1);
    expect(later.past).toHaveLength(2);
    const other: Patch<BenchEntries> = { 'carapace-rear': { state: 'placed', at: { xPx: 1, yPx: 1 } } };
    expect(nudge(nudged, 'move-point', other, 'carapace-rear', NUDGE_JOIN_MS + 1).past).toHaveLength(2);
    expect(undo(nudged).document).toEqual({} satisfies BenchDocument);
  });

  test('a nudge after undo does not join what was undone and redone', () => {
    const nudged = nudge(freshlyOpened<BenchEntries>({}), 'move-point', place(1), 'carapace-front', 0);
    expect(nudge(redo(undo(nudged)), 'move-point', place(2), 'carapace-front', 10).past).toHaveLength(2);
  });

  test('entries carry the label of what was done', () => {
    expect(record(freshlyOpened<BenchEntries>({}), 'mark-leg', place(1)).past.map((entry) => entry.label)).toEqual(['mark-leg']);
  });
});
