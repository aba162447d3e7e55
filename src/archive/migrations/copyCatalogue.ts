import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type Database from 'better-sqlite3';

/**
 * Keeps the catalogue as it stands, as one plain file, before a migration changes it. It gets its name only when it is
 * whole and on the disk.
 */
export function copyCatalogue(database: Database.Database, folder: string, version: number, at: string): string {
  mkdirSync(folder, { recursive: true });
  const path = join(folder, `catalogue-v${version}-${at.replaceAll(/[^0-9TZ]/g, '')}.db`);
  const partial = `${path}.partial`;
  rmSync(partial, { force: true });
  database.prepare('VACUUM INTO ?').run(partial);
  const file = openSync(partial, 'r+');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  renameSync(partial, path);
  return path;
}
