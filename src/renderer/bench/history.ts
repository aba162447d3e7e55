import { apply, type Change, changeBy, type Document, isEmpty, join, type Patch, reverse } from './change.ts';

/** What a change was, so that the undo button can say it. */
export type ChangeLabel =
  | 'place-point'
  | 'move-point'
  | 'mark-point'
  | 'mark-leg'
  | 'remove-point'
  | 'place-scale'
  | 'find-scale'
  | 'move-scale'
  | 'change-scale'
  | 'remove-scale'
  | 'place-check'
  | 'swap-scales'
  | 'remove-check'
  | 'set-height'
  | 'set-point-height'
  | 'set-pointing'
  | 'name-distance'
  | 'put-back';

export interface HistoryEntry<Entries extends object> {
  readonly label: ChangeLabel;
  readonly change: Change<Entries>;
  /** Set for key nudges: what was nudged and when (ms), so that a quick run of them becomes one entry. */
  readonly nudge: { readonly of: string; readonly atMs: number } | null;
}

/**
 * A document with its past and future. `pending` is the gesture in hand: visible in the document, not yet recorded; it
 * began at the document `from`.
 */
export interface Edited<Entries extends object> {
  readonly document: Document<Entries>;
  readonly past: readonly HistoryEntry<Entries>[];
  readonly future: readonly HistoryEntry<Entries>[];
  readonly pending: { readonly label: ChangeLabel; readonly change: Change<Entries>; readonly from: Document<Entries> } | null;
}

/** Nudges of one point closer together than this are one entry. */
export const NUDGE_JOIN_MS = 600;

export function freshlyOpened<Entries extends object>(document: Document<Entries>): Edited<Entries> {
  return { document, past: [], future: [], pending: null };
}

/** The document as it stood when nothing was in hand; the same object all through a gesture. */
export function settledDocument<Entries extends object>({ document, pending }: Edited<Entries>): Document<Entries> {
  return pending === null ? document : pending.from;
}

/** Pointer down. A gesture still in hand is settled first: a lost pointer-up must not swallow it. */
export function begin<Entries extends object>(edited: Edited<Entries>, label: ChangeLabel): Edited<Entries> {
  const settled = settle(edited);
  return { ...settled, pending: { label, change: {}, from: settled.document } };
}

/** Each move. Without a gesture in hand nothing happens. */
export function amend<Entries extends object>(edited: Edited<Entries>, patch: Patch<Entries>): Edited<Entries> {
  if (edited.pending === null) return edited;
  const change = changeBy(edited.document, patch);
  if (isEmpty(change)) return edited;
  return {
    ...edited,
    document: apply(edited.document, change),
    pending: { ...edited.pending, change: join(edited.pending.change, change) },
  };
}

/** Pointer up: the gesture becomes one entry and the future is emptied; a gesture that changed nothing leaves no trace. */
export function settle<Entries extends object>(edited: Edited<Entries>): Edited<Entries> {
  if (edited.pending === null) return edited;
  const { label, change } = edited.pending;
  if (isEmpty(change)) return { ...edited, pending: null };
  return { ...edited, past: [...edited.past, { label, change, nudge: null }], future: [], pending: null };
}

/** Escape: the gesture is taken back and nothing is recorded. */
export function abandon<Entries extends object>(edited: Edited<Entries>): Edited<Entries> {
  if (edited.pending === null) return edited;
  return { ...edited, document: edited.pending.from, pending: null };
}

/** A change made at one stroke, such as a button. */
export function record<Entries extends object>(edited: Edited<Entries>, label: ChangeLabel, patch: Patch<Entries>): Edited<Entries> {
  return settle(amend(begin(edited, label), patch));
}

/** An arrow key on the thing called `of`, at `atMs` of any steady clock. */
export function nudge<Entries extends object>(
  edited: Edited<Entries>,
  label: ChangeLabel,
  patch: Patch<Entries>,
  of: string,
  atMs: number,
): Edited<Entries> {
  if (edited.pending !== null) return edited;
  const change = changeBy(edited.document, patch);
  if (isEmpty(change)) return edited;
  const document = apply(edited.document, change);
  const last = edited.past.at(-1);
  const joins = last !== undefined && last.nudge !== null && last.nudge.of === of && atMs - last.nudge.atMs <= NUDGE_JOIN_MS;
  if (!joins) return { ...edited, document, past: [...edited.past, { label, change, nudge: { of, atMs } }], future: [] };
  const joined = join(last.change, change);
  const earlier = edited.past.slice(0, -1);
  return {
    ...edited,
    document,
    past: isEmpty(joined) ? earlier : [...earlier, { label: last.label, change: joined, nudge: { of, atMs } }],
    future: [],
  };
}

/** Refused (answers the same state) during a gesture and when there is nothing to undo. */
export function undo<Entries extends object>(edited: Edited<Entries>): Edited<Entries> {
  const last = edited.past.at(-1);
  if (edited.pending !== null || last === undefined) return edited;
  return {
    document: apply(edited.document, reverse(last.change)),
    past: edited.past.slice(0, -1),
    future: [{ ...last, nudge: null }, ...edited.future],
    pending: null,
  };
}

/** Refused during a gesture and when there is nothing to redo. */
export function redo<Entries extends object>(edited: Edited<Entries>): Edited<Entries> {
  const [next, ...future] = edited.future;
  if (edited.pending !== null || next === undefined) return edited;
  return { document: apply(edited.document, next.change), past: [...edited.past, next], future, pending: null };
}
