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

const KINSHIPS = ['siblings', 'species', 'genus'] as const;

/** The nearest group that two animals share; null for strangers. */
export function kinshipOf(one: KinLabel, other: KinLabel): (typeof KINSHIPS)[number] | null {
  const sac = eggSacOf(one);
  if (sac !== null && sac === eggSacOf(other)) return 'siblings';
  const [a, b] = [namesOf(one.taxon), namesOf(other.taxon)];
  if (a.species !== null && a.species === b.species) return 'species';
  return a.genus !== null && a.genus === b.genus ? 'genus' : null;
}

/** More measured kin than this narrow a size no further that could be seen, and each takes time to measure. */
const MOST_MEASURED_KIN = 12;

/** One animal as far as it says whom it may tell of its growth. */
export interface KinCandidate extends KinLabel {
  readonly specimenId: string;
  readonly molts: number;
  readonly isMeasured: boolean;
}

/**
 * An animal and those whose skins say most of its growth: siblings before its species before its genus, and of equally near ones those
 * with the longest rows. Strangers and kin without a measured skin are left out.
 */
export function nearestKin<Candidate extends KinCandidate>(
  one: Pick<KinCandidate, 'specimenId' | 'taxon' | 'eggSacGroup'>,
  among: readonly Candidate[],
): Candidate[] {
  return among
    .flatMap((candidate) => {
      const away = distance(one, candidate);
      return away !== null && (away === 0 || candidate.isMeasured) ? [{ candidate, away }] : [];
    })
    .sort((a, b) => a.away - b.away || b.candidate.molts - a.candidate.molts)
    .slice(0, 1 + MOST_MEASURED_KIN)
    .map(({ candidate }) => candidate);
}

/** 0 for the animal itself, then siblings, its species, its genus; null for strangers. */
function distance(one: Pick<KinCandidate, 'specimenId' | 'taxon' | 'eggSacGroup'>, other: KinCandidate): number | null {
  if (other.specimenId === one.specimenId) return 0;
  const kinship = kinshipOf(one, other);
  return kinship === null ? null : 1 + KINSHIPS.indexOf(kinship);
}

/** Whether two animals stand beside each other as siblings. */
export function areSiblings(one: KinLabel & { readonly sample: boolean }, other: KinLabel & { readonly sample: boolean }): boolean {
  return mayLearnFrom(one, other) && kinshipOf(one, other) === 'siblings';
}

/** Invented animals and a keeper's own learn nothing from each other. */
export function mayLearnFrom(one: { readonly sample: boolean }, other: { readonly sample: boolean }): boolean {
  return one.sample === other.sample;
}
