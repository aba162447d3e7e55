import { join } from 'node:path';
import { failureResponse } from '../api/answers.ts';
import { createApi } from '../api/api.ts';
import { openArchive } from '../archive/open.ts';
import { type Result, succeed } from '../domain/result.ts';
import { createCutter } from '../tasks/cuts/cutter.ts';
import { openScaleFinding } from '../tasks/finding/scaleFinding.ts';
import { createImporter } from '../tasks/importing/importer.ts';
import { createTasks } from '../tasks/registry.ts';
import type { CoreAmbient } from './ambient.ts';
import { readGenera } from './genera.ts';
import { listStaticFiles } from './staticFiles.ts';
import { VERSION } from './version.ts';

/** Originals that no record names, such as those of removed photos, are kept a week longer. */
const UNNAMED_ORIGINALS_GRACE_MS = 7 * 86_400_000;

export interface CoreOptions {
  readonly archiveFolder: string;
  /** The built pages; null when only the api is wanted. */
  readonly rendererFolder: string | null;
  /** Files shipped as they are. */
  readonly resourcesFolder: string;
  readonly ambient: CoreAmbient;
  /** A clock that never goes back, in milliseconds. */
  readonly elapsedMs: () => number;
  /** Called once for each mistake of ours; the page shows the same reference. */
  readonly logDefect: (reference: string, error: unknown) => void;
}

/** The whole program but for a shell. Has no idea which shell that is, and lets in whoever calls. */
export interface Core {
  /** Answers every request, the pages' files included; never throws. */
  handle(request: Request): Promise<Response>;
  /** For a shell whose own dialog or drop yields paths: lets these files be imported, by the intake it answers. */
  grantFiles(paths: readonly string[]): Promise<string>;
  /** Stops running tasks after the files in hand and closes the archive. */
  close(): Promise<void>;
}

/** Opens the archive and joins everything to it. Fails as `openArchive` does. */
export async function openCore(options: CoreOptions): Promise<Result<Core>> {
  const { ambient, elapsedMs, logDefect } = options;
  const serveFile = options.rendererFolder === null ? async () => null : await listStaticFiles(options.rendererFolder);
  const genera = await readGenera(options.resourcesFolder);
  const opened = await openArchive(options.archiveFolder, ambient, { genera });
  if (!opened.ok) return opened;
  const archive = opened.value;
  ambient.startAfter(archive.recordsMade());

  const newReference = (): string => ambient.newId().slice(0, 8);
  const reportDefect = (error: unknown): string => {
    const reference = newReference();
    logDefect(reference, error);
    return reference;
  };
  const tasks = createTasks({ ambient, elapsedMs, reportDefect });
  const importer = createImporter({ archive, tasks, reportDefect });
  const scaleFinding = openScaleFinding(archive);
  const cutter = createCutter(archive);
  const sampleFolder = join(options.resourcesFolder, 'sample');
  const api = createApi(
    { archive, tasks, importer, scaleFinding, cutter, ambient, version: VERSION, sampleFolder, genera },
    { newReference, logDefect },
  );

  return succeed({
    async handle(request) {
      try {
        return (await serveFile(request)) ?? (await api(request));
      } catch (error) {
        return failureResponse({ code: 'defect', reference: reportDefect(error) });
      }
    },
    grantFiles: (paths) => importer.grant(paths),
    async close() {
      await Promise.all([tasks.close(), scaleFinding.close()]);
      try {
        await archive.originals.sweep(UNNAMED_ORIGINALS_GRACE_MS);
      } finally {
        archive.close();
      }
    },
  });
}
