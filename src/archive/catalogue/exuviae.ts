import { Exuvia, ExuviaDraft } from '../../domain/molting/exuvia.ts';
import { fail, type Result } from '../../domain/result.ts';
import type { Exuviae } from '../records/animals.ts';
import type { Bindings } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { decoder } from './decoding.ts';
import { keepRevision, revisionsOf } from './revisions.ts';

const SELECT = `SELECT exuvia.id, exuvia.molt_id AS moltId, exuvia.recovered, exuvia.grade, exuvia.completeness,
  exuvia.storage_place AS storagePlace, exuvia.notes, exuvia.version, exuvia.created_at AS createdAt FROM exuvia`;

function bindings(draft: ExuviaDraft): Bindings {
  return { ...draft, recovered: draft.recovered ? 1 : 0 };
}

export function exuviaeIn({ catalogue, ambient, damage }: RecordContext): Exuviae {
  const exuviae = decoder('exuvia', Exuvia, (row) => ({ ...row, recovered: row['recovered'] === 1 }), damage);

  function get(id: string): Result<Exuvia> {
    return exuviae.one(catalogue.one(`${SELECT} WHERE id = :id`, { id }), id);
  }

  return {
    get,
    create: (moltId, draft) =>
      catalogue.atomically(() => {
        if (!catalogue.one('SELECT 1 FROM molt WHERE id = :moltId', { moltId })) {
          return fail({ code: 'not-found', what: 'molt', id: moltId });
        }
        if (catalogue.one('SELECT 1 FROM exuvia WHERE molt_id = :moltId', { moltId })) {
          return fail({ code: 'skin-already-recorded', moltId });
        }
        const id = ambient.newId();
        const at = ambient.now();
        catalogue.run(
          `INSERT INTO exuvia (id, molt_id, recovered, grade, completeness, storage_place, notes, version, created_at)
           VALUES (:id, :moltId, :recovered, :grade, :completeness, :storagePlace, :notes, 1, :at)`,
          { ...bindings(draft), id, moltId, at },
        );
        keepRevision(catalogue, { kind: 'exuvia', id, version: 1, at, body: draft });
        return get(id);
      }),
    ofMolt: (moltId) => exuviae.many(catalogue.all(`${SELECT} WHERE molt_id = :moltId`, { moltId }))[0] ?? null,
    ofSpecimen: (specimenId) =>
      exuviae.many(
        catalogue.all(
          `${SELECT} JOIN molt ON molt.id = exuvia.molt_id WHERE molt.specimen_id = :specimenId
           ORDER BY molt.happened_from, molt.happened_to, molt.ordinal`,
          { specimenId },
        ),
      ),
    list: () => exuviae.many(catalogue.all(`${SELECT} ORDER BY exuvia.id`)),
    update: (id, expectedVersion, draft) =>
      catalogue.atomically(() => {
        const changed = catalogue.run(
          `UPDATE exuvia SET recovered = :recovered, grade = :grade, completeness = :completeness, storage_place = :storagePlace,
             notes = :notes, version = version + 1
           WHERE id = :id AND version = :expectedVersion`,
          { ...bindings(draft), id, expectedVersion },
        );
        if (changed === 0) return outdated('exuvia', id, get(id));
        keepRevision(catalogue, { kind: 'exuvia', id, version: expectedVersion + 1, at: ambient.now(), body: draft });
        return get(id);
      }),
    revisions: (id) => revisionsOf(catalogue, damage, { kind: 'exuvia', id, schema: ExuviaDraft }),
  };
}
