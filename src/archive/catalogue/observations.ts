import { Observation } from '../../domain/care/observation.ts';
import type { Result } from '../../domain/result.ts';
import type { Observations } from '../records/observations.ts';
import type { RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';
import { specimenExists } from './specimens.ts';

export const SELECT_OBSERVATIONS = `SELECT id, specimen_id AS specimenId, kind, at, utc_offset AS utcOffset, observer, note, source, span,
  recorded_at AS recordedAt FROM observation`;

/** Instants of one form, so that text in the order of the alphabet is in the order of time. */
const IN_TIME = 'ORDER BY specimen_id, at, ordinal';

export function observationDecoder(damage: DamageLog): Decoder<Observation> {
  return decoder(
    'observation',
    Observation,
    ({ at, utcOffset, source, span, ...row }) => ({
      ...row,
      moment: { at, offset: utcOffset },
      source: parseDocument(source),
      span: span === null ? null : parseDocument(span),
    }),
    damage,
  );
}

export function observationsIn(context: RecordContext): Observations {
  const { catalogue, ambient, damage } = context;
  const observations = observationDecoder(damage);

  function get(id: string): Result<Observation> {
    return observations.one(catalogue.one(`${SELECT_OBSERVATIONS} WHERE id = :id`, { id }), id);
  }

  return {
    get,
    append: (specimenId, draft) =>
      catalogue.atomically(() => {
        const known = specimenExists(context, specimenId);
        if (!known.ok) return known;
        const id = ambient.newId();
        catalogue.run(
          `INSERT INTO observation (id, specimen_id, kind, at, utc_offset, observer, note, source, span, recorded_at)
           VALUES (:id, :specimenId, :kind, :at, :utcOffset, :observer, :note, :source, :span, :recordedAt)`,
          {
            id,
            specimenId,
            kind: draft.kind,
            at: new Date(draft.moment.at).toISOString(),
            utcOffset: draft.moment.offset,
            observer: draft.observer,
            note: draft.note,
            source: JSON.stringify(draft.source),
            span: draft.span && JSON.stringify(draft.span),
            recordedAt: ambient.now(),
          },
        );
        return get(id);
      }),
    ofSpecimen: (specimenId) =>
      observations.many(catalogue.all(`${SELECT_OBSERVATIONS} WHERE specimen_id = :specimenId ${IN_TIME}`, { specimenId })),
    list: () => observations.many(catalogue.all(`${SELECT_OBSERVATIONS} ${IN_TIME}`)),
  };
}
