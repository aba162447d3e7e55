/** What makes the genital strip of a genus misleading. */
export interface GenusFlags {
  /** Females have no receptacles: their absence says nothing. */
  readonly withoutSpermathecae: boolean;
  /** Males carry paired bodies that look like receptacles: only the uterus externus tells. */
  readonly maleAccessoryOrgans: boolean;
  /** Receptacles so thin that they are easily overlooked. */
  readonly weaklySclerotized: boolean;
}

const PLAIN: GenusFlags = { withoutSpermathecae: false, maleAccessoryOrgans: false, weaklySclerotized: false };

/**
 * Genera that are not plain. Sources: Sickius - Bertani & da Silva 2002, J. Arachnology 30:519-526; Encyocratella - Gallon
 * 2003 and 2005, as reported second-hand; Tliltocatl and Brachypelma - keepers' societies and breeders' pages (names moved
 * by Mendoza & Francke 2020); Ybyrapora - an encyclopedia page, weak; Haplocosmia, unsclerotized when young - Hildebrandt 2022.
 */
const FLAGGED: ReadonlyMap<string, GenusFlags> = new Map([
  ['Sickius', { ...PLAIN, withoutSpermathecae: true }],
  ['Encyocratella', { ...PLAIN, withoutSpermathecae: true }],
  ['Tliltocatl', { ...PLAIN, maleAccessoryOrgans: true }],
  ['Brachypelma', { ...PLAIN, maleAccessoryOrgans: true }],
  ['Ybyrapora', { ...PLAIN, weaklySclerotized: true }],
  ['Haplocosmia', { ...PLAIN, weaklySclerotized: true }],
]);

/** By the first word of a scientific name, in any letter case; an unknown or empty taxon is plain. */
export function genusFlagsOf(taxon: string): GenusFlags {
  const word = taxon.trim().split(/\s+/)[0] ?? '';
  return FLAGGED.get(word.charAt(0).toUpperCase() + word.slice(1).toLowerCase()) ?? PLAIN;
}
