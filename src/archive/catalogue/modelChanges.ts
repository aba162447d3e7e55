import { fail, succeed } from '../../domain/result.ts';
import { ModelChange } from '../../domain/sexing/evidence/model.ts';
import type { ModelChanges } from '../records/sexing.ts';
import type { RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';

export function modelChangesIn({ catalogue, ambient, damage }: RecordContext): ModelChanges {
  const changes = decoder('model-change', ModelChange, (row) => ({ ...row, adjustments: parseDocument(row['adjustments']) }), damage);
  return {
    list: () =>
      changes.many(catalogue.all('SELECT revision AS id, revision, adjustments, note, by, at FROM model_change ORDER BY revision')),
    add: (expectedRevision, { adjustments, note, by }) =>
      catalogue.atomically(() => {
        const last = Number(catalogue.one('SELECT coalesce(max(revision), 0) AS last FROM model_change')?.['last']);
        if (last !== expectedRevision)
          return fail({ code: 'changed-meanwhile', what: 'evidence-model', id: 'evidence-model', version: last });
        const revision = last + 1;
        const at = ambient.now();
        catalogue.run('INSERT INTO model_change (revision, adjustments, note, by, at) VALUES (:revision, :adjustments, :note, :by, :at)', {
          revision,
          adjustments: JSON.stringify(adjustments),
          note,
          by,
          at,
        });
        return succeed({ revision, adjustments, note, by, at });
      }),
  };
}
