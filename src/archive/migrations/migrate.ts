import type Database from 'better-sqlite3';
import { refuse } from '../../domain/failure.ts';
import { APPLICATION_ID } from '../catalogue/connection.ts';
import type { Migration } from './migration.ts';

/**
 * Brings a catalogue to the newest form, all pending steps in one transaction, because a half-migrated catalogue fits no
 * version. `keepCopy` is called first when there is something to lose.
 */
export function migrate(database: Database.Database, migrations: readonly Migration[], keepCopy: (version: number) => void): void {
  const found = Number(database.pragma('user_version', { simple: true }));
  if (found > migrations.length) refuse({ code: 'archive-from-newer-version', found, known: migrations.length });
  if (found === migrations.length) return;
  if (found > 0) keepCopy(found);

  // A step may rebuild a table that others refer to; SQLite ignores this setting inside a transaction.
  database.pragma('foreign_keys = OFF');
  try {
    database
      .transaction(() => {
        for (const migration of migrations.slice(found)) migration.up(database);
        const broken = database.pragma('foreign_key_check');
        if (Array.isArray(broken) && broken.length > 0) {
          refuse({ code: 'archive-damaged', detail: `references without a target: ${JSON.stringify(broken[0])}` });
        }
        database.pragma(`application_id = ${APPLICATION_ID}`);
        database.pragma(`user_version = ${migrations.length}`);
      })
      .immediate();
  } finally {
    database.pragma('foreign_keys = ON');
  }
}
