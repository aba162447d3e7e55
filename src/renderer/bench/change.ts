/** Plain immutable data: a value per key, no key where there is nothing. */
export type Document<Entries extends object> = { readonly [Key in keyof Entries]?: Entries[Key] };

/** The new value of some keys; `undefined` takes the key away. */
export type Patch<Entries extends object> = { readonly [Key in keyof Entries]?: Entries[Key] | undefined };

/** What happened to one key. `undefined` means that it was not, or is no longer, there. */
export interface Step<Value> {
  readonly before: Value | undefined;
  readonly after: Value | undefined;
}

/** What happened to a document, key by key. With `apply`, `reverse` and `join` this is all that undo needs. */
export type Change<Entries extends object> = { readonly [Key in keyof Entries]?: Step<Entries[Key]> };

function keysOf<Entries extends object>(of: { readonly [Key in keyof Entries]?: unknown }): (keyof Entries)[] {
  return Object.keys(of) as (keyof Entries)[];
}

/** The change that brings `document` to where `patch` wants it; keys that already stand there are left out. */
export function changeBy<Entries extends object>(document: Document<Entries>, patch: Patch<Entries>): Change<Entries> {
  const change: { [Key in keyof Entries]?: Step<Entries[Key]> } = {};
  for (const key of keysOf<Entries>(patch)) {
    const before = document[key];
    const after = patch[key];
    if (!sameValue(before, after)) change[key] = { before, after };
  }
  return change;
}

export function apply<Entries extends object>(document: Document<Entries>, change: Change<Entries>): Document<Entries> {
  const result: { [Key in keyof Entries]?: Entries[Key] } = { ...document };
  for (const key of keysOf<Entries>(change)) {
    const after = change[key]?.after;
    if (after === undefined) delete result[key];
    else result[key] = after;
  }
  return result;
}

export function reverse<Entries extends object>(change: Change<Entries>): Change<Entries> {
  const reversed: { [Key in keyof Entries]?: Step<Entries[Key]> } = {};
  for (const key of keysOf<Entries>(change)) {
    const step = change[key];
    if (step !== undefined) reversed[key] = { before: step.after, after: step.before };
  }
  return reversed;
}

/** One change for two in a row: the first `before`, the last `after`; a key that came back to where it was drops out. */
export function join<Entries extends object>(first: Change<Entries>, second: Change<Entries>): Change<Entries> {
  const joined: { [Key in keyof Entries]?: Step<Entries[Key]> } = { ...first };
  for (const key of keysOf<Entries>(second)) {
    const later = second[key];
    if (later === undefined) continue;
    const earlier = first[key];
    const step = { before: earlier === undefined ? later.before : earlier.before, after: later.after };
    if (sameValue(step.before, step.after)) delete joined[key];
    else joined[key] = step;
  }
  return joined;
}

export function isEmpty<Entries extends object>(change: Change<Entries>): boolean {
  return Object.keys(change).length === 0;
}

/** Equality of plain data, by content. */
export function sameValue(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one !== 'object' || typeof other !== 'object' || one === null || other === null) return false;
  if (Array.isArray(one) !== Array.isArray(other)) return false;
  const oneEntries = Object.entries(one);
  const theOther = new Map(Object.entries(other));
  return (
    oneEntries.length === theOther.size && oneEntries.every(([key, value]) => theOther.has(key) && sameValue(value, theOther.get(key)))
  );
}
