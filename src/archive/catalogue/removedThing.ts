import { type RemovableKind, RemovedThing } from '../../domain/removal.ts';
import type { Catalogue } from './catalogue.ts';
import { documentIn, isRecord } from './gathering.ts';

const MOLT_OF = 'molt.happened_from AS happenedFrom, molt.happened_to AS happenedTo, specimen.code';

const SELECTS: Readonly<Record<RemovableKind, string>> = {
  specimen: 'SELECT code FROM specimen WHERE id = :id',
  molt: `SELECT ${MOLT_OF} FROM molt JOIN specimen ON specimen.id = molt.specimen_id WHERE molt.id = :id`,
  exuvia: `SELECT ${MOLT_OF} FROM exuvia JOIN molt ON molt.id = exuvia.molt_id JOIN specimen ON specimen.id = molt.specimen_id
    WHERE exuvia.id = :id`,
  photo: 'SELECT original_name AS originalName FROM photo WHERE id = :id',
  reading: `SELECT photo.original_name AS originalName, reading.pass FROM reading JOIN photo ON photo.id = reading.photo_id
    WHERE reading.id = :id`,
  observation: `SELECT specimen.code, observation.kind AS seen, observation.at, observation.utc_offset AS utcOffset FROM observation
    JOIN specimen ON specimen.id = observation.specimen_id WHERE observation.id = :id`,
  'print-check': 'SELECT printer, checked_on AS checkedOn FROM print_check WHERE id = :id',
};

/** What a record is called, while it is still there; the record must exist. */
export function thingOf(catalogue: Catalogue, kind: RemovableKind, id: string): RemovedThing {
  return RemovedThing.parse({ ...catalogue.one(SELECTS[kind], { id }), kind });
}

/** What a stored removal took; null when it can't be read, and for one that is final. */
export function readThing(body: unknown): RemovedThing | null {
  const document = documentIn(body);
  return isRecord(document) ? (RemovedThing.safeParse(document['thing']).data ?? null) : null;
}
