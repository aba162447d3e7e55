import type { CellBasis, GenusFlags, HooksState } from '../domain/sexing/genus/profile.ts';

/** What to know about a genus before its strip is read; empty for a plain one. */
export function genusWarnings(flags: GenusFlags): string[] {
  const warnings: string[] = [];
  if (flags.withoutSpermathecae) {
    warnings.push('Females of this genus have no receptacles (Bertani & da Silva 2002 for Sickius): an empty strip says nothing.');
  }
  if (flags.maleAccessoryOrgans) {
    warnings.push('Males of this genus carry accessory organs that look like receptacles. Only the uterus externus tells them apart.');
  }
  if (flags.weaklySclerotized) {
    warnings.push('Receptacles of this genus are thin and easily overlooked: an empty strip is no more than a leaning.');
  }
  if (flags.formChangesWithAge) {
    warnings.push(
      'The form changes with age in this genus: a young female shows two lobes that fuse later (Hildebrandt 2022 for Haplocosmia).',
    );
  }
  return warnings;
}

export const FLAG_LABELS: Readonly<Record<keyof GenusFlags, string>> = {
  withoutSpermathecae: 'Females have no receptacles',
  maleAccessoryOrgans: 'Males carry accessory organs that look like receptacles',
  weaklySclerotized: 'Receptacles are thin and easily overlooked',
  formChangesWithAge: 'The form changes with age',
};

export function flagWords(flags: GenusFlags): string[] {
  return (Object.keys(FLAG_LABELS) as (keyof GenusFlags)[]).filter((flag) => flags[flag]).map((flag) => FLAG_LABELS[flag]);
}

export const HOOK_WORDS: Readonly<Record<HooksState, string>> = {
  present: 'present',
  absent: 'absent',
  varies: 'reduced, or not in all species',
  'not-checked': 'not checked',
};

/** What a cell of a profile rests on. What is only remembered is said to be. */
export function basisInWords(basis: CellBasis): string {
  switch (basis.kind) {
    case 'source':
      return `${basis.weak ? 'Weak source' : 'Source'}: ${basis.text}`;
    case 'memory':
      return basis.weak ? 'From memory, and not sure' : 'From memory, without a source';
    case 'judgement':
      return 'A judgment, without a source';
    case 'keeper':
      return basis.note === '' ? 'By the keeper' : `By the keeper: ${basis.note}`;
  }
}
