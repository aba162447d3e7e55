import type { Revision } from '../records/revision.ts';
import type { Catalogue } from './catalogue.ts';
import { type DamageLog, decoder, parseDocument, type Schema } from './decoding.ts';

export type RevisedKind = 'specimen' | 'molt' | 'exuvia' | 'calibration' | 'reading';

/** Keeps one saved state of a record; call it in the transaction that saves. */
export function keepRevision(
  catalogue: Catalogue,
  revision: { readonly kind: RevisedKind; readonly id: string; readonly version: number; readonly at: string; readonly body: unknown },
): void {
  catalogue.run('INSERT INTO revision (kind, id, version, at, body) VALUES (:kind, :id, :version, :at, :body)', {
    ...revision,
    body: JSON.stringify(revision.body),
  });
}

/** Every saved state of a record, oldest first. */
export function revisionsOf<Body>(
  catalogue: Catalogue,
  damage: DamageLog,
  record: { readonly kind: RevisedKind; readonly id: string; readonly schema: Schema<Body> },
): readonly Revision<Body>[] {
  const bodies = decoder(`revision of ${record.kind}`, record.schema, (row) => parseDocument(row['body']), damage);
  const rows = catalogue.all('SELECT id, version, at, body FROM revision WHERE kind = :kind AND id = :id ORDER BY version', {
    kind: record.kind,
    id: record.id,
  });
  return rows.flatMap((row) => {
    const body = bodies.one(row, record.id);
    return body.ok ? [{ version: Number(row['version']), at: String(row['at']), body: body.value }] : [];
  });
}
