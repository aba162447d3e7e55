import type { Instant } from '../../domain/dates.ts';
import type { Catalogue } from './catalogue.ts';
import { type Gathered, readGathered } from './gathering.ts';

/** A removal that cannot be read holds nothing any more, but must not stop what goes over all of them. */
const REMOVAL_BODY = "iif(json_valid(removal.body), removal.body, '{}')";

/**
 * Makes earlier removals final, with the saved states of what they took. Of removed photos the hashes are kept, so that
 * their originals can wait for the sweep's grace.
 */
export function finishRemovals(catalogue: Catalogue): void {
  for (const row of catalogue.all('SELECT id, body FROM removal')) {
    const gathered = readGathered(row['body']);
    if (!gathered) continue;
    const id = String(row['id']);
    purgeRevisions(catalogue, gathered);
    const photo = gathered.rows.photo.map(({ sha256 }) => ({ sha256: String(sha256) }));
    if (photo.length === 0) catalogue.run('DELETE FROM removal WHERE id = :id', { id });
    else catalogue.run('UPDATE removal SET body = :body WHERE id = :id', { id, body: JSON.stringify({ rows: { photo } }) });
  }
}

/** Forgets final removals from before a moment: the originals of their photos are no longer needed. */
export function forgetRemovals(catalogue: Catalogue, before: Instant): void {
  catalogue.run(`DELETE FROM removal WHERE at < :before AND ${REMOVAL_BODY} ->> '$.unassigned' IS NULL`, { before });
}

function purgeRevisions(catalogue: Catalogue, { rows }: Gathered): void {
  const gone = [
    ...(['specimen', 'molt', 'exuvia', 'reading'] as const).flatMap((kind) => rows[kind].map((row) => ({ kind, id: row['id'] }))),
    ...rows.calibration.map((row) => ({ kind: 'calibration', id: row['photo_id'] })),
  ];
  for (const { kind, id } of gone) catalogue.run('DELETE FROM revision WHERE kind = :kind AND id = :id', { kind, id: String(id) });
}

/** Hashes of all originals that must stay: of photos, of photos removed a short while ago, of imports half done. */
export function hashesNeeded(catalogue: Catalogue): ReadonlySet<string> {
  const rows = catalogue.all(
    `SELECT sha256 FROM photo
     UNION SELECT photo.value ->> 'sha256' FROM removal, json_each(${REMOVAL_BODY}, '$.rows.photo') AS photo
     UNION SELECT sha256 FROM planned_file WHERE outcome IS NULL AND sha256 IS NOT NULL`,
  );
  return new Set(rows.map((row) => String(row['sha256'])));
}

/** The sum of all ordinals given: SQLite keeps the last one of each table, whatever was deleted. */
export function recordsMade(catalogue: Catalogue): number {
  return Number(catalogue.one('SELECT coalesce(sum(seq), 0) AS made FROM sqlite_sequence')?.['made']);
}

/** Id and hash of every recorded photo. */
export function recordedOriginals(
  catalogue: Catalogue,
): readonly { readonly photoId: string; readonly sha256: string; readonly byteLength: number }[] {
  return catalogue.all('SELECT id, sha256, byte_length AS byteLength FROM photo ORDER BY ordinal').map((row) => ({
    photoId: String(row['id']),
    sha256: String(row['sha256']),
    byteLength: Number(row['byteLength']),
  }));
}
