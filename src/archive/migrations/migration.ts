import type Database from 'better-sqlite3';

/**
 * One step from a catalogue's form to the next. Frozen once released: never edited, renamed or made to import code that may
 * change; a mistake is corrected by a new step.
 */
export interface Migration {
  readonly name: string;
  up(database: Pick<Database.Database, 'exec' | 'prepare'>): void;
}
