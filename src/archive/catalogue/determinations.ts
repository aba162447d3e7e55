import { fail, type Result, succeed } from '../../domain/result.ts';
import { Determination, type DeterminationDraft } from '../../domain/sexing/determination.ts';
import type { Determinations } from '../records/sexing.ts';
import type { Row } from './catalogue.ts';
import type { RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';

export const SELECT_DETERMINATIONS = `SELECT determination.id, determination.exuvia_id AS exuviaId, molt.specimen_id AS specimenId,
  determination.sex, determination.level, determination.reader, determination.read_on AS readOn, determination.checklist,
  determination.pins, determination.assessment, determination.notes, determination.supersedes, determination.signed_at AS signedAt, determination.withdrawn_at AS withdrawnAt,
  determination.withdrawn_reason AS withdrawnReason,
  (SELECT json_group_array(photo_id ORDER BY position) FROM determination_evidence
    WHERE determination_id = determination.id) AS evidencePhotoIds
  FROM determination JOIN exuvia ON exuvia.id = determination.exuvia_id JOIN molt ON molt.id = exuvia.molt_id`;

function shape(row: Row): unknown {
  const { withdrawnAt, withdrawnReason, ...columns } = row;
  return {
    ...columns,
    checklist: parseDocument(row['checklist']),
    pins: parseDocument(row['pins']),
    assessment: parseDocument(row['assessment']),
    evidencePhotoIds: parseDocument(row['evidencePhotoIds']),
    withdrawn: withdrawnAt === null ? null : { at: withdrawnAt, reason: withdrawnReason },
  };
}

export function determinationDecoder(damage: DamageLog): Decoder<Determination> {
  return decoder('determination', Determination, shape, damage);
}

export function determinationsIn({ catalogue, ambient, damage }: RecordContext): Determinations {
  const determinations = determinationDecoder(damage);

  function get(id: string): Result<Determination> {
    return determinations.one(catalogue.one(`${SELECT_DETERMINATIONS} WHERE determination.id = :id`, { id }), id);
  }

  function missingTarget(exuviaId: string, draft: DeterminationDraft): Result<null> {
    if (!catalogue.one('SELECT 1 FROM exuvia WHERE id = :exuviaId', { exuviaId })) {
      return fail({ code: 'not-found', what: 'exuvia', id: exuviaId });
    }
    for (const photoId of draft.evidencePhotoIds) {
      if (!catalogue.one('SELECT 1 FROM photo WHERE id = :photoId', { photoId })) {
        return fail({ code: 'not-found', what: 'photo', id: photoId });
      }
    }
    const earlier = draft.supersedes;
    if (
      earlier !== null &&
      !catalogue.one('SELECT 1 FROM determination WHERE id = :earlier AND exuvia_id = :exuviaId', { earlier, exuviaId })
    ) {
      return fail({ code: 'not-found', what: 'determination', id: earlier });
    }
    return succeed(null);
  }

  return {
    get,
    sign: (exuviaId, draft, assessment) =>
      catalogue.atomically(() => {
        const targets = missingTarget(exuviaId, draft);
        if (!targets.ok) return targets;
        const id = ambient.newId();
        const { sex, level, reader, readOn, notes, supersedes } = draft;
        catalogue.run(
          `INSERT INTO determination (id, exuvia_id, sex, level, reader, read_on, checklist, pins, assessment, notes, supersedes, signed_at)
           VALUES (:id, :exuviaId, :sex, :level, :reader, :readOn, :checklist, :pins, :assessment, :notes, :supersedes, :at)`,
          {
            ...{ id, exuviaId, sex, level, reader, readOn, notes, supersedes, at: ambient.now() },
            checklist: JSON.stringify(draft.checklist),
            pins: JSON.stringify(draft.pins),
            assessment: JSON.stringify(assessment),
          },
        );
        for (const [position, photoId] of draft.evidencePhotoIds.entries()) {
          catalogue.run('INSERT INTO determination_evidence (determination_id, position, photo_id) VALUES (:id, :position, :photoId)', {
            id,
            position,
            photoId,
          });
        }
        return get(id);
      }),
    ofSpecimen: (specimenId) =>
      determinations.many(
        catalogue.all(`${SELECT_DETERMINATIONS} WHERE molt.specimen_id = :specimenId ORDER BY determination.ordinal`, { specimenId }),
      ),
    ofExuvia: (exuviaId) =>
      determinations.many(
        catalogue.all(`${SELECT_DETERMINATIONS} WHERE determination.exuvia_id = :exuviaId ORDER BY determination.ordinal`, { exuviaId }),
      ),
    withdraw: (id, reason) =>
      catalogue.atomically(() => {
        const found = get(id);
        if (!found.ok) return found;
        if (found.value.withdrawn) return fail({ code: 'already-withdrawn', id });
        catalogue.run('UPDATE determination SET withdrawn_at = :at, withdrawn_reason = :reason WHERE id = :id', {
          id,
          reason,
          at: ambient.now(),
        });
        return get(id);
      }),
  };
}
