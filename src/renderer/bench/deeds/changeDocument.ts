import type { Patch } from '../change.ts';
import type { BenchEntries } from '../document.ts';
import { type ChangeLabel, record } from '../history.ts';
import type { BenchStore } from '../store.ts';

/** One change at one stroke, and one entry of the history. */
export function changeDocument(store: BenchStore, label: ChangeLabel, patch: Patch<BenchEntries>): void {
  store.setState((state) => ({ edited: record(state.edited, label, patch) }));
}
