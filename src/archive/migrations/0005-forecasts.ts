import type { Migration } from './migration.ts';

/** Forecasts as they were made, with all they followed from. The molt they count from is named within, without a reference. */
export const forecasts: Migration = {
  name: 'forecasts',
  up(database) {
    database.exec(`
      CREATE TABLE forecast (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        specimen_id TEXT NOT NULL REFERENCES specimen (id) ON DELETE RESTRICT,
        made_at TEXT NOT NULL,
        basis TEXT NOT NULL,
        forecast TEXT NOT NULL
      ) STRICT;
      CREATE INDEX forecast_by_specimen ON forecast (specimen_id, ordinal);
      CREATE TRIGGER forecast_is_made_once
      BEFORE UPDATE OF id, specimen_id, made_at, basis, forecast ON forecast
      BEGIN
        SELECT raise(ABORT, 'a forecast is never changed');
      END;
    `);
  },
};
