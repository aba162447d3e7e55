import { isStage, MoltStage, type ObservationKind } from '../../domain/care/observation.ts';
import { type Result, succeed } from '../../domain/result.ts';
import { signsOfAnimal } from '../../domain/sexing/live/animalFacts.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { Cabinet, CabinetEntry, MeasuredSkin } from '../records/animals.ts';
import { calibrationDecoder, SELECT_CALIBRATIONS } from './calibrations.ts';
import type { Row } from './catalogue.ts';
import type { RecordContext } from './context.ts';
import { determinationDecoder, SELECT_DETERMINATIONS } from './determinations.ts';
import { liveSignDecoder, SELECT_LIVE_SIGNS, worthOfHooksIn } from './liveSigns.ts';
import { moltDecoder, OLDEST_MOLT_FIRST, SELECT_MOLTS } from './molts.ts';
import { observationDecoder, SELECT_OBSERVATIONS } from './observations.ts';
import { photoDecoder, SELECT_PHOTOS } from './photos.ts';
import { readingDecoder, SELECT_READINGS } from './readings.ts';
import { SELECT_SPECIMENS, specimenDecoder } from './specimens.ts';

const LATEST_MOLT_FIRST = 'molt.happened_from DESC, molt.happened_to DESC, molt.ordinal DESC';

/** Notes of a watch that tell an animal is grown, or of a molt. */
const NOTES_READ: readonly ObservationKind[] = ['sperm-web', 'egg-sac', 'mature', ...MoltStage.options];

function quoted(words: readonly string[]): string {
  return words.map((word) => `'${word}'`).join(', ');
}

/** A landmark that carries a point. */
function hasPoint(landmark: string): string {
  return `reading.landmarks ->> '$."${landmark}".state' IN ('placed', 'regenerated')`;
}

/** For each animal: the skin that tells its last known size, and the photo that stands for it. */
const SELECT_HIGHLIGHTS = `SELECT specimen.id AS specimenId,
  (SELECT exuvia.id FROM molt
    JOIN exuvia ON exuvia.molt_id = molt.id
    JOIN photo ON photo.exuvia_id = exuvia.id
    JOIN calibration ON calibration.photo_id = photo.id AND calibration.marks IS NOT NULL
    JOIN reading ON reading.photo_id = photo.id
    WHERE molt.specimen_id = specimen.id AND ${hasPoint('carapace-front')} AND ${hasPoint('carapace-rear')}
    ORDER BY ${LATEST_MOLT_FIRST} LIMIT 1) AS exuviaId,
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

export function cabinetIn(context: RecordContext): Cabinet {
  const { catalogue, damage } = context;
  const withWorth = worthOfHooksIn(context);
  const specimens = specimenDecoder(damage);
  const molts = moltDecoder(damage);
  const determinations = determinationDecoder(damage);
  const liveSigns = liveSignDecoder(damage);
  const observations = observationDecoder(damage);
  const photos = photoDecoder(damage);
  const calibrations = calibrationDecoder(damage);
  const readings = readingDecoder(damage);

  /** Everything the sizes of these animals' last measured skins rest on, by the skin's id. */
  function measuredSkins(highlights: readonly Row[]): ReadonlyMap<string, MeasuredSkin> {
    const ids = JSON.stringify(highlights.flatMap((row) => (row['exuviaId'] === null ? [] : [row['exuviaId']])));
    const wanted = 'IN (SELECT value FROM json_each(:ids))';
    const moltOf = new Map(
      catalogue.all(`SELECT id, molt_id AS moltId FROM exuvia WHERE id ${wanted}`, { ids }).map((row) => [row['id'], row['moltId']]),
    );
    const found = photos.many(catalogue.all(`${SELECT_PHOTOS} WHERE photo.exuvia_id ${wanted} ORDER BY photo.ordinal`, { ids }));
    const photoIds = JSON.stringify(found.map((photo) => photo.id));
    const calibrationOf = indexedBy(
      calibrations.many(
        catalogue.all(`${SELECT_CALIBRATIONS} WHERE calibration.marks IS NOT NULL AND calibration.photo_id ${wanted}`, { ids: photoIds }),
      ),
      (calibration) => calibration.photoId,
    );
    const readingsOf = groupedBy(
      readings.many(
        catalogue.all(`${SELECT_READINGS} WHERE reading.photo_id ${wanted} ORDER BY reading.pass, reading.ordinal`, { ids: photoIds }),
      ),
      (reading) => reading.photoId,
    );
    const measured = found.flatMap((photo) => {
      const calibration = calibrationOf.get(photo.id);
      return calibration ? [{ photo, calibration, readings: readingsOf.get(photo.id) ?? [] }] : [];
    });
    const bySkin = groupedBy(measured, ({ photo: { subject } }) => (subject.kind === 'skin' ? subject.exuviaId : ''));
    return new Map(
      [...bySkin].map(([exuviaId, photosOfSkin]) => [exuviaId, { moltId: String(moltOf.get(exuviaId)), photos: photosOfSkin }]),
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
    const liveSignsOf = groupedBy(
      liveSigns.many(catalogue.all(`${SELECT_LIVE_SIGNS} ${where('live_sign.specimen_id')} ORDER BY live_sign.ordinal`, bindings)),
      (sign) => sign.specimenId,
    );
    const ofAnimal = only === 'all' ? '' : 'AND specimen_id = :specimenId';
    const notes = observations.many(
      catalogue.all(`${SELECT_OBSERVATIONS} WHERE kind IN (${quoted(NOTES_READ)}) ${ofAnimal} ORDER BY ordinal`, bindings),
    );
    const adultNotesOf = groupedBy(
      notes.filter(({ kind }) => !isStage(kind)),
      (seen) => seen.specimenId,
    );
    const stageNotesOf = groupedBy(
      notes.filter(({ kind }) => isStage(kind)),
      (seen) => seen.specimenId,
    );
    const highlights = catalogue.all(`${SELECT_HIGHLIGHTS} ${where('specimen.id')}`, bindings);
    const highlightOf = indexedBy(highlights, (row) => String(row['specimenId']));
    const measured = measuredSkins(highlights);
    return found.map((specimen) => {
      const highlight = highlightOf.get(specimen.id);
      const cover = highlight?.['coverPhotoId'];
      return {
        specimen,
        molts: moltsOf.get(specimen.id) ?? [],
        determinations: determinationsOf.get(specimen.id) ?? [],
        liveSigns: signsOfAnimal((liveSignsOf.get(specimen.id) ?? []).map(withWorth), adultNotesOf.get(specimen.id) ?? []),
        adultNotes: adultNotesOf.get(specimen.id) ?? [],
        stageNotes: stageNotesOf.get(specimen.id) ?? [],
        lastMeasured: measured.get(String(highlight?.['exuviaId'])) ?? null,
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
