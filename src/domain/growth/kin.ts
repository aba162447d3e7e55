/** Whom an animal belongs to, from its label alone. */
export interface KinLabel {
  readonly taxon: string;
  readonly eggSacGroup: string | null;
}

/** `Brachypelma sp.` names no species; what follows `sp.`, `cf.` or `aff.` is taken as a name of its own. Case does not count. */
export function namesOf(taxon: string): { readonly genus: string | null; readonly species: string | null } {
  const [genus, ...rest] = taxon.trim().toLowerCase().split(/\s+/);
  if (!genus) return { genus: null, species: null };
  const species = rest.join(' ');
  return { genus, species: species === '' || species === 'sp' || species === 'sp.' ? null : `${genus} ${species}` };
}

/** What siblings have in common: the label of their egg sac and the name of their taxon, in whatever case; null for an animal without a label. */
export function eggSacOf({ taxon, eggSacGroup }: KinLabel): string | null {
  const sac = eggSacGroup?.trim().toLowerCase();
  return sac ? JSON.stringify([taxon.trim().toLowerCase().replace(/\s+/g, ' '), sac]) : null;
}

export const KINSHIPS = ['siblings', 'species', 'genus'] as const;

/** The nearest group that two animals share; null for strangers. */
export function kinshipOf(one: KinLabel, other: KinLabel): (typeof KINSHIPS)[number] | null {
  const sac = eggSacOf(one);
  if (sac !== null && sac === eggSacOf(other)) return 'siblings';
  const [a, b] = [namesOf(one.taxon), namesOf(other.taxon)];
  if (a.species !== null && a.species === b.species) return 'species';
  return a.genus !== null && a.genus === b.genus ? 'genus' : null;
}

/** Whether two animals stand beside each other as siblings. */
export function areSiblings(one: KinLabel & { readonly sample: boolean }, other: KinLabel & { readonly sample: boolean }): boolean {
  return mayLearnFrom(one, other) && kinshipOf(one, other) === 'siblings';
}

/** Invented animals and a keeper's own learn nothing from each other. */
export function mayLearnFrom(one: { readonly sample: boolean }, other: { readonly sample: boolean }): boolean {
  return one.sample === other.sample;
}
