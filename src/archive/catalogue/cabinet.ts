import { type Result, succeed } from '../../domain/result.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { Cabinet, CabinetEntry } from '../records/animals.ts';
import { calibrationDecoder, SELECT_CALIBRATIONS } from './calibrations.ts';
import type { Row } from './catalogue.ts';
import type { RecordContext } from './context.ts';
import { determinationDecoder, SELECT_DETERMINATIONS } from './determinations.ts';
import { moltDecoder, OLDEST_MOLT_FIRST, SELECT_MOLTS } from './molts.ts';
import { photoDecoder, SELECT_PHOTOS } from './photos.ts';
import { readingDecoder, SELECT_READINGS } from './readings.ts';
import { SELECT_SPECIMENS, specimenDecoder } from './specimens.ts';

const LATEST_MOLT_FIRST = 'molt.happened_from DESC, molt.happened_to DESC, molt.ordinal DESC';

/** A landmark that carries a point. */
function hasPoint(landmark: string): string {
  return `reading.landmarks ->> '$."${landmark}".state' IN ('placed', 'regenerated')`;
}

/** For each animal: the reading that tells its last known size, and the photo that stands for it. */
const SELECT_HIGHLIGHTS = `SELECT specimen.id AS specimenId,
  (SELECT reading.id FROM molt
    JOIN exuvia ON exuvia.molt_id = molt.id
    JOIN photo ON photo.exuvia_id = exuvia.id
    JOIN calibration ON calibration.photo_id = photo.id AND calibration.marks IS NOT NULL
    JOIN reading ON reading.photo_id = photo.id
    WHERE molt.specimen_id = specimen.id AND ${hasPoint('carapace-front')} AND ${hasPoint('carapace-rear')}
    ORDER BY ${LATEST_MOLT_FIRST}, reading.changed_at DESC, reading.ordinal DESC LIMIT 1) AS readingId,
  coalesce(
    (SELECT photo.id FROM photo WHERE photo.specimen_id = specimen.id ORDER BY photo.taken_on DESC, photo.ordinal DESC LIMIT 1),
    (SELECT photo.id FROM molt
      JOIN exuvia ON exuvia.molt_id = molt.id
      JOIN photo ON photo.exuvia_id = exuvia.id
      WHERE molt.specimen_id = specimen.id
      ORDER BY ${LATEST_MOLT_FIRST}, photo.view = 'dorsal' DESC, photo.ordinal DESC LIMIT 1)
  ) AS coverPhotoId
  FROM specimen`;

function groupedBy<Value>(values: readonly Value[], keyOf: (value: Value) => string): ReadonlyMap<string, readonly Value[]> {
  return Map.groupBy(values, keyOf);
}

function indexedBy<Value>(values: readonly Value[], keyOf: (value: Value) => string): ReadonlyMap<string, Value> {
  return new Map(values.map((value) => [keyOf(value), value]));
}

export function cabinetIn({ catalogue, damage }: RecordContext): Cabinet {
  const specimens = specimenDecoder(damage);
  const molts = moltDecoder(damage);
  const determinations = determinationDecoder(damage);
  const photos = photoDecoder(damage);
  const calibrations = calibrationDecoder(damage);
  const readings = readingDecoder(damage);

  /** Everything the measured sizes of these animals rest on, by the reading's id. */
  function measurements(highlights: readonly Row[]): ReadonlyMap<string, NonNullable<CabinetEntry['lastMeasured']>> {
    const ids = JSON.stringify(highlights.flatMap((row) => (row['readingId'] === null ? [] : [row['readingId']])));
    const wanted = 'IN (SELECT value FROM json_each(:ids))';
    const found = readings.many(catalogue.all(`${SELECT_READINGS} WHERE reading.id ${wanted}`, { ids }));
    const photoIds = JSON.stringify(found.map((reading) => reading.photoId));
    const photoOf = indexedBy(
      photos.many(catalogue.all(`${SELECT_PHOTOS} WHERE photo.id ${wanted}`, { ids: photoIds })),
      (photo) => photo.id,
    );
    const calibrationOf = indexedBy(
      calibrations.many(catalogue.all(`${SELECT_CALIBRATIONS} WHERE calibration.photo_id ${wanted}`, { ids: photoIds })),
      (calibration) => calibration.photoId,
    );
    return new Map(
      found.flatMap((reading) => {
        const photo = photoOf.get(reading.photoId);
        const calibration = calibrationOf.get(reading.photoId);
        return photo && calibration ? [[reading.id, { photo, calibration, reading }] as const] : [];
      }),
    );
  }

  function entriesOf(found: readonly Specimen[], only: 'all' | { readonly specimenId: string }): readonly CabinetEntry[] {
    const bindings = only === 'all' ? {} : only;
    const where = (column: string) => (only === 'all' ? '' : `WHERE ${column} = :specimenId`);
    const moltsOf = groupedBy(
      molts.many(catalogue.all(`${SELECT_MOLTS} ${where('specimen_id')} ${OLDEST_MOLT_FIRST}`, bindings)),
      (molt) => molt.specimenId,
    );
    const determinationsOf = groupedBy(
      determinations.many(catalogue.all(`${SELECT_DETERMINATIONS} ${where('molt.specimen_id')} ORDER BY determination.ordinal`, bindings)),
      (determination) => determination.specimenId,
    );
    const highlights = catalogue.all(`${SELECT_HIGHLIGHTS} ${where('specimen.id')}`, bindings);
    const highlightOf = indexedBy(highlights, (row) => String(row['specimenId']));
    const measured = measurements(highlights);
    return found.map((specimen) => {
      const highlight = highlightOf.get(specimen.id);
      const cover = highlight?.['coverPhotoId'];
      return {
        specimen,
        molts: moltsOf.get(specimen.id) ?? [],
        determinations: determinationsOf.get(specimen.id) ?? [],
        lastMeasured: measured.get(String(highlight?.['readingId'])) ?? null,
        coverPhotoId: typeof cover === 'string' ? cover : null,
      };
    });
  }

  return {
    entries: () => entriesOf(specimens.many(catalogue.all(`${SELECT_SPECIMENS} ORDER BY code_key`)), 'all'),
    entry(specimenId): Result<CabinetEntry> {
      const specimen = specimens.one(catalogue.one(`${SELECT_SPECIMENS} WHERE id = :specimenId`, { specimenId }), specimenId);
      if (!specimen.ok) return specimen;
      const [entry] = entriesOf([specimen.value], { specimenId });
      return entry ? succeed(entry) : { ok: false, failure: { code: 'not-found', what: 'specimen', id: specimenId } };
    },
  };
}
