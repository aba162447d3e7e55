import { Photo, type PhotoSubject } from '../../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Photos } from '../records/photos.ts';
import type { Bindings, Row } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder } from './decoding.ts';

export const SELECT_PHOTOS = `SELECT photo.id, photo.sha256, photo.original_name AS originalName, photo.media_type AS mediaType,
  photo.byte_length AS byteLength, photo.width_px AS widthPx, photo.height_px AS heightPx, photo.taken_local AS takenLocal,
  photo.taken_offset AS takenOffset, photo.camera, photo.focal_length_mm AS focalLengthMm,
  photo.focal_length_35_mm AS focalLength35Mm, photo.orientation, photo.exuvia_id AS exuviaId, photo.specimen_id AS specimenId,
  photo.view, photo.taken_on AS takenOn, photo.notes, photo.imported_at AS importedAt, photo.sample, photo.version FROM photo`;

/** Photos of all skins of one animal. */
export const PHOTOS_OF_SKINS = `JOIN exuvia ON photo.exuvia_id = exuvia.id JOIN molt ON exuvia.molt_id = molt.id
  WHERE molt.specimen_id = :specimenId`;

function subjectOf(row: Row): unknown {
  if (row['exuviaId'] !== null) return { kind: 'skin', exuviaId: row['exuviaId'] };
  if (row['specimenId'] !== null) return { kind: 'animal', specimenId: row['specimenId'] };
  return { kind: 'none' };
}

function shape(row: Row): unknown {
  const { takenLocal, takenOffset, camera, focalLengthMm, focalLength35Mm, orientation } = row;
  return {
    ...row,
    sample: row['sample'] === 1,
    subject: subjectOf(row),
    facts: {
      takenAt: takenLocal === null ? null : { local: takenLocal, offset: takenOffset },
      camera,
      focalLengthMm,
      focalLength35Mm,
      orientation,
    },
  };
}

export function photoDecoder(damage: DamageLog): Decoder<Photo> {
  return decoder('photo', Photo, shape, damage);
}

function subjectBindings(subject: PhotoSubject): Bindings {
  return {
    exuviaId: subject.kind === 'skin' ? subject.exuviaId : null,
    specimenId: subject.kind === 'animal' ? subject.specimenId : null,
  };
}

export function photosIn({ catalogue, ambient, damage }: RecordContext): Photos {
  const photos = photoDecoder(damage);

  function get(id: string): Result<Photo> {
    return photos.one(catalogue.one(`${SELECT_PHOTOS} WHERE photo.id = :id`, { id }), id);
  }

  function subjectExists(subject: PhotoSubject): Result<null> {
    if (subject.kind === 'skin' && !catalogue.one('SELECT 1 FROM exuvia WHERE id = :id', { id: subject.exuviaId })) {
      return fail({ code: 'not-found', what: 'exuvia', id: subject.exuviaId });
    }
    if (subject.kind === 'animal' && !catalogue.one('SELECT 1 FROM specimen WHERE id = :id', { id: subject.specimenId })) {
      return fail({ code: 'not-found', what: 'specimen', id: subject.specimenId });
    }
    return succeed(null);
  }

  return {
    get,
    add: (photo) =>
      catalogue.atomically(() => {
        const subject = subjectExists(photo.subject);
        if (!subject.ok) return subject;
        const id = ambient.newId();
        const at = ambient.now();
        const { sha256, originalName, mediaType, byteLength, widthPx, heightPx, facts, view, takenOn, notes } = photo;
        catalogue.run(
          `INSERT INTO photo (id, sha256, original_name, media_type, byte_length, width_px, height_px, taken_local, taken_offset,
             camera, focal_length_mm, focal_length_35_mm, orientation, exuvia_id, specimen_id, view, taken_on, notes, imported_at,
             sample, version)
           VALUES (:id, :sha256, :originalName, :mediaType, :byteLength, :widthPx, :heightPx, :takenLocal, :takenOffset,
             :camera, :focalLengthMm, :focalLength35Mm, :orientation, :exuviaId, :specimenId, :view, :takenOn, :notes, :at,
             :sample, 1)`,
          {
            ...subjectBindings(photo.subject),
            ...{ id, sha256, originalName, mediaType, byteLength, widthPx, heightPx, view, takenOn, notes, at },
            takenLocal: facts.takenAt?.local ?? null,
            takenOffset: facts.takenAt?.offset ?? null,
            camera: facts.camera,
            focalLengthMm: facts.focalLengthMm,
            focalLength35Mm: facts.focalLength35Mm,
            orientation: facts.orientation,
            sample: photo.sample ? 1 : 0,
          },
        );
        return get(id);
      }),
    bySha256: (sha256) => photos.many(catalogue.all(`${SELECT_PHOTOS} WHERE photo.sha256 = :sha256`, { sha256 }))[0] ?? null,
    list: ({ unassigned }) =>
      photos.many(
        catalogue.all(
          unassigned
            ? `${SELECT_PHOTOS} WHERE exuvia_id IS NULL AND specimen_id IS NULL ORDER BY ordinal DESC`
            : `${SELECT_PHOTOS} ORDER BY ordinal DESC`,
        ),
      ),
    ofExuvia: (exuviaId) =>
      photos.many(catalogue.all(`${SELECT_PHOTOS} WHERE photo.exuvia_id = :exuviaId ORDER BY taken_on, ordinal`, { exuviaId })),
    ofSkinsOf: (specimenId) =>
      photos.many(catalogue.all(`${SELECT_PHOTOS} ${PHOTOS_OF_SKINS} ORDER BY photo.taken_on, photo.ordinal`, { specimenId })),
    coversOfSkins: () =>
      new Map(
        catalogue
          .all("SELECT exuvia_id AS exuviaId, id FROM photo WHERE exuvia_id IS NOT NULL ORDER BY view = 'abdomen-inside', ordinal DESC")
          .map((row) => [String(row['exuviaId']), String(row['id'])]),
      ),
    ofAnimal: (specimenId) =>
      photos.many(catalogue.all(`${SELECT_PHOTOS} WHERE photo.specimen_id = :specimenId ORDER BY taken_on, ordinal`, { specimenId })),
    update: (id, expectedVersion, draft) =>
      catalogue.atomically(() => {
        const subject = subjectExists(draft.subject);
        if (!subject.ok) return subject;
        const { view, takenOn, notes } = draft;
        const changed = catalogue.run(
          `UPDATE photo SET exuvia_id = :exuviaId, specimen_id = :specimenId, view = :view, taken_on = :takenOn, notes = :notes,
             version = version + 1
           WHERE id = :id AND version = :expectedVersion`,
          { ...subjectBindings(draft.subject), view, takenOn, notes, id, expectedVersion },
        );
        if (changed === 0) return outdated('photo', id, get(id));
        return get(id);
      }),
    count: () => Number(catalogue.one('SELECT count(*) AS photos FROM photo')?.['photos']),
  };
}
