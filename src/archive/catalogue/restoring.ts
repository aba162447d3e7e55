import type { Restoration } from '../../domain/removal.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Bindings, Catalogue, Row } from './catalogue.ts';
import { GATHERED_TABLES, type Gathered, type GatheredTable } from './gathering.ts';
import { isMissingReference } from './sqliteRefusal.ts';

/** Takes gathered rows out, last first, so that nothing ever refers to a row that is gone. */
export function deleteGathered(catalogue: Catalogue, { rows, unassigned }: Gathered): void {
  for (const { id } of unassigned) {
    catalogue.run('UPDATE photo SET exuvia_id = NULL, specimen_id = NULL, version = version + 1 WHERE id = :id', { id: text(id) });
  }
  for (const table of GATHERED_TABLES.toReversed()) {
    for (const row of rows[table].toReversed()) deleteRow(catalogue, table, row);
  }
}

/** Puts gathered rows back. A photo that the keeper has given another subject meanwhile keeps the new one; the answer names it. */
export function insertGathered(catalogue: Catalogue, gathered: Gathered, removalId: string): Result<Restoration> {
  const taken = placeTaken(catalogue, gathered);
  if (!taken.ok) return taken;
  const { rows, unassigned } = withPhotosImportedAgain(catalogue, gathered);
  try {
    for (const table of GATHERED_TABLES) {
      for (const row of rows[table]) insertRow(catalogue, table, row);
    }
    for (const { id, exuvia_id, specimen_id } of unassigned) {
      catalogue.run(
        `UPDATE photo SET exuvia_id = :exuviaId, specimen_id = :specimenId, version = version + 1
         WHERE id = :id AND exuvia_id IS NULL AND specimen_id IS NULL`,
        { id: text(id), exuviaId: textOrNull(exuvia_id), specimenId: textOrNull(specimen_id) },
      );
    }
  } catch (error) {
    if (isMissingReference(error)) return fail({ code: 'removal-out-of-order', removalId });
    throw error;
  }
  return succeed({ photosElsewhere: unassigned.flatMap((photo) => elsewhere(catalogue, photo)) });
}

/** A photo that should have got its subject back and shows another one. */
function elsewhere(catalogue: Catalogue, { id, exuvia_id, specimen_id }: Row): Restoration['photosElsewhere'] {
  const row = catalogue.one(
    `SELECT photo.original_name AS originalName, specimen.code FROM photo
     LEFT JOIN exuvia ON exuvia.id = photo.exuvia_id
     LEFT JOIN molt ON molt.id = exuvia.molt_id
     JOIN specimen ON specimen.id = coalesce(photo.specimen_id, molt.specimen_id)
     WHERE photo.id = :id AND (photo.exuvia_id IS NOT :exuviaId OR photo.specimen_id IS NOT :specimenId)`,
    { id: text(id), exuviaId: textOrNull(exuvia_id), specimenId: textOrNull(specimen_id) },
  );
  return row ? [{ originalName: text(row['originalName']), code: text(row['code']) }] : [];
}

function placeTaken(catalogue: Catalogue, { rows }: Gathered): Result<null> {
  for (const { code, code_key } of rows.specimen) {
    if (catalogue.one('SELECT 1 FROM specimen WHERE code_key = :key', { key: text(code_key) })) {
      return fail({ code: 'code-taken', specimenCode: text(code) });
    }
  }
  for (const { molt_id } of rows.exuvia) {
    if (catalogue.one('SELECT 1 FROM exuvia WHERE molt_id = :moltId', { moltId: text(molt_id) })) {
      return fail({ code: 'skin-already-recorded', moltId: text(molt_id) });
    }
  }
  return succeed(null);
}

/**
 * The same bytes may have been imported again since: then their old readings and marks go to the photo that is there now.
 * Marks made on it in the meantime are the keeper's later word and stay.
 */
function withPhotosImportedAgain(catalogue: Catalogue, { rows, unassigned }: Gathered): Gathered {
  const replacedBy = new Map<unknown, string>();
  const marked = new Set<unknown>();
  for (const { id, sha256 } of rows.photo) {
    const again = catalogue.one(
      `SELECT id, EXISTS (SELECT 1 FROM calibration WHERE photo_id = photo.id) AS marked FROM photo WHERE sha256 = :sha256`,
      { sha256: text(sha256) },
    );
    if (!again) continue;
    replacedBy.set(id, text(again['id']));
    if (again['marked'] === 1) marked.add(id);
    else
      catalogue.run(`UPDATE revision SET id = :newId WHERE kind = 'calibration' AND id = :id`, { id: text(id), newId: text(again['id']) });
  }
  if (replacedBy.size === 0) return { rows, unassigned };
  const moved = (row: Row): Row => ({ ...row, photo_id: replacedBy.get(row['photo_id']) ?? row['photo_id'] });
  return {
    rows: {
      ...rows,
      photo: rows.photo.filter((row) => !replacedBy.has(row['id'])),
      calibration: rows.calibration.filter((row) => !marked.has(row['photo_id'])).map(moved),
      reading: rows.reading.map(moved),
      determination_evidence: rows.determination_evidence.map(moved),
      live_sign_photo: rows.live_sign_photo.map(moved),
    },
    unassigned: [
      ...unassigned,
      ...rows.photo.flatMap(({ id, exuvia_id, specimen_id }) =>
        replacedBy.has(id) ? [{ id: replacedBy.get(id), exuvia_id, specimen_id }] : [],
      ),
    ],
  };
}

function deleteRow(catalogue: Catalogue, table: GatheredTable, row: Row): void {
  if (table === 'calibration') {
    catalogue.run('DELETE FROM calibration WHERE photo_id = :photoId', { photoId: text(row['photo_id']) });
  } else if (table === 'reading_under_way') {
    catalogue.run('DELETE FROM reading_under_way WHERE exuvia_id = :id', { id: text(row['exuvia_id']) });
  } else if (table === 'live_sign_photo') {
    catalogue.run('DELETE FROM live_sign_photo WHERE live_sign_id = :id', { id: text(row['live_sign_id']) });
  } else if (table === 'determination_evidence') {
    catalogue.run('DELETE FROM determination_evidence WHERE determination_id = :id', { id: text(row['determination_id']) });
  } else {
    catalogue.run(`DELETE FROM ${table} WHERE id = :id`, { id: text(row['id']) });
  }
}

function insertRow(catalogue: Catalogue, table: GatheredTable, row: Row): void {
  const columns = Object.keys(row);
  const odd = columns.find((column) => !/^[a-z0-9_]+$/.test(column));
  if (odd !== undefined) throw new TypeError(`Expected a column name in a removed ${table} but received ${odd}`);
  catalogue.run(
    `INSERT INTO ${table} (${columns.join(', ')}) VALUES (${columns.map((column) => `:${column}`).join(', ')})`,
    Object.fromEntries(columns.map((column) => [column, bound(row[column])])) satisfies Bindings,
  );
}

function bound(value: unknown): string | number | null {
  if (typeof value === 'string' || typeof value === 'number' || value === null) return value;
  throw new TypeError(`Expected text, a number or null in a removed row but received ${typeof value}`);
}

function text(value: unknown): string {
  if (typeof value === 'string') return value;
  throw new TypeError(`Expected text in a removed row but received ${typeof value}`);
}

function textOrNull(value: unknown): string | null {
  return value === null ? null : text(value);
}
