import type { SpecimenSummary } from '../../src/api/contract/specimens.ts';
import type { SkinSizes } from '../../src/domain/growth/skinSizes.ts';
import type { Exuvia } from '../../src/domain/molting/exuvia.ts';
import type { Molt } from '../../src/domain/molting/molt.ts';
import type { Photo } from '../../src/domain/photo/photo.ts';
import type { Specimen } from '../../src/domain/specimen/specimen.ts';

const CREATED_AT = '2026-01-01T12:00:00.000Z';

/** Records with everything filled in; a test says only what it is about. */
export function aSpecimen(part: Partial<Specimen> = {}): Specimen {
  return {
    id: 'specimen-1',
    code: 'T-1',
    taxon: 'Grammostola pulchra',
    name: null,
    origin: null,
    eggSacGroup: null,
    acquiredOn: null,
    acquiredInstar: null,
    hatchedOn: null,
    habit: null,
    status: 'living',
    notes: '',
    version: 1,
    sample: false,
    createdAt: CREATED_AT,
    ...part,
  };
}

export function aSummary(specimen: Partial<Specimen> = {}, part: Partial<Omit<SpecimenSummary, 'specimen'>> = {}): SpecimenSummary {
  return {
    specimen: aSpecimen(specimen),
    sex: { sex: 'unsexed', level: null, conflict: false },
    instarNow: null,
    recordedMolts: 0,
    lastMolt: null,
    lastMeasuredSkin: null,
    coverPhotoId: null,
    nextMolt: null,
    matureMaleBy: null,
    maleContradicted: false,
    moltWatched: null,
    ...part,
  };
}

/** The sizes of a skin that nobody measured. */
export const NO_SIZES: SkinSizes = {
  carapaceLengthMm: null,
  carapaceWidthMm: null,
  legFirstMm: null,
  legFourthMm: null,
  legSpanMm: null,
  doubted: [],
};

export function aMolt(part: Partial<Molt> = {}): Molt {
  return {
    id: 'molt-1',
    specimenId: 'specimen-1',
    happenedFrom: '2026-01-10',
    happenedTo: '2026-01-10',
    instarShed: null,
    position: 'not-seen',
    outcomes: [],
    notes: '',
    version: 1,
    createdAt: CREATED_AT,
    ...part,
  };
}

export function anExuvia(part: Partial<Exuvia> = {}): Exuvia {
  return {
    id: 'exuvia-1',
    moltId: 'molt-1',
    recovered: true,
    grade: null,
    completeness: null,
    storagePlace: null,
    notes: '',
    version: 1,
    createdAt: CREATED_AT,
    ...part,
  };
}

export function aPhoto(part: Partial<Photo> = {}): Photo {
  return {
    id: 'photo-1',
    sha256: 'a'.repeat(64),
    originalName: 'dorsal.jpg',
    mediaType: 'image/jpeg',
    byteLength: 1_000,
    widthPx: 4_000,
    heightPx: 3_000,
    subject: { kind: 'none' },
    view: 'other',
    takenOn: null,
    notes: '',
    facts: { takenAt: null, camera: null, focalLengthMm: null, focalLength35Mm: null, orientation: 1 },
    importedAt: CREATED_AT,
    sample: false,
    version: 1,
    ...part,
  };
}
