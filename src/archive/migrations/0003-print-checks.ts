import type { Migration } from './migration.ts';

/** What a caliper read on printed scale cards. Calibrations keep a copy of what they used, so nothing refers to these rows. */
export const printChecks: Migration = {
  name: 'print-checks',
  up(database) {
    database.exec(`
      CREATE TABLE print_check (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        printer TEXT NOT NULL CHECK (printer <> ''),
        across_mm REAL NOT NULL CHECK (across_mm > 0),
        down_mm REAL NOT NULL CHECK (down_mm > 0),
        reading_standard_uncertainty_mm REAL NOT NULL CHECK (reading_standard_uncertainty_mm > 0),
        checked_on TEXT NOT NULL
      ) STRICT;
    `);
  },
};
