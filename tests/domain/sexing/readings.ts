import { readFile } from 'node:fs/promises';
import { BLANK_CHECKLIST, type Checklist, type Determination, type DeterminationDraft } from '../../../src/domain/sexing/determination.ts';
import type { Examined } from '../../../src/domain/sexing/facts.ts';
import { type GenusBook, profileFor } from '../../../src/domain/sexing/genus/find.ts';
import { type GenusProfile, ShippedProfiles } from '../../../src/domain/sexing/genus/profile.ts';
import type { SkinInOrder } from '../../../src/domain/sexing/skinsInOrder.ts';
import { SHIPPED_MODEL } from '../../support/shippedModel.ts';
import { FIRST_ASSESSMENT } from '../../support/testArchive.ts';

const { profiles } = ShippedProfiles.parse(
  JSON.parse(await readFile(new URL('../../../resources/genera/profiles.json', import.meta.url), 'utf8')),
);

/** As shipped. */
export const GENUS_BOOK: GenusBook = { shipped: profiles, edits: [] };

export function genus(taxon: string): GenusProfile {
  return profileFor(taxon, GENUS_BOOK);
}

/** The right skin, large, of grade A, well placed, read from both sides; what was seen on it is still open. */
export const WELL_READ: Checklist = {
  ...BLANK_CHECKLIST,
  skinMatchesAnimal: 'yes',
  grade: 'A',
  fourBookLungsFound: 'yes',
  view: 'both',
  condition: 'both',
  light: 'both',
  magnification: 'stereomicroscope',
  legSpanMm: 92,
};

/** Receptacles and uterus externus, plain to see. */
export const CLEAR_FEMALE: Checklist = {
  ...WELL_READ,
  receptaclesSeen: 'yes',
  uterusExternusSeen: 'yes',
  accessoryOrgansSeen: 'no',
  fusillaeOutsideSeen: 'no',
};

/** The strip readable and empty, nothing on the outer side. */
export const EMPTY_STRIP: Checklist = { ...WELL_READ, receptaclesSeen: 'no', uterusExternusSeen: 'no', accessoryOrgansSeen: 'no' };

/** Empty inside, fusillae outside. */
export const CLEAR_MALE: Checklist = { ...EMPTY_STRIP, fusillaeOutsideSeen: 'yes' };

export function draft(changes: Partial<DeterminationDraft> = {}): DeterminationDraft {
  return {
    sex: 'female',
    level: 'strong',
    reader: 'Ilse Brandmeier',
    readOn: '2026-05-02',
    checklist: CLEAR_FEMALE,
    evidencePhotoIds: [],
    pins: [],
    notes: '',
    supersedes: null,
    ...changes,
  };
}

export function determination(changes: Partial<Determination> = {}): Determination {
  return {
    ...draft(),
    id: 'determination-1',
    exuviaId: 'skin-1',
    specimenId: 'specimen-1',
    signedAt: '2026-05-02T18:00:00.000Z',
    assessment: FIRST_ASSESSMENT,
    withdrawn: null,
    ...changes,
  };
}

/** Of molts that follow each other, the oldest first; null where one left no skin. */
export function skins(...exuviaIds: (string | null)[]): SkinInOrder[] {
  return exuviaIds.map((exuviaId, index) => ({ exuviaId, shedUntil: `2026-0${index + 1}-15` }));
}

/** The third of three skins of a plain genus, read by one person, without earlier determinations. */
export function examined(checklist: Checklist, changes: Partial<Examined> = {}): Examined {
  return {
    checklist,
    reader: 'Ilse Brandmeier',
    genus: genus('Lasiodora parahybana'),
    model: SHIPPED_MODEL,
    liveSigns: [],
    exuviaId: 'skin-3',
    skinsInOrder: skins('skin-1', 'skin-2', 'skin-3'),
    readOn: '2026-05-02',
    determinations: [],
    animalPhotoIds: new Set(),
    animalPhotoCount: 0,
    ...changes,
  };
}
