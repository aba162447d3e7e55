import { Molt, MoltDraft } from '../../domain/molting/molt.ts';
import type { Result } from '../../domain/result.ts';
import type { Molts } from '../records/animals.ts';
import type { Bindings } from './catalogue.ts';
import { outdated, type RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';
import { keepRevision, revisionsOf } from './revisions.ts';
import { specimenExists } from './specimens.ts';

export const SELECT_MOLTS = `SELECT id, specimen_id AS specimenId, happened_from AS happenedFrom, happened_to AS happenedTo,
  instar_shed AS instarShed, position, outcomes, notes, version, created_at AS createdAt FROM molt`;

export const OLDEST_MOLT_FIRST = 'ORDER BY molt.specimen_id, molt.happened_from, molt.happened_to, molt.ordinal';

export function moltDecoder(damage: DamageLog): Decoder<Molt> {
  return decoder('molt', Molt, (row) => ({ ...row, outcomes: parseDocument(row['outcomes']) }), damage);
}

function bindings(draft: MoltDraft): Bindings {
  return { ...draft, outcomes: JSON.stringify(draft.outcomes) };
}

export function moltsIn(context: RecordContext): Molts {
  const { catalogue, ambient, damage } = context;
  const molts = moltDecoder(damage);

  function get(id: string): Result<Molt> {
    return molts.one(catalogue.one(`${SELECT_MOLTS} WHERE id = :id`, { id }), id);
  }

  return {
    get,
    create: (specimenId, draft) =>
      catalogue.atomically(() => {
        const known = specimenExists(context, specimenId);
        if (!known.ok) return known;
        const id = ambient.newId();
        const at = ambient.now();
        catalogue.run(
          `INSERT INTO molt (id, specimen_id, happened_from, happened_to, instar_shed, position, outcomes, notes, version, created_at)
           VALUES (:id, :specimenId, :happenedFrom, :happenedTo, :instarShed, :position, :outcomes, :notes, 1, :at)`,
          { ...bindings(draft), id, specimenId, at },
        );
        keepRevision(catalogue, { kind: 'molt', id, version: 1, at, body: draft });
        return get(id);
      }),
    ofSpecimen: (specimenId) =>
      molts.many(catalogue.all(`${SELECT_MOLTS} WHERE specimen_id = :specimenId ${OLDEST_MOLT_FIRST}`, { specimenId })),
    update: (id, expectedVersion, draft) =>
      catalogue.atomically(() => {
        const changed = catalogue.run(
          `UPDATE molt SET happened_from = :happenedFrom, happened_to = :happenedTo, instar_shed = :instarShed,
             position = :position, outcomes = :outcomes, notes = :notes, version = version + 1
           WHERE id = :id AND version = :expectedVersion`,
          { ...bindings(draft), id, expectedVersion },
        );
        if (changed === 0) return outdated('molt', id, get(id));
        keepRevision(catalogue, { kind: 'molt', id, version: expectedVersion + 1, at: ambient.now(), body: draft });
        return get(id);
      }),
    revisions: (id) => revisionsOf(catalogue, damage, { kind: 'molt', id, schema: MoltDraft }),
  };
}
