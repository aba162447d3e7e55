import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Archive } from '../../src/archive/archive.ts';
import { openArchive } from '../../src/archive/open.ts';
import type { Files } from '../../src/archive/originals/files.ts';
import type { NewPhoto } from '../../src/archive/records/photos.ts';
import type { Ambient } from '../../src/domain/ambient.ts';
import type { ObservationDraft } from '../../src/domain/care/observation.ts';
import { basisFor, readCabinet } from '../../src/domain/growth/forecast/cabinetForecast.ts';
import { forecastFrom } from '../../src/domain/growth/forecast/forecast.ts';
import type { KeptForecast } from '../../src/domain/growth/forecast/keptForecast.ts';
import type { TwoPointScale } from '../../src/domain/measuring/calibration.ts';
import type { Landmarks } from '../../src/domain/measuring/landmarks.ts';
import type { ReadingDraft } from '../../src/domain/measuring/reading.ts';
import type { ExuviaDraft } from '../../src/domain/molting/exuvia.ts';
import type { MoltDraft } from '../../src/domain/molting/molt.ts';
import { unwrap } from '../../src/domain/result.ts';
import { BLANK_CHECKLIST, type Checklist, type DeterminationDraft, type SignedAssessment } from '../../src/domain/sexing/determination.ts';
import type { SpecimenDraft } from '../../src/domain/specimen/specimen.ts';

/** What the machine made of a reading, for tests that are not about that. */
export const FIRST_ASSESSMENT: SignedAssessment = {
  modelVersion: '1.0',
  method: 'skin-loupe',
  sizeClass: 'D',
  towards: 'female',
  band: 'strong',
  conflict: false,
  genus: null,
};

/** A clock that moves on a second at each look, and names that count up. */
export function countingAmbient(startsAt = '2026-06-15T12:00:00.000Z'): Ambient {
  let looks = 0;
  let names = 0;
  return {
    now: () => new Date(Date.parse(startsAt) + 1000 * looks++).toISOString(),
    newId: () => `id-${String(++names).padStart(6, '0')}`,
  };
}

export async function temporaryFolder(): Promise<{ readonly folder: string; remove(): Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-archive-'));
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) };
}

/** An archive in a folder of its own, and a way to close and open it again. */
export class TestArchive {
  readonly folder: string;
  readonly #ambient = countingAmbient();
  #opened: Archive | null = null;
  readonly #remove: () => Promise<void>;

  private constructor(folder: string, remove: () => Promise<void>) {
    this.folder = folder;
    this.#remove = remove;
  }

  static async open(files?: Files): Promise<TestArchive> {
    const { folder, remove } = await temporaryFolder();
    const test = new TestArchive(folder, remove);
    await test.reopen(files);
    return test;
  }

