import type { RectangleScale } from '../../src/domain/measuring/calibration.ts';
import type { ReadingDraft } from '../../src/domain/measuring/reading.ts';
import type { ExuviaDraft } from '../../src/domain/molting/exuvia.ts';
import type { MoltDraft } from '../../src/domain/molting/molt.ts';
import type { PhotoDraft } from '../../src/domain/photo/photo.ts';
import { BLANK_CHECKLIST, type Checklist, type DeterminationDraft } from '../../src/domain/sexing/determination.ts';
import type { SpecimenDraft } from '../../src/domain/specimen/specimen.ts';
import { EMPTY_READING } from '../support/emptyReading.ts';

export const specimenDraft: SpecimenDraft = {
  code: 'T-01',
  taxon: 'Aphonopelma seemanni',
  name: 'Ember',
  origin: null,
  eggSacGroup: null,
  acquiredOn: '2024-01-10',
  acquiredInstar: 3,
  hatchedOn: '2023-06-01',
  habit: 'fossorial',
  status: 'living',
  notes: '',
};

export const moltDraft: MoltDraft = {
  happenedFrom: '2025-03-01',
  happenedTo: '2025-03-02',
  instarShed: 5,
  position: 'on-back',
  outcomes: ['clean'],
  notes: '',
};

export const exuviaDraft: ExuviaDraft = { recovered: true, grade: 'B', completeness: 'complete', storagePlace: 'Box 1', notes: '' };

export function skinPhotoDraft(exuviaId: string): PhotoDraft {
  return { subject: { kind: 'skin', exuviaId }, view: 'dorsal', takenOn: '2025-03-03', notes: '' };
}

/** An ID-1 card seen straight from above, 160 pixels long: 0.535 mm per pixel. */
export const cardMarks: RectangleScale = {
  kind: 'rectangle',
  object: 'id-1',
  corners: [
    { xPx: 20, yPx: 20 },
    { xPx: 180, yPx: 20 },
    { xPx: 180, yPx: 120.9 },
    { xPx: 20, yPx: 120.9 },
  ],
  widthMm: 85.6,
  heightMm: 53.98,
  widthStandardUncertaintyMm: 0.05,
  heightStandardUncertaintyMm: 0.03,
  thicknessMm: 0.76,
  pointingPx: 0.5,
};

/** A carapace 20 pixels long and 18 wide, beside the card. */
export const readingDraft: ReadingDraft = {
  ...EMPTY_READING,
  observer: 'R. Reader',
  pass: 1,
  landmarks: {
    'carapace-front': { state: 'placed', at: { xPx: 220, yPx: 60 } },
    'carapace-rear': { state: 'placed', at: { xPx: 220, yPx: 80 } },
    'carapace-left': { state: 'placed', at: { xPx: 211, yPx: 71 } },
    'carapace-right': { state: 'placed', at: { xPx: 229, yPx: 71 } },
  },
};

/** The skin is this animal's and graded; nothing has been read on it. */
const gradedChecklist: Checklist = { ...BLANK_CHECKLIST, skinMatchesAnimal: 'yes', grade: 'B' };

export const unsexedDraft: DeterminationDraft = {
  sex: 'unsexed',
  level: null,
  reader: 'R. Reader',
  readOn: '2025-03-04',
  checklist: gradedChecklist,
  evidencePhotoIds: [],
  pins: [],
  notes: '',
  supersedes: null,
};
