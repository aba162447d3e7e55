import type Database from 'better-sqlite3';
import type { Ambient } from '../domain/ambient.ts';
import { Refusal } from '../domain/failure.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import type { ShippedProfile } from '../domain/sexing/genus/profile.ts';
import type { Archive } from './archive.ts';
import { cabinetIn } from './catalogue/cabinet.ts';
import { calibrationsIn } from './catalogue/calibrations.ts';
import { catalogueOn } from './catalogue/catalogue.ts';
import { openConnection } from './catalogue/connection.ts';
import type { RecordContext } from './catalogue/context.ts';
import { determinationsIn } from './catalogue/determinations.ts';
import { exuviaeIn } from './catalogue/exuviae.ts';
import { forecastsIn } from './catalogue/forecasts.ts';
import { genusEditsIn } from './catalogue/genusEdits.ts';
import { finishRemovals, recordsMade } from './catalogue/housekeeping.ts';
import { importsIn, stagedForPlans, tidyPlans } from './catalogue/imports.ts';
import { liveSignsIn } from './catalogue/liveSigns.ts';
import { modelChangesIn } from './catalogue/modelChanges.ts';
import { moltsIn } from './catalogue/molts.ts';
import { observationsIn } from './catalogue/observations.ts';
import { photosIn } from './catalogue/photos.ts';
import { preferencesIn } from './catalogue/preferences.ts';
import { printChecksIn } from './catalogue/printChecks.ts';
import { readingsIn } from './catalogue/readings.ts';
import { readingsUnderWayIn } from './catalogue/readingsUnderWay.ts';
import { removalsIn } from './catalogue/removals.ts';
import { specimensIn } from './catalogue/specimens.ts';
import { sqliteRefusal } from './catalogue/sqliteRefusal.ts';
import { copyCatalogue } from './migrations/copyCatalogue.ts';
import { migrate } from './migrations/migrate.ts';
import { migrations } from './migrations/migrations.ts';
import { diskFailure } from './originals/diskFailure.ts';
import type { Files } from './originals/files.ts';
import { type Layout, layoutOf, originalPath } from './originals/layout.ts';
import { nodeFiles } from './originals/nodeFiles.ts';
import { renditionsIn } from './originals/renditionStore.ts';
import { originalsIn } from './originals/store.ts';
import { sweepIncoming } from './originals/sweeping.ts';

/**
 * Opens the archive in a folder, making it if there is none: locks it, brings its catalogue up to date, makes earlier
 * removals final and sweeps half-arrived bytes. `genera` are the profiles as shipped; without them no genus is known. Fails with `archive-in-use`, `archive-not-ours`, `archive-from-newer-version`,
 * `archive-damaged`, `archive-folder-unusable` or `disk-full`.
 */
export async function openArchive(
  folder: string,
  ambient: Ambient,
  { files = nodeFiles(process.platform), genera = [] }: { readonly files?: Files; readonly genera?: readonly ShippedProfile[] } = {},
): Promise<Result<Archive>> {
  const layout = layoutOf(folder);
  let database: Database.Database | undefined;
  try {
    for (const path of [folder, layout.originals, layout.renditions, layout.incoming]) await files.makeFolder(path);
    await files.syncFolder(folder);
    database = openConnection(folder);
    const context: RecordContext = { catalogue: catalogueOn(database, folder), ambient, damage: new Map(), genera };
    const opened = database;
    migrate(opened, migrations, (version) => copyCatalogue(opened, layout.catalogueCopies, version, ambient.now()));
    await tidy(context, files, layout);
    return succeed(archiveOver(opened, context, files, layout));
  } catch (error) {
    database?.close();
    const refusal = error instanceof Refusal ? error : sqliteRefusal(error, folder);
    const failure = refusal?.failure ?? diskFailure(error, folder);
    if (failure) return fail(failure);
    throw error;
  }
}

/** Staged bytes of a waiting file may have been published already, just before a crash: then they lie among the originals. */
async function tidy(context: RecordContext, files: Files, layout: Layout): Promise<void> {
  finishRemovals(context.catalogue);
  const planned = stagedForPlans(context);
  const kept = await sweepIncoming(files, layout, planned);
  const available = [...kept];
  for (const [name, sha256] of planned) {
    if (!kept.has(name) && (await files.facts(originalPath(layout, sha256)))) available.push(name);
  }
  tidyPlans(context, available);
}

function archiveOver(database: Database.Database, context: RecordContext, files: Files, layout: Layout): Archive {
  const { catalogue, ambient, damage } = context;
  return {
    folder: layout.folder,
    specimens: specimensIn(context),
    molts: moltsIn(context),
    exuviae: exuviaeIn(context),
    determinations: determinationsIn(context),
    readingsUnderWay: readingsUnderWayIn(context),
    liveSigns: liveSignsIn(context),
    genusEdits: genusEditsIn(context),
    modelChanges: modelChangesIn(context),
    cabinet: cabinetIn(context),
    observations: observationsIn(context),
    forecasts: forecastsIn(context),
    photos: photosIn(context),
    calibrations: calibrationsIn(context),
    readings: readingsIn(context),
    removals: removalsIn(context),
    preferences: preferencesIn(context),
    printChecks: printChecksIn(context),
    imports: importsIn(context),
    originals: originalsIn({ files, layout, ambient, catalogue }),
    renditions: renditionsIn({ files, layout }, () => ambient.newId()),
    transaction: (work) => catalogue.atomically(work),
    recordsMade: () => recordsMade(catalogue),
    damaged: () => [...damage].map(([name, problem]) => `${name}: ${problem}`),
    close() {
      database.pragma('optimize');
      database.pragma('wal_checkpoint(TRUNCATE)');
      database.close();
    },
  };
}
