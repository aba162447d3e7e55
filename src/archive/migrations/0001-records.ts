import type { Migration } from './migration.ts';

/**
 * The first form of the catalogue.
 *
 * `ordinal` is the order of creation, which a clock can't promise; AUTOINCREMENT never gives one twice, so that a removed
 * row finds its place free when it is put back. Foreign keys RESTRICT: whoever deletes gathers first what hangs on it.
 */
export const records: Migration = {
  name: 'records',
  up(database) {
    database.exec(`
      CREATE TABLE specimen (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        code TEXT NOT NULL CHECK (code <> ''),
        code_key TEXT NOT NULL UNIQUE,
        taxon TEXT NOT NULL,
        name TEXT,
        origin TEXT,
        egg_sac_group TEXT,
        acquired_on TEXT,
        acquired_instar INTEGER CHECK (acquired_instar >= 1),
        hatched_on TEXT,
        habit TEXT CHECK (habit IN ('terrestrial', 'arboreal', 'fossorial')),
        status TEXT NOT NULL CHECK (status IN ('living', 'dead', 'sold', 'on-loan')),
        notes TEXT NOT NULL,
        sample INTEGER NOT NULL CHECK (sample IN (0, 1)),
        version INTEGER NOT NULL CHECK (version >= 1),
        created_at TEXT NOT NULL
      ) STRICT;

      CREATE TABLE molt (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        specimen_id TEXT NOT NULL REFERENCES specimen (id) ON DELETE RESTRICT,
        happened_from TEXT NOT NULL,
        happened_to TEXT NOT NULL,
        instar_shed INTEGER CHECK (instar_shed >= 1),
        position TEXT NOT NULL CHECK (position IN ('on-back', 'on-side', 'upright', 'not-seen')),
        outcomes TEXT NOT NULL,
        notes TEXT NOT NULL,
        version INTEGER NOT NULL CHECK (version >= 1),
        created_at TEXT NOT NULL,
        CHECK (happened_from <= happened_to)
      ) STRICT;
      CREATE INDEX molt_by_specimen ON molt (specimen_id, happened_from, happened_to, ordinal);

      CREATE TABLE exuvia (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        molt_id TEXT NOT NULL UNIQUE REFERENCES molt (id) ON DELETE RESTRICT,
        recovered INTEGER NOT NULL CHECK (recovered IN (0, 1)),
        grade TEXT CHECK (grade IN ('A', 'B', 'C', 'D')),
        completeness TEXT CHECK (completeness IN ('complete', 'abdomen-missing', 'legs-missing', 'carapace-only', 'fragments')),
        storage_place TEXT,
        notes TEXT NOT NULL,
        version INTEGER NOT NULL CHECK (version >= 1),
        created_at TEXT NOT NULL
      ) STRICT;

      CREATE TABLE photo (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        sha256 TEXT NOT NULL UNIQUE CHECK (length(sha256) = 64),
        original_name TEXT NOT NULL,
        media_type TEXT NOT NULL CHECK (media_type IN ('image/jpeg', 'image/png', 'image/webp', 'image/tiff', 'image/heic')),
        byte_length INTEGER NOT NULL CHECK (byte_length > 0),
        width_px INTEGER NOT NULL CHECK (width_px > 0),
        height_px INTEGER NOT NULL CHECK (height_px > 0),
        taken_local TEXT,
        taken_offset TEXT,
        camera TEXT,
        focal_length_mm REAL CHECK (focal_length_mm > 0),
        focal_length_35_mm REAL CHECK (focal_length_35_mm > 0),
        orientation INTEGER NOT NULL CHECK (orientation BETWEEN 1 AND 8),
        exuvia_id TEXT REFERENCES exuvia (id) ON DELETE RESTRICT,
        specimen_id TEXT REFERENCES specimen (id) ON DELETE RESTRICT,
        view TEXT NOT NULL CHECK (view IN ('dorsal', 'ventral', 'abdomen-inside', 'abdomen-outside', 'detail', 'other')),
        taken_on TEXT,
        notes TEXT NOT NULL,
        imported_at TEXT NOT NULL,
        sample INTEGER NOT NULL CHECK (sample IN (0, 1)),
        version INTEGER NOT NULL CHECK (version >= 1),
        CHECK (exuvia_id IS NULL OR specimen_id IS NULL),
        CHECK (taken_offset IS NULL OR taken_local IS NOT NULL)
      ) STRICT;
      CREATE INDEX photo_by_exuvia ON photo (exuvia_id, taken_on, ordinal) WHERE exuvia_id IS NOT NULL;
      CREATE INDEX photo_by_specimen ON photo (specimen_id, taken_on, ordinal) WHERE specimen_id IS NOT NULL;
      CREATE INDEX photo_unassigned ON photo (ordinal) WHERE exuvia_id IS NULL AND specimen_id IS NULL;
      CREATE INDEX photo_of_sample ON photo (ordinal) WHERE sample = 1;

      CREATE TABLE calibration (
        photo_id TEXT NOT NULL PRIMARY KEY REFERENCES photo (id) ON DELETE RESTRICT,
        marks TEXT,
        version INTEGER NOT NULL CHECK (version >= 1),
        changed_at TEXT NOT NULL
      ) STRICT;

      CREATE TABLE reading (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        photo_id TEXT NOT NULL REFERENCES photo (id) ON DELETE RESTRICT,
        protocol TEXT NOT NULL CHECK (protocol IN ('dorsal-skin')),
        observer TEXT NOT NULL,
        pass INTEGER NOT NULL CHECK (pass >= 1),
        carapace_height TEXT NOT NULL,
        pointing_px REAL NOT NULL CHECK (pointing_px > 0),
        landmarks TEXT NOT NULL,
        version INTEGER NOT NULL CHECK (version >= 1),
        created_at TEXT NOT NULL,
        changed_at TEXT NOT NULL
      ) STRICT;
      CREATE INDEX reading_by_photo ON reading (photo_id, pass, ordinal);

      CREATE TABLE determination (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        exuvia_id TEXT NOT NULL REFERENCES exuvia (id) ON DELETE RESTRICT,
        sex TEXT NOT NULL CHECK (sex IN ('female', 'male', 'unsexed')),
        level TEXT CHECK (level IN ('leaning', 'probable', 'strong', 'established')),
        reader TEXT NOT NULL CHECK (reader <> ''),
        read_on TEXT NOT NULL,
        checklist TEXT NOT NULL,
        notes TEXT NOT NULL,
        supersedes TEXT REFERENCES determination (id) ON DELETE RESTRICT,
        signed_at TEXT NOT NULL,
        withdrawn_at TEXT,
        withdrawn_reason TEXT,
        CHECK ((level IS NULL) = (sex = 'unsexed')),
        CHECK ((withdrawn_at IS NULL) = (withdrawn_reason IS NULL))
      ) STRICT;
      CREATE INDEX determination_by_exuvia ON determination (exuvia_id, ordinal);
      CREATE INDEX determination_by_supersedes ON determination (supersedes) WHERE supersedes IS NOT NULL;

      CREATE TRIGGER determination_is_signed_once
      BEFORE UPDATE OF id, exuvia_id, sex, level, reader, read_on, checklist, notes, supersedes, signed_at ON determination
      BEGIN
        SELECT raise(ABORT, 'a signed determination is never changed');
      END;
      CREATE TRIGGER determination_is_withdrawn_once
      BEFORE UPDATE OF withdrawn_at, withdrawn_reason ON determination WHEN OLD.withdrawn_at IS NOT NULL
      BEGIN
        SELECT raise(ABORT, 'a withdrawal is never changed');
      END;

      CREATE TABLE determination_evidence (
        determination_id TEXT NOT NULL REFERENCES determination (id) ON DELETE RESTRICT,
        position INTEGER NOT NULL,
        photo_id TEXT NOT NULL REFERENCES photo (id) ON DELETE RESTRICT,
        PRIMARY KEY (determination_id, position)
      ) STRICT, WITHOUT ROWID;
      CREATE INDEX determination_evidence_by_photo ON determination_evidence (photo_id);

      CREATE TABLE revision (
        kind TEXT NOT NULL CHECK (kind IN ('specimen', 'molt', 'exuvia', 'calibration', 'reading')),
        id TEXT NOT NULL,
        version INTEGER NOT NULL CHECK (version >= 1),
        at TEXT NOT NULL,
        body TEXT NOT NULL,
        PRIMARY KEY (kind, id, version)
      ) STRICT, WITHOUT ROWID;

      CREATE TABLE removal (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        at TEXT NOT NULL,
        body TEXT NOT NULL
      ) STRICT;

      CREATE TABLE planned_file (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        intake_id TEXT NOT NULL,
        position INTEGER NOT NULL,
        name TEXT NOT NULL,
        byte_length INTEGER NOT NULL CHECK (byte_length >= 0),
        source_path TEXT,
        staged_name TEXT,
        sha256 TEXT,
        outcome TEXT,
        UNIQUE (intake_id, position),
        CHECK ((staged_name IS NULL) = (sha256 IS NULL))
      ) STRICT;
      CREATE INDEX planned_file_waiting ON planned_file (ordinal) WHERE outcome IS NULL;

      CREATE TABLE preference (
        id INTEGER NOT NULL PRIMARY KEY CHECK (id = 1),
        body TEXT NOT NULL
      ) STRICT;
    `);
  },
};
