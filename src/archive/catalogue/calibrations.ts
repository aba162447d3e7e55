import { CalibrationRecord } from '../../domain/measuring/calibration.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Calibrations } from '../records/photos.ts';
import type { Row } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';
import { PHOTOS_OF_SKINS } from './photos.ts';
import { keepRevision, revisionsOf } from './revisions.ts';

export const SELECT_CALIBRATIONS = `SELECT calibration.photo_id AS id, calibration.marks, calibration.version,
  calibration.check_marks AS checkMarks, calibration.changed_at AS changedAt FROM calibration`;

const Marks = CalibrationRecord.shape.marks;

function shape(row: Row): unknown {
  const { checkMarks, ...rest } = row;
  return {
    ...rest,
    photoId: row['id'],
    marks: row['marks'] === null ? null : parseDocument(row['marks']),
    ...(checkMarks === null ? {} : { check: parseDocument(checkMarks) }),
  };
}

export function calibrationDecoder(damage: DamageLog): Decoder<CalibrationRecord> {
  return decoder('calibration', CalibrationRecord, shape, damage);
}

export function calibrationsIn({ catalogue, ambient, damage }: RecordContext): Calibrations {
  const calibrations = calibrationDecoder(damage);

  /** A photo without a row has no marks yet: version 0, unchanged since the import. */
  function get(photoId: string): Result<CalibrationRecord> {
    const row = catalogue.one(`${SELECT_CALIBRATIONS} WHERE photo_id = :photoId`, { photoId });
    if (row) return calibrations.one(row, photoId);
    const photo = catalogue.one('SELECT imported_at AS importedAt FROM photo WHERE id = :photoId', { photoId });
    if (!photo) return fail({ code: 'not-found', what: 'photo', id: photoId });
    return succeed({ photoId, marks: null, version: 0, changedAt: String(photo['importedAt']) });
  }

  return {
    get,
    ofSkinsOf: (specimenId) =>
      calibrations.many(
        catalogue.all(`${SELECT_CALIBRATIONS} JOIN photo ON photo.id = calibration.photo_id ${PHOTOS_OF_SKINS} ORDER BY photo.ordinal`, {
          specimenId,
        }),
      ),
    put: (photoId, expectedVersion, marks, check) =>
      catalogue.atomically(() => {
        const at = ambient.now();
        const text = marks && JSON.stringify(marks);
        const checkText = check === undefined ? null : JSON.stringify(check);
        if (expectedVersion === 0) {
          const current = get(photoId);
          if (!current.ok || current.value.version !== 0) return outdated('calibration', photoId, current);
          catalogue.run(
            `INSERT INTO calibration (photo_id, marks, check_marks, version, changed_at) VALUES (:photoId, :text, :checkText, 1, :at)`,
            { photoId, text, checkText, at },
          );
        } else {
          const changed = catalogue.run(
            `UPDATE calibration SET marks = :text, check_marks = :checkText, version = version + 1, changed_at = :at
             WHERE photo_id = :photoId AND version = :expectedVersion`,
            { photoId, text, checkText, at, expectedVersion },
          );
          if (changed === 0) return outdated('calibration', photoId, get(photoId));
        }
        keepRevision(catalogue, { kind: 'calibration', id: photoId, version: expectedVersion + 1, at, body: marks });
        return get(photoId);
      }),
    revisions: (photoId) => revisionsOf(catalogue, damage, { kind: 'calibration', id: photoId, schema: Marks }),
  };
}