  get archive(): Archive {
    if (!this.#opened) throw new TypeError('Expected the archive to be open');
    return this.#opened;
  }

  async reopen(files?: Files): Promise<Archive> {
    this.close();
    this.#opened = unwrap(await openArchive(this.folder, this.#ambient, files && { files }));
    return this.#opened;
  }

  close(): void {
    this.#opened?.close();
    this.#opened = null;
  }

  async remove(): Promise<void> {
    this.close();
    await this.#remove();
  }
}

export function specimenDraft(part: Partial<SpecimenDraft> = {}): SpecimenDraft {
  return {
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
    ...part,
  };
}

export function moltDraft(part: Partial<MoltDraft> = {}): MoltDraft {
  return {
    happenedFrom: '2026-01-10',
    happenedTo: '2026-01-12',
    instarShed: null,
    position: 'on-back',
    outcomes: [],
    notes: '',
    ...part,
  };
}

export function exuviaDraft(part: Partial<ExuviaDraft> = {}): ExuviaDraft {
  return { recovered: true, grade: 'B', completeness: 'complete', storagePlace: 'Vial 7', notes: '', ...part };
}

export function newPhoto(part: Partial<NewPhoto> = {}): NewPhoto {
  return {
    sha256: 'a'.repeat(64),
    originalName: 'dorsal.jpg',
    mediaType: 'image/jpeg',
    byteLength: 1_000,
    widthPx: 4_000,
    heightPx: 3_000,
    facts: {
      takenAt: { local: '2026-01-12T20:15:00', offset: '+01:00' },
      camera: 'Acme Test',
      focalLengthMm: 4.25,
      focalLength35Mm: 26,
      orientation: 6,
    },
    subject: { kind: 'none' },
    view: 'dorsal',
    takenOn: '2026-01-12',
    notes: '',
    sample: false,
    ...part,
  };
}

export const MIDLINE: Landmarks = {
  'carapace-front': { state: 'placed', at: { xPx: 100.25, yPx: 50.5 } },
  'carapace-rear': { state: 'placed', at: { xPx: 100.75, yPx: 250.125 } },
};

export function readingDraft(part: Partial<ReadingDraft> = {}): ReadingDraft {
  return {
    protocol: 'dorsal-skin',
    observer: 'A. Keeper',
    pass: 1,
    carapaceHeight: { kind: 'assumed' },
    pointingPx: 1.5,
    landmarks: MIDLINE,
    ...part,
  };
}

export const SCALE: TwoPointScale = {
  kind: 'two-points',
  ends: [
    { xPx: 10, yPx: 20 },
    { xPx: 510, yPx: 20 },
  ],
  distanceMm: 50,
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 1.5,
  heightMm: 0,
};

const CHECKLIST: Checklist = {
  ...BLANK_CHECKLIST,
  skinMatchesAnimal: 'yes',
  grade: 'B',
  fourBookLungsFound: 'yes',
  view: 'inside',
  condition: 'wet',
  light: 'transmitted',
  magnification: 'loupe',
  receptaclesSeen: 'yes',
  uterusExternusSeen: 'cannot-tell',
  accessoryOrgansSeen: 'not-looked',
  fusillaeOutsideSeen: 'no',
  secondReaderAgrees: 'not-looked',
  secondReader: null,
  palpalBulbsOnAnimal: 'not-looked',
  eggSacLaid: 'not-looked',
  legSpanMm: 82.5,
};

export function determinationDraft(part: Partial<DeterminationDraft> = {}): DeterminationDraft {
  return {
    sex: 'female',
    level: 'probable',
    reader: 'A. Keeper',
    readOn: '2026-01-20',
    checklist: CHECKLIST,
    evidencePhotoIds: [],
    pins: [],
    notes: '',
    supersedes: null,
    ...part,
  };
}

export function observationDraft(part: Partial<ObservationDraft> = {}): ObservationDraft {
  return {
    kind: 'refused',
    moment: { at: '2026-01-05T19:30:00.000Z', offset: '+01:00' },
    observer: 'A. Keeper',
    note: '',
    source: { kind: 'hand' },
    span: null,
    ...part,
  };
}

/** A forecast for an animal of which nothing is known but its arrival. */
export function madeForecast(specimenId: string): Pick<KeptForecast, 'basis' | 'forecast'> {
  const record = {
    specimenId,
    taxon: '',
    eggSacGroup: null,
    hatchedOn: null,
    acquiredOn: '2026-01-01',
    acquiredInstar: 3,
    molts: [],
    sizes: [],
  };
  const basis = basisFor(readCabinet([record], '2026-01-05'), specimenId);
  if (!basis) throw new Error('Expected the animal to be in the cabinet');
  return { basis, forecast: forecastFrom(basis) };
}

/** One animal with one molt, its skin and a photo of it. */
export function skinWithPhoto(archive: Archive, code = 'T-1', sha256 = 'a'.repeat(64)) {
  const specimen = unwrap(archive.specimens.create(specimenDraft({ code })));
  const molt = unwrap(archive.molts.create(specimen.id, moltDraft()));
  const exuvia = unwrap(archive.exuviae.create(molt.id, exuviaDraft()));
  const photo = unwrap(archive.photos.add(newPhoto({ sha256, subject: { kind: 'skin', exuviaId: exuvia.id } })));
  return { specimen, molt, exuvia, photo };
}
