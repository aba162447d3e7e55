import {
  type CellBasis,
  type GenusProfile,
  type GenusProfileDraft,
  PLAIN_FLAGS,
  type ProfileEdit,
  type ShippedProfile,
} from './profile.ts';

const NOTHING_SAID: CellBasis = { kind: 'judgement' };

const UNKNOWN: GenusProfileDraft = {
  receptacles: { forms: [], words: '', basis: NOTHING_SAID },
  hooks: { state: 'not-checked', words: '', basis: NOTHING_SAID },
  pitfalls: [],
  flags: PLAIN_FLAGS,
  flagsBasis: NOTHING_SAID,
  adultCarapaceMm: null,
  earlyColorBasis: null,
};

/** The first word of a scientific name, `Grammostola`; empty for an empty name. */
export function genusOf(taxon: string): string {
  const word = taxon.trim().split(/\s+/)[0] ?? '';
  return word.charAt(0).toUpperCase() + word.slice(1).toLowerCase();
}

/** Shipped profiles with the keeper's edits over them. */
export interface GenusBook {
  readonly shipped: readonly ShippedProfile[];
  /** Oldest first. */
  readonly edits: readonly ProfileEdit[];
}

/** The profile for an animal's name, under the genus it belongs to now; an unknown genus is plain. */
export function profileFor(taxon: string, { shipped, edits }: GenusBook): GenusProfile {
  const word = genusOf(taxon);
  const ours = shipped.find(({ genus }) => genus === word) ?? shipped.find(({ alsoNamed }) => alsoNamed.includes(word));
  const genus = ours?.genus ?? word;
  const edit = edits.findLast((candidate) => candidate.genus === genus);
  const edited = edit?.profile ?? null;
  return { ...draftOf(edited ?? ours ?? UNKNOWN), genus, known: edited !== null || ours !== undefined, version: edit?.version ?? 0 };
}

/** Every genus that has a profile, by name. */
export function profilesIn(book: GenusBook): GenusProfile[] {
  const genera = new Set([...book.shipped.map(({ genus }) => genus), ...book.edits.map(({ genus }) => genus)]);
  return [...genera].toSorted().map((genus) => profileFor(genus, book));
}

function draftOf(profile: GenusProfileDraft): GenusProfileDraft {
  const { receptacles, hooks, pitfalls, flags, flagsBasis, adultCarapaceMm, earlyColorBasis } = profile;
  return { receptacles, hooks, pitfalls, flags, flagsBasis, adultCarapaceMm, earlyColorBasis };
}
