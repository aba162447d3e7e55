import type { Catalogue } from './catalogue.ts';
import { type Gathered, readGathered } from './gathering.ts';

/** Makes earlier removals final, with the saved states of what they took. */
export function purgeRemovals(catalogue: Catalogue): void {
  for (const row of catalogue.all('SELECT id, body FROM removal')) {
    const gathered = readGathered(row['body']);
    if (gathered) purgeRevisions(catalogue, gathered);
    catalogue.run('DELETE FROM removal WHERE id = :id', { id: String(row['id']) });
  }
}

function purgeRevisions(catalogue: Catalogue, { rows }: Gathered): void {
  const gone = [
    ...(['specimen', 'molt', 'exuvia', 'reading'] as const).flatMap((kind) => rows[kind].map((row) => ({ kind, id: row['id'] }))),
    ...rows.calibration.map((row) => ({ kind: 'calibration', id: row['photo_id'] })),
  ];
  for (const { kind, id } of gone) catalogue.run('DELETE FROM revision WHERE kind = :kind AND id = :id', { kind, id: String(id) });
}

/** Hashes of all originals that must stay: of photos, of removed photos that can still come back, of imports half done. */
export function hashesNeeded(catalogue: Catalogue): ReadonlySet<string> {
  const rows = catalogue.all(
    `SELECT sha256 FROM photo
     UNION SELECT photo.value ->> 'sha256' FROM removal, json_each(removal.body, '$.rows.photo') AS photo
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
