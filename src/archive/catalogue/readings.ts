import { Reading, ReadingDraft } from '../../domain/measuring/reading.ts';
import { fail, type Result } from '../../domain/result.ts';
import type { Readings } from '../records/photos.ts';
import type { Bindings, Row } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';
import { PHOTOS_OF_SKINS } from './photos.ts';
import { keepRevision, revisionsOf } from './revisions.ts';

export const SELECT_READINGS = `SELECT reading.id, reading.photo_id AS photoId, reading.protocol, reading.observer, reading.pass,
  reading.carapace_height AS carapaceHeight, reading.pointing_px AS pointingPx, reading.landmarks, reading.earlier_seen AS earlierSeen,
  reading.version, reading.created_at AS createdAt, reading.changed_at AS changedAt FROM reading`;

/** Leaves readings out that hold nothing but distances on an opened abdomen: they do not say how large the skin is. */
const OF_SIZE = `AND (NOT EXISTS (SELECT 1 FROM json_each(reading.landmarks) AS mark WHERE mark.key LIKE 'free-%')
  OR EXISTS (SELECT 1 FROM json_each(reading.landmarks) AS mark WHERE mark.key NOT LIKE 'free-%'))`;

function shape(row: Row): unknown {
  const { earlierSeen, ...rest } = row;
  return {
    ...rest,
    carapaceHeight: parseDocument(row['carapaceHeight']),
    landmarks: parseDocument(row['landmarks']),
    ...(earlierSeen === null ? {} : { earlierSeen: earlierSeen === 1 }),
  };
}

export function readingDecoder(damage: DamageLog): Decoder<Reading> {
  return decoder('reading', Reading, shape, damage);
}

function bindings({ protocol, observer, pass, carapaceHeight, pointingPx, landmarks, earlierSeen }: ReadingDraft): Bindings {
  return {
    ...{ protocol, observer, pass, pointingPx },
    carapaceHeight: JSON.stringify(carapaceHeight),
    landmarks: JSON.stringify(landmarks),
    earlierSeen: earlierSeen === true ? 1 : null,
  };
}

export function readingsIn({ catalogue, ambient, damage }: RecordContext): Readings {
  const readings = readingDecoder(damage);

  function get(id: string): Result<Reading> {
    return readings.one(catalogue.one(`${SELECT_READINGS} WHERE reading.id = :id`, { id }), id);
  }

  /** The number wanted; the next one after all when another window has begun a pass of that number meanwhile. */
  function freePass(photoId: string, wanted: number): number {
    const passes = catalogue.all('SELECT pass FROM reading WHERE photo_id = :photoId', { photoId }).map((row) => Number(row['pass']));
    return passes.includes(wanted) ? Math.max(...passes) + 1 : wanted;
  }

  return {
    get,
    create: (photoId, draft, at = ambient.now()) =>
      catalogue.atomically(() => {
        if (!catalogue.one('SELECT 1 FROM photo WHERE id = :photoId', { photoId })) {
          return fail({ code: 'not-found', what: 'photo', id: photoId });
        }
        const id = ambient.newId();
        const numbered = { ...draft, pass: freePass(photoId, draft.pass) };
        catalogue.run(
          `INSERT INTO reading (id, photo_id, protocol, observer, pass, carapace_height, pointing_px, landmarks, earlier_seen, version,
             created_at, changed_at)
           VALUES (:id, :photoId, :protocol, :observer, :pass, :carapaceHeight, :pointingPx, :landmarks, :earlierSeen, 1, :at, :at)`,
          { ...bindings(numbered), id, photoId, at },
        );
        keepRevision(catalogue, { kind: 'reading', id, version: 1, at, body: numbered });
        return get(id);
      }),
    ofPhoto: (photoId) => readings.many(catalogue.all(`${SELECT_READINGS} WHERE photo_id = :photoId ORDER BY pass, ordinal`, { photoId })),
    ofSkinsOf: (specimenId) =>
      readings.many(
        catalogue.all(
          `${SELECT_READINGS} JOIN photo ON photo.id = reading.photo_id ${PHOTOS_OF_SKINS}
           ORDER BY photo.ordinal, reading.pass, reading.ordinal`,
          { specimenId },
        ),
      ),
    repeated: () =>
      readings.many(
        catalogue.all(
          `${SELECT_READINGS} WHERE EXISTS
             (SELECT 1 FROM reading AS other WHERE other.photo_id = reading.photo_id AND other.ordinal <> reading.ordinal)
           ORDER BY reading.photo_id, reading.pass, reading.ordinal`,
        ),
      ),
    measuredPhotoIds: (of) => {
      const rows = catalogue.all(
        `SELECT DISTINCT reading.photo_id AS id FROM reading JOIN calibration ON calibration.photo_id = reading.photo_id
         WHERE calibration.marks IS NOT NULL ${of === 'size' ? OF_SIZE : ''}`,
      );
      return new Set(rows.map((row) => String(row['id'])));
    },
    update: (id, expectedVersion, draft) =>
      catalogue.atomically(() => {
        const at = ambient.now();
        // The number of a pass was given when it began and stays.
        const { pass: _, ...changes } = bindings(draft);
        const changed = catalogue.run(
          `UPDATE reading SET protocol = :protocol, observer = :observer, carapace_height = :carapaceHeight,
             pointing_px = :pointingPx, landmarks = :landmarks, earlier_seen = :earlierSeen, version = version + 1, changed_at = :at
           WHERE id = :id AND version = :expectedVersion`,
          { ...changes, id, expectedVersion, at },
        );
        const now = get(id);
        if (changed === 0) return outdated('reading', id, now);
        if (now.ok)
          keepRevision(catalogue, { kind: 'reading', id, version: expectedVersion + 1, at, body: { ...draft, pass: now.value.pass } });
        return now;
      }),
    revisions: (id) => revisionsOf(catalogue, damage, { kind: 'reading', id, schema: ReadingDraft }),
  };
}
