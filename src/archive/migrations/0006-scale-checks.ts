import type { Migration } from './migration.ts';

/** Marks on a second object of a photo, to check the first by. Null without one. */
export const scaleChecks: Migration = {
  name: 'scale-checks',
  up(database) {
    database.exec('ALTER TABLE calibration ADD COLUMN check_marks TEXT;');
  },
};
