import { cp, mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAmbient } from '../../src/core/ambient.ts';
import { type Core, openCore } from '../../src/core/core.ts';
import { unwrap } from '../../src/domain/result.ts';
import type { SampleCabinet } from '../../src/tasks/sampleCabinet/data.ts';
import { smallPicture } from './smallPictures.ts';

export interface TestCore {
  readonly core: Core;
  readonly folder: string;
  /** Mistakes of ours that the core has met. */
  readonly defects: readonly unknown[];
  /** Closes the core; may be called again. */
  close(): Promise<void>;
  /** Closes the core and removes everything. */
  remove(): Promise<void>;
}

export const TEST_NOW = '2026-06-15T12:00:00.000Z';

/** A core on a fresh archive, with a chosen clock and identifiers, a page of one line and a sample cabinet of one animal. */
export async function openTestCore(seed: string): Promise<TestCore> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-core-'));
  const defects: unknown[] = [];
  await mkdir(join(folder, 'pages'));
  await writeFile(join(folder, 'pages', 'index.html'), '<!doctype html><title>Exuviary</title>');
  await cp(fileURLToPath(new URL('../../resources/genera', import.meta.url)), join(folder, 'resources', 'genera'), { recursive: true });
  await writeSample(join(folder, 'resources', 'sample'));
  const core = unwrap(
    await openCore({
      archiveFolder: join(folder, 'archive'),
      rendererFolder: join(folder, 'pages'),
      resourcesFolder: join(folder, 'resources'),
      ambient: createAmbient({ now: TEST_NOW, seed }),
      elapsedMs: () => performance.now(),
      logDefect: (_, error) => void defects.push(error),
    }),
  );
  let closed: Promise<void> | null = null;
  const close = (): Promise<void> => {
    closed ??= core.close();
    return closed;
  };
  return {
    core,
    folder,
    defects,
    close,
    async remove() {
      await close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function writeSample(folder: string): Promise<void> {
  await mkdir(join(folder, 'photos'), { recursive: true });
  await writeFile(join(folder, 'photos', 'one.jpg'), await smallPicture(901, 'jpeg'));
  const cabinet: SampleCabinet = {
    format: 'exuviary-sample/2',
    about: 'One invented animal.',
    keeper: 'Sample keeper',
    specimens: [
      {
        specimen: {
          code: 'S-1',
          taxon: '',
          name: null,
          origin: null,
          eggSacGroup: null,
          acquiredOn: null,
          acquiredInstar: null,
          hatchedOn: null,
          habit: null,
          status: 'living',
          notes: '',
        },
        molts: [
          {
            molt: {
              happenedFrom: -40,
              happenedTo: -40,
              instarShed: 5,
              position: 'not-seen',
              outcomes: ['clean'],
              notes: '',
            },
            exuvia: { recovered: true, grade: 'B', completeness: 'complete', storagePlace: null, notes: '' },
            photos: [{ kind: 'file', file: 'one.jpg', view: 'dorsal', takenOn: -38, notes: '', marks: null, reading: null }],
            determinations: [],
          },
        ],
        animalPhotos: [],
        liveSigns: [],
        observations: [],
      },
    ],
  };
  await writeFile(join(folder, 'cabinet.json'), JSON.stringify(cabinet));
}
