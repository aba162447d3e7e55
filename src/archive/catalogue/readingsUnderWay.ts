import { fail, type Result, succeed } from '../../domain/result.ts';
import { ExaminationUnderWay, type UnfinishedDetermination } from '../../domain/sexing/determination.ts';
import type { ReadingsUnderWay } from '../records/sexing.ts';
import { outdated, type RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';

export function readingsUnderWayIn({ catalogue, ambient, damage }: RecordContext): ReadingsUnderWay {
  const underWay = decoder(
    'reading-under-way',
    ExaminationUnderWay,
    (row) => ({ ...row, exuviaId: row['id'], reading: row['body'] === null ? null : parseDocument(row['body']), photosGone: [] }),
    damage,
  );

  function get(exuviaId: string): Result<ExaminationUnderWay> {
    if (!catalogue.one('SELECT 1 FROM exuvia WHERE id = :exuviaId', { exuviaId })) {
      return fail({ code: 'not-found', what: 'exuvia', id: exuviaId });
    }
    const row = catalogue.one(
      'SELECT exuvia_id AS id, body, version, changed_at AS changedAt FROM reading_under_way WHERE exuvia_id = :exuviaId',
      { exuviaId },
    );
    if (!row) return succeed({ exuviaId, reading: null, version: 0, changedAt: null, photosGone: [] });
    const found = underWay.one(row, exuviaId);
    return found.ok ? succeed({ ...found.value, photosGone: photosGone(found.value.reading) }) : found;
  }

  function photosGone(reading: UnfinishedDetermination | null): string[] {
    const named = reading === null ? [] : [...reading.evidencePhotoIds, ...reading.pins.map(({ photoId }) => photoId)];
    return [...new Set(named)].filter((id) => !catalogue.one('SELECT 1 FROM photo WHERE id = :id', { id }));
  }

  function write(exuviaId: string, expectedVersion: number, reading: UnfinishedDetermination | null): number {
    const body = reading === null ? null : JSON.stringify(reading);
    const bindings = { exuviaId, body, at: ambient.now() };
    if (expectedVersion === 0) {
      return catalogue.run(
        `INSERT INTO reading_under_way (exuvia_id, body, version, changed_at) VALUES (:exuviaId, :body, 1, :at)
         ON CONFLICT (exuvia_id) DO NOTHING`,
        bindings,
      );
    }
    return catalogue.run(
      `UPDATE reading_under_way SET body = :body, version = version + 1, changed_at = :at
       WHERE exuvia_id = :exuviaId AND version = :expectedVersion`,
      { ...bindings, expectedVersion },
    );
  }

  return {
    get,
    begun: () => {
      const rows = catalogue.all('SELECT exuvia_id AS exuviaId FROM reading_under_way WHERE body IS NOT NULL');
      return new Set(rows.map(({ exuviaId }) => String(exuviaId)));
    },
    put: (exuviaId, expectedVersion, reading) =>
      catalogue.atomically(() => {
        const found = get(exuviaId);
        // One that can't be read may be written over: it holds nothing that anybody could go on with.
        if (!found.ok && found.failure.code !== 'archive-damaged') return found;
        return write(exuviaId, expectedVersion, reading) === 0 ? outdated('reading-under-way', exuviaId, found) : get(exuviaId);
      }),
    // The row stays, so that a page which still holds the old version cannot bring the reading back.
    finish: (exuviaId, expectedVersion) =>
      catalogue.atomically(() => {
        const found = get(exuviaId);
        if (!found.ok) return found;
        if (found.value.version !== expectedVersion) return outdated('reading-under-way', exuviaId, found);
        catalogue.run(
          `UPDATE reading_under_way SET body = NULL, version = version + 1, changed_at = :at
           WHERE exuvia_id = :exuviaId AND body IS NOT NULL`,
          { exuviaId, at: ambient.now() },
        );
        return succeed(undefined);
      }),
  };
}
