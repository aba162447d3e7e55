import Database from 'better-sqlite3';
import { type Failure, Refusal } from '../../domain/failure.ts';

function failureFor(code: string, message: string, folder: string): Failure | null {
  if (code === 'SQLITE_FULL') return { code: 'disk-full' };
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return { code: 'archive-in-use', folder };
  if (code.startsWith('SQLITE_CORRUPT') || code === 'SQLITE_NOTADB') return { code: 'archive-damaged', detail: message };
  if (/^SQLITE_(IOERR|CANTOPEN|READONLY|PERM|AUTH)/.test(code)) return { code: 'archive-folder-unusable', folder, reason: message };
  return null;
}

/**
 * The one place where SQLite's result codes (https://sqlite.org/rescode.html) become failures. null for everything that
 * is our own mistake, such as a violated constraint.
 */
export function sqliteRefusal(error: unknown, folder: string): Refusal | null {
  if (!(error instanceof Database.SqliteError)) return null;
  const failure = failureFor(error.code, error.message, folder);
  return failure && new Refusal(failure);
}

/** A row was about to refer to one that is not there. */
export function isMissingReference(error: unknown): boolean {
  return error instanceof Database.SqliteError && error.code === 'SQLITE_CONSTRAINT_FOREIGNKEY';
}
