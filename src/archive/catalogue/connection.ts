import { join } from 'node:path';
import Database from 'better-sqlite3';
import { type Failure, Refusal } from '../../domain/failure.ts';
import { sqliteRefusal } from './sqliteRefusal.ts';

/** Stands in the header of every catalogue of ours: "EXUV". */
export const APPLICATION_ID = 0x45585556;

/** Long enough for a closing program to let go, short enough not to keep a person waiting for the news. */
const LOCK_PATIENCE_MS = 300;

/**
 * How the catalogue is opened, in this order. EXCLUSIVE is the archive's lock and comes before the file is touched.
 * FULL: a power cut must not take the last saved reading. `trusted_schema`: an archive may come from somebody else.
 * The two fullfsync settings act on macOS only, where fsync stops at the drive's cache.
 */
const PRAGMAS = [
  ['locking_mode', 'exclusive'],
  ['journal_mode', 'wal'],
  ['synchronous', 2],
  ['foreign_keys', 1],
  ['busy_timeout', 5000],
  ['trusted_schema', 0],
  ['cell_size_check', 1],
  ['temp_store', 2],
  ['fullfsync', 1],
  ['checkpoint_fullfsync', 1],
  ['mmap_size', 0],
] as const;

/** Opens and locks the catalogue of a folder. Throws a `Refusal` when it is in use, not ours, damaged or out of reach. */
export function openConnection(folder: string): Database.Database {
  let database: Database.Database | undefined;
  try {
    database = new Database(join(folder, 'catalogue.db'), { timeout: LOCK_PATIENCE_MS });
    database.pragma('locking_mode = exclusive');
    database.exec('BEGIN EXCLUSIVE');
    const ours = isOursOrNew(database);
    database.exec('COMMIT');
    if (!ours) throw new Refusal({ code: 'archive-not-ours', folder });
    for (const [name, value] of PRAGMAS) assertPragma(database, name, value, folder);
    return database;
  } catch (error) {
    database?.close();
    throw refusalToOpen(error, folder);
  }
}

function isOursOrNew(database: Database.Database): boolean {
  const applicationId = database.pragma('application_id', { simple: true });
  if (applicationId === APPLICATION_ID) return true;
  const tables = database.prepare<[], number>('SELECT count(*) FROM sqlite_schema').pluck().get();
  return applicationId === 0 && tables === 0;
}

function assertPragma(database: Database.Database, name: string, value: string | number, folder: string): void {
  database.pragma(`${name} = ${value}`);
  const actual = database.pragma(name, { simple: true });
  // A network drive may refuse the write-ahead log; mmap_size answers nothing where it is compiled out.
  if (actual !== value && actual !== undefined) {
    throw new Refusal({ code: 'archive-folder-unusable', folder, reason: `${name} is ${actual}, not ${value}` });
  }
}

function refusalToOpen(error: unknown, folder: string): unknown {
  if (error instanceof Database.SqliteError && error.code === 'SQLITE_NOTADB') {
    return new Refusal({ code: 'archive-not-ours', folder } satisfies Failure);
  }
  return sqliteRefusal(error, folder) ?? error;
}
