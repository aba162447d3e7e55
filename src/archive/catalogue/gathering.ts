import type { RemovableKind, RemovalCounts } from '../../domain/removal.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Catalogue, Row } from './catalogue.ts';
import { parseDocument } from './decoding.ts';

/** Tables that a removal can take rows from, each after those it refers to. */
export const GATHERED_TABLES = [
  'specimen',
  'molt',
  'exuvia',
  'photo',
  'calibration',
  'reading',
  'determination',
  'determination_evidence',
  'observation',
  'reading_under_way',
  'live_sign',
  'live_sign_photo',
  'forecast',
  'print_check',
] as const;
export type GatheredTable = (typeof GATHERED_TABLES)[number];

/** Whole rows as they stood, and which photos stay behind and what they showed. */
export interface Gathered {
  readonly rows: Readonly<Record<GatheredTable, readonly Row[]>>;
  readonly unassigned: readonly Row[];
}

interface Roots {
  readonly specimens?: readonly string[];
  readonly molts?: readonly string[];
  readonly exuviae?: readonly string[];
  readonly photos?: readonly string[];
  readonly readings?: readonly string[];
  readonly observations?: readonly string[];
  readonly printChecks?: readonly string[];
}

const ROOT_OF: Readonly<Record<RemovableKind, { readonly table: GatheredTable; readonly root: keyof Roots }>> = {
  specimen: { table: 'specimen', root: 'specimens' },
  molt: { table: 'molt', root: 'molts' },
  exuvia: { table: 'exuvia', root: 'exuviae' },
  photo: { table: 'photo', root: 'photos' },
  reading: { table: 'reading', root: 'readings' },
  observation: { table: 'observation', root: 'observations' },
  'print-check': { table: 'print_check', root: 'printChecks' },
};

const AMONG = 'IN (SELECT value FROM json_each(:ids))';

function idsOf(rows: readonly Row[]): readonly string[] {
  return rows.map((row) => String(row['id']));
}

/** Rows of a table whose column is among the ids, in the order they were made. */
function rowsWhere(catalogue: Catalogue, table: GatheredTable, column: string, ids: readonly string[]): readonly Row[] {
  if (ids.length === 0) return [];
  const order = hasOrdinal(table) ? 'ORDER BY ordinal' : '';
  return catalogue.all(`SELECT * FROM ${table} WHERE ${column} ${AMONG} ${order}`, { ids: JSON.stringify(ids) });
}

/** The others are found by what they belong to. */
function hasOrdinal(table: GatheredTable): boolean {
  return !['calibration', 'determination_evidence', 'reading_under_way', 'live_sign_photo'].includes(table);
}

function follow(catalogue: Catalogue, roots: Roots): Gathered {
  const specimen = rowsWhere(catalogue, 'specimen', 'id', roots.specimens ?? []);
  const molt = [
    ...rowsWhere(catalogue, 'molt', 'id', roots.molts ?? []),
    ...rowsWhere(catalogue, 'molt', 'specimen_id', roots.specimens ?? []),
  ];
  const exuvia = [...rowsWhere(catalogue, 'exuvia', 'id', roots.exuviae ?? []), ...rowsWhere(catalogue, 'exuvia', 'molt_id', idsOf(molt))];
  const determination = rowsWhere(catalogue, 'determination', 'exuvia_id', idsOf(exuvia));
  const liveSign = rowsWhere(catalogue, 'live_sign', 'specimen_id', idsOf(specimen));
  const photo = rowsWhere(catalogue, 'photo', 'id', roots.photos ?? []);
  const going = new Set(idsOf(photo));
  const losingTheirSubject = [
    ...rowsWhere(catalogue, 'photo', 'exuvia_id', idsOf(exuvia)),
    ...rowsWhere(catalogue, 'photo', 'specimen_id', idsOf(specimen)),
  ].filter((row) => !going.has(String(row['id'])));
  return {
    rows: {
      specimen,
      molt,
      exuvia,
      photo,
      calibration: rowsWhere(catalogue, 'calibration', 'photo_id', idsOf(photo)),
      reading: [
        ...rowsWhere(catalogue, 'reading', 'id', roots.readings ?? []),
        ...rowsWhere(catalogue, 'reading', 'photo_id', idsOf(photo)),
      ],
      determination,
      determination_evidence: rowsWhere(catalogue, 'determination_evidence', 'determination_id', idsOf(determination)),
      observation: [
        ...rowsWhere(catalogue, 'observation', 'id', roots.observations ?? []),
        ...rowsWhere(catalogue, 'observation', 'specimen_id', idsOf(specimen)),
      ],
      reading_under_way: rowsWhere(catalogue, 'reading_under_way', 'exuvia_id', idsOf(exuvia)),
      live_sign: liveSign,
      live_sign_photo: rowsWhere(catalogue, 'live_sign_photo', 'live_sign_id', idsOf(liveSign)),
      forecast: rowsWhere(catalogue, 'forecast', 'specimen_id', idsOf(specimen)),
      print_check: rowsWhere(catalogue, 'print_check', 'id', roots.printChecks ?? []),
    },
    unassigned: losingTheirSubject.map(({ id, exuvia_id, specimen_id }) => ({ id, exuvia_id, specimen_id })),
  };
}

