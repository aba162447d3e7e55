import { fail, type Result, succeed } from '../../domain/result.ts';
import { profileFor } from '../../domain/sexing/genus/find.ts';
import { hooksSpeak } from '../../domain/sexing/genus/profile.ts';
import { LiveSign, type LiveSignDraft } from '../../domain/sexing/live/liveSign.ts';
import type { LiveSigns } from '../records/sexing.ts';
import type { Row } from './catalogue.ts';
import type { RecordContext } from './context.ts';
import { type DamageLog, type Decoder, decoder, parseDocument } from './decoding.ts';
import { genusEditsIn } from './genusEdits.ts';

export const SELECT_LIVE_SIGNS = `SELECT live_sign.id, live_sign.specimen_id AS specimenId, live_sign.finding, live_sign.seen_on AS seenOn,
  live_sign.observer, live_sign.notes, live_sign.signed_at AS signedAt, live_sign.withdrawn_at AS withdrawnAt,
  live_sign.withdrawn_reason AS withdrawnReason,
  (SELECT json_group_array(photo_id ORDER BY position) FROM live_sign_photo WHERE live_sign_id = live_sign.id) AS photoIds
  FROM live_sign`;

function shape(row: Row): unknown {
  const { withdrawnAt, withdrawnReason, ...columns } = row;
  return {
    ...columns,
    finding: parseDocument(row['finding']),
    photoIds: parseDocument(row['photoIds']),
    withdrawn: withdrawnAt === null ? null : { at: withdrawnAt, reason: withdrawnReason },
  };
}

export function liveSignDecoder(damage: DamageLog): Decoder<LiveSign> {
  return decoder('live-sign', LiveSign, shape, damage);
}

/** Adds to hooks what they are worth in the genus that the animal is filed under now. */
export function worthOfHooksIn(context: RecordContext): (sign: LiveSign) => LiveSign {
  const edits = genusEditsIn(context);
  return (sign) => {
    if (sign.finding.kind !== 'tibial-hooks') return sign;
    const row = context.catalogue.one('SELECT taxon FROM specimen WHERE id = :id', { id: sign.specimenId });
    const { hooks } = profileFor(String(row?.['taxon'] ?? ''), { shipped: context.genera, edits: edits.list() });
    return { ...sign, hooksSpeak: hooksSpeak(hooks.state) };
  };
}

export function liveSignsIn(context: RecordContext): LiveSigns {
  const { catalogue, ambient, damage } = context;
  const liveSigns = liveSignDecoder(damage);
  const withWorth = worthOfHooksIn(context);

  function get(id: string): Result<LiveSign> {
    const found = liveSigns.one(catalogue.one(`${SELECT_LIVE_SIGNS} WHERE live_sign.id = :id`, { id }), id);
    return found.ok ? succeed(withWorth(found.value)) : found;
  }

  function missingTarget(specimenId: string, { photoIds }: LiveSignDraft): Result<null> {
    if (!catalogue.one('SELECT 1 FROM specimen WHERE id = :specimenId', { specimenId })) {
      return fail({ code: 'not-found', what: 'specimen', id: specimenId });
    }
    for (const photoId of photoIds) {
      if (!catalogue.one('SELECT 1 FROM photo WHERE id = :photoId', { photoId })) {
        return fail({ code: 'not-found', what: 'photo', id: photoId });
      }
    }
    return succeed(null);
  }

  return {
    get,
    sign: (specimenId, draft) =>
      catalogue.atomically(() => {
        const targets = missingTarget(specimenId, draft);
        if (!targets.ok) return targets;
        const id = ambient.newId();
        const { seenOn, observer, notes } = draft;
        catalogue.run(
          `INSERT INTO live_sign (id, specimen_id, finding, seen_on, observer, notes, signed_at)
           VALUES (:id, :specimenId, :finding, :seenOn, :observer, :notes, :at)`,
          { id, specimenId, finding: JSON.stringify(draft.finding), seenOn, observer, notes, at: ambient.now() },
        );
        for (const [position, photoId] of draft.photoIds.entries()) {
          catalogue.run('INSERT INTO live_sign_photo (live_sign_id, position, photo_id) VALUES (:id, :position, :photoId)', {
            id,
            position,
            photoId,
          });
        }
        return get(id);
      }),
    ofSpecimen: (specimenId) =>
      liveSigns
        .many(catalogue.all(`${SELECT_LIVE_SIGNS} WHERE live_sign.specimen_id = :specimenId ORDER BY live_sign.ordinal`, { specimenId }))
        .map(withWorth),
    withdraw: (id, reason) =>
      catalogue.atomically(() => {
        const found = get(id);
        if (!found.ok) return found;
        if (found.value.withdrawn) return fail({ code: 'already-withdrawn', id });
        catalogue.run('UPDATE live_sign SET withdrawn_at = :at, withdrawn_reason = :reason WHERE id = :id', {
          id,
          reason,
          at: ambient.now(),
        });
        return get(id);
      }),
  };
}
