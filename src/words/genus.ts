import type { GenusFlags } from '../domain/sexing/genus/profile.ts';

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