/** Everything that goes with one record. Takes nothing yet. */
export function gather(catalogue: Catalogue, kind: RemovableKind, id: string): Result<Gathered> {
  const { table, root } = ROOT_OF[kind];
  const gathered = follow(catalogue, { [root]: [id] });
  if (gathered.rows[table].length === 0) return fail({ code: 'not-found', what: table.replace('_', ' '), id });
  const uses = kind === 'photo' ? evidenceUses(catalogue, id) : { determinations: 0, liveSigns: 0 };
  return uses.determinations + uses.liveSigns > 0 ? fail({ code: 'photo-in-use', photoId: id, ...uses }) : succeed(gathered);
}

function evidenceUses(catalogue: Catalogue, photoId: string): { readonly determinations: number; readonly liveSigns: number } {
  const row = catalogue.one(
    `SELECT (SELECT count(DISTINCT determination_id) FROM determination_evidence WHERE photo_id = :photoId) AS determinations,
       (SELECT count(DISTINCT live_sign_id) FROM live_sign_photo WHERE photo_id = :photoId) AS liveSigns`,
    { photoId },
  );
  return { determinations: Number(row?.['determinations']), liveSigns: Number(row?.['liveSigns']) };
}

/** The sample cabinet; a sample photo stays where a determination of the keeper's own leans on it. */
export function gatherSamples(catalogue: Catalogue): Gathered {
  const specimens = idsOf(catalogue.all('SELECT id FROM specimen WHERE sample = 1 ORDER BY ordinal'));
  const photos = idsOf(
    catalogue.all(
      `SELECT id FROM photo WHERE sample = 1 AND NOT EXISTS (
         SELECT 1 FROM determination_evidence AS evidence
         JOIN determination ON determination.id = evidence.determination_id
         JOIN exuvia ON exuvia.id = determination.exuvia_id
         JOIN molt ON molt.id = exuvia.molt_id
         JOIN specimen ON specimen.id = molt.specimen_id
         WHERE evidence.photo_id = photo.id AND specimen.sample = 0)
       AND NOT EXISTS (
         SELECT 1 FROM live_sign_photo AS shown
         JOIN live_sign ON live_sign.id = shown.live_sign_id
         JOIN specimen ON specimen.id = live_sign.specimen_id
         WHERE shown.photo_id = photo.id AND specimen.sample = 0)
       ORDER BY ordinal`,
    ),
  );
  return follow(catalogue, { specimens, photos });
}

export function countsOf({ rows, unassigned }: Gathered): RemovalCounts {
  return {
    specimens: rows.specimen.length,
    molts: rows.molt.length,
    exuviae: rows.exuvia.length,
    photos: rows.photo.length,
    photosUnassigned: unassigned.length,
    readings: rows.reading.length,
    determinations: rows.determination.length,
    observations: rows.observation.length,
    liveSigns: rows.live_sign.length,
  };
}

/** What a stored removal holds; null when it can't be read. */
export function readGathered(body: unknown): Gathered | null {
  const document = documentIn(body);
  if (!isRecord(document) || !isRecord(document['rows']) || !isRows(document['unassigned'])) return null;
  const rows = document['rows'];
  const tableRows = (table: GatheredTable): readonly Row[] => {
    const found = rows[table];
    return isRows(found) ? found : [];
  };
  return {
    rows: {
      specimen: tableRows('specimen'),
      molt: tableRows('molt'),
      exuvia: tableRows('exuvia'),
      photo: tableRows('photo'),
      calibration: tableRows('calibration'),
      reading: tableRows('reading'),
      determination: tableRows('determination'),
      determination_evidence: tableRows('determination_evidence'),
      observation: tableRows('observation'),
      reading_under_way: tableRows('reading_under_way'),
      live_sign: tableRows('live_sign'),
      live_sign_photo: tableRows('live_sign_photo'),
      forecast: tableRows('forecast'),
      print_check: tableRows('print_check'),
    },
    unassigned: document['unassigned'],
  };
}

/** A document that may be damaged; null when it is. */
export function documentIn(body: unknown): unknown {
  try {
    return parseDocument(body);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isRows(value: unknown): value is readonly Row[] {
  return Array.isArray(value) && value.every(isRecord);
}
