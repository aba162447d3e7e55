import type { Migration } from './migration.ts';

/**
 * What was seen of the living animals. A photo that gave a time is named without a reference: the time stays true when the
 * photo is removed. Kinds are the domain's to check, so that a new one needs no new form of the table.
 */
export const observations: Migration = {
  name: 'observations',
  up(database) {
    database.exec(`
      CREATE TABLE observation (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        specimen_id TEXT NOT NULL REFERENCES specimen (id) ON DELETE RESTRICT,
        kind TEXT NOT NULL CHECK (kind <> ''),
        at TEXT NOT NULL,
        utc_offset TEXT NOT NULL,
        observer TEXT NOT NULL,
        note TEXT NOT NULL,
        source TEXT NOT NULL,
        span TEXT,
        recorded_at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX observation_by_specimen ON observation (specimen_id, at, ordinal);
    `);
  },
};
