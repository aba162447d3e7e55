import type { Migration } from './migration.ts';

/** Whether the passes before one were looked at before all of its points were placed. Null where they were not. */
export const passesSeen: Migration = {
  name: 'passes-seen',
  up(database) {
    database.exec('ALTER TABLE reading ADD COLUMN earlier_seen INTEGER CHECK (earlier_seen = 1);');
  },
};
