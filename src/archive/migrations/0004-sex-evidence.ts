import type { Migration } from './migration.ts';

/**
 * Determinations carry pins on their evidence and what the machine made of them; "anomalous" can be signed by hand. What was
 * signed in the first form keeps its answers untouched and is marked with model version 0. New: readings under way, signs
 * of the animal itself, edits of genus profiles, changes of the evidence model's numbers.
 *
 * A CHECK can't be altered, so `determination` is built anew. Its sequence goes along: no ordinal is ever given twice.
 */
export const sexEvidence: Migration = {
  name: 'sex-evidence',
  up(database) {
    database.exec(`
      CREATE TABLE determination_next (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        exuvia_id TEXT NOT NULL REFERENCES exuvia (id) ON DELETE RESTRICT,
        sex TEXT NOT NULL CHECK (sex IN ('female', 'male', 'unsexed', 'anomalous')),
        level TEXT CHECK (level IN ('leaning', 'probable', 'strong', 'established')),
        reader TEXT NOT NULL CHECK (reader <> ''),
        read_on TEXT NOT NULL,
        checklist TEXT NOT NULL,
        pins TEXT NOT NULL,
        assessment TEXT NOT NULL,
        notes TEXT NOT NULL,
        supersedes TEXT REFERENCES determination_next (id) ON DELETE RESTRICT,
        signed_at TEXT NOT NULL,
        withdrawn_at TEXT,
        withdrawn_reason TEXT,
        CHECK ((level IS NULL) = (sex IN ('unsexed', 'anomalous'))),
        CHECK ((withdrawn_at IS NULL) = (withdrawn_reason IS NULL))
      ) STRICT;

      INSERT INTO determination_next (ordinal, id, exuvia_id, sex, level, reader, read_on, checklist, pins, assessment, notes,
        supersedes, signed_at, withdrawn_at, withdrawn_reason)
      SELECT ordinal, id, exuvia_id, sex, level, reader, read_on, checklist, '[]',
        json_object(
          'modelVersion', '0',
          'method', CASE
            WHEN NOT json_valid(checklist) THEN 'skin-unstated'
            WHEN checklist ->> '$.receptaclesSeen' NOT IN ('yes', 'no') AND checklist ->> '$.uterusExternusSeen' NOT IN ('yes', 'no')
              AND checklist ->> '$.accessoryOrgansSeen' NOT IN ('yes', 'no') AND checklist ->> '$.fusillaeOutsideSeen' NOT IN ('yes', 'no')
              AND (checklist ->> '$.palpalBulbsOnAnimal' = 'yes' OR checklist ->> '$.eggSacLaid' = 'yes') THEN 'animal'
            ELSE coalesce('skin-' || (checklist ->> '$.magnification'), 'skin-unstated') END,
          'sizeClass', CASE
            WHEN NOT json_valid(checklist) OR checklist ->> '$.legSpanMm' IS NULL THEN NULL
            WHEN checklist ->> '$.legSpanMm' < 20 THEN 'A'
            WHEN checklist ->> '$.legSpanMm' < 40 THEN 'B'
            WHEN checklist ->> '$.legSpanMm' <= 75 THEN 'C'
            ELSE 'D' END,
          'towards', CASE sex WHEN 'unsexed' THEN NULL ELSE sex END,
          'band', NULL,
          'conflict', json('false'),
          'genus', NULL),
        notes, supersedes, signed_at, withdrawn_at, withdrawn_reason
      FROM determination;

      DELETE FROM sqlite_sequence WHERE name = 'determination_next';
      INSERT INTO sqlite_sequence (name, seq) SELECT 'determination_next', seq FROM sqlite_sequence WHERE name = 'determination';
      DROP TABLE determination;
      ALTER TABLE determination_next RENAME TO determination;

      CREATE INDEX determination_by_exuvia ON determination (exuvia_id, ordinal);
      CREATE INDEX determination_by_supersedes ON determination (supersedes) WHERE supersedes IS NOT NULL;
      CREATE TRIGGER determination_is_signed_once
      BEFORE UPDATE OF id, exuvia_id, sex, level, reader, read_on, checklist, pins, assessment, notes, supersedes, signed_at ON determination
      BEGIN
        SELECT raise(ABORT, 'a signed determination is never changed');
      END;
      CREATE TRIGGER determination_is_withdrawn_once
      BEFORE UPDATE OF withdrawn_at, withdrawn_reason ON determination WHEN OLD.withdrawn_at IS NOT NULL
      BEGIN
        SELECT raise(ABORT, 'a withdrawal is never changed');
      END;

      CREATE TABLE reading_under_way (
        exuvia_id TEXT NOT NULL PRIMARY KEY REFERENCES exuvia (id) ON DELETE RESTRICT,
        body TEXT,
        version INTEGER NOT NULL CHECK (version >= 1),
        changed_at TEXT NOT NULL
      ) STRICT;

      CREATE TABLE live_sign (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        id TEXT NOT NULL UNIQUE,
        specimen_id TEXT NOT NULL REFERENCES specimen (id) ON DELETE RESTRICT,
        finding TEXT NOT NULL,
        seen_on TEXT NOT NULL,
        observer TEXT NOT NULL CHECK (observer <> ''),
        notes TEXT NOT NULL,
        signed_at TEXT NOT NULL,
        withdrawn_at TEXT,
        withdrawn_reason TEXT,
        CHECK ((withdrawn_at IS NULL) = (withdrawn_reason IS NULL))
      ) STRICT;
      CREATE INDEX live_sign_by_specimen ON live_sign (specimen_id, ordinal);
      CREATE TRIGGER live_sign_is_signed_once
      BEFORE UPDATE OF id, specimen_id, finding, seen_on, observer, notes, signed_at ON live_sign
      BEGIN
        SELECT raise(ABORT, 'a signed sign is never changed');
      END;
      CREATE TRIGGER live_sign_is_withdrawn_once
      BEFORE UPDATE OF withdrawn_at, withdrawn_reason ON live_sign WHEN OLD.withdrawn_at IS NOT NULL
      BEGIN
        SELECT raise(ABORT, 'a withdrawal is never changed');
      END;

      CREATE TABLE live_sign_photo (
        live_sign_id TEXT NOT NULL REFERENCES live_sign (id) ON DELETE RESTRICT,
        position INTEGER NOT NULL,
        photo_id TEXT NOT NULL REFERENCES photo (id) ON DELETE RESTRICT,
        PRIMARY KEY (live_sign_id, position)
      ) STRICT, WITHOUT ROWID;
      CREATE INDEX live_sign_photo_by_photo ON live_sign_photo (photo_id);

      CREATE TABLE genus_edit (
        ordinal INTEGER PRIMARY KEY AUTOINCREMENT,
        genus TEXT NOT NULL CHECK (genus <> ''),
        version INTEGER NOT NULL CHECK (version >= 1),
        profile TEXT,
        note TEXT NOT NULL CHECK (note <> ''),
        by TEXT NOT NULL CHECK (by <> ''),
        at TEXT NOT NULL,
        UNIQUE (genus, version)
      ) STRICT;

      CREATE TABLE model_change (
        revision INTEGER PRIMARY KEY AUTOINCREMENT,
        adjustments TEXT NOT NULL,
        note TEXT NOT NULL CHECK (note <> ''),
        by TEXT NOT NULL CHECK (by <> ''),
        at TEXT NOT NULL
      ) STRICT;
    `);
  },
};
