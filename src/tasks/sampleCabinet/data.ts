import { z } from 'zod';
import { ObservationDraft } from '../../domain/care/observation.ts';
import { ScaleMarks } from '../../domain/measuring/calibration.ts';
import { ReadingDraft } from '../../domain/measuring/reading.ts';
import { ExuviaDraft } from '../../domain/molting/exuvia.ts';
import { MoltDraft } from '../../domain/molting/molt.ts';
import { PhotoView } from '../../domain/photo/photo.ts';
import { DeterminationDraft, EvidencePin } from '../../domain/sexing/determination.ts';
import { LiveSignDraft } from '../../domain/sexing/live/liveSign.ts';
import { SpecimenDraft } from '../../domain/specimen/specimen.ts';
import { DrawnSkin } from './drawnSkin.ts';

/** Days from the day on which the sample is taken in; none lies after it. */
const DayOffset = z.int().min(-10_000).max(0);

/** What is still going on counts back from the moment of taking in; the rest has its day and hour. */
const SampleMoment = z.union([
  z.object({ minutesBefore: z.int().min(0) }),
  z.object({ day: DayOffset.max(-1), clock: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/) }),
]);
export type SampleMoment = z.infer<typeof SampleMoment>;

const OfPhoto = { takenOn: DayOffset, notes: z.string() };

/** A rendered photo in `photos/`. */
const SamplePhotoFile = z.object({
  ...OfPhoto,
  kind: z.literal('file'),
  file: z.string().regex(/^[\w-]+\.jpg$/),
  view: PhotoView,
  marks: ScaleMarks.nullable(),
  reading: ReadingDraft.nullable(),
});

/** A drawing to scale of a skin from above, made while the sample is taken in and measured like a photo. */
const SampleDrawing = z.object({ ...OfPhoto, kind: z.literal('drawing'), file: z.string().regex(/^[\w-]+\.png$/), skin: DrawnSkin });

const SamplePhoto = z.discriminatedUnion('kind', [SamplePhotoFile, SampleDrawing]);
export type SamplePhoto = z.infer<typeof SamplePhoto>;

const SampleDetermination = DeterminationDraft.omit({ evidencePhotoIds: true, pins: true, supersedes: true }).extend({
  readOn: DayOffset,
  evidence: z.array(z.string()).describe('File names of photos of the same animal'),
  pins: z.array(EvidencePin.omit({ photoId: true }).extend({ file: z.string() })),
  withdrawnBecause: z.string().nullable(),
});
export type SampleDetermination = z.infer<typeof SampleDetermination>;

const SampleMolt = z.object({
  molt: MoltDraft.extend({ happenedFrom: DayOffset, happenedTo: DayOffset }),
  exuvia: ExuviaDraft.nullable(),
  photos: z.array(SamplePhoto),
  determinations: z.array(SampleDetermination),
});
export type SampleMolt = z.infer<typeof SampleMolt>;

const SampleLiveSign = LiveSignDraft.omit({ photoIds: true }).extend({
  seenOn: DayOffset,
  cameWithLastMolt: z.boolean().describe('Names the last molt as the one that brought the bulbs'),
});
export type SampleLiveSign = z.infer<typeof SampleLiveSign>;

const SampleObservation = z.object({ ...ObservationDraft.shape, moment: SampleMoment }).omit({ source: true, observer: true });

const SampleSpecimen = z.object({
  specimen: SpecimenDraft.extend({ acquiredOn: DayOffset.nullable(), hatchedOn: DayOffset.nullable() }),
  animalPhotos: z.array(SamplePhoto),
  molts: z.array(SampleMolt).describe('Oldest first'),
  liveSigns: z.array(SampleLiveSign).describe('Oldest first'),
  observations: z.array(SampleObservation).describe('Oldest first'),
});
export type SampleSpecimen = z.infer<typeof SampleSpecimen>;

/** `resources/sample/cabinet.json`: an invented collection, its rendered pictures in `photos/` beside it. */
export const SampleCabinet = z.object({
  format: z.literal('exuviary-sample/2'),
  about: z.string(),
  keeper: z.string(),
  specimens: z.array(SampleSpecimen),
});
export type SampleCabinet = z.infer<typeof SampleCabinet>;

export function photosOf(cabinet: SampleCabinet): readonly SamplePhoto[] {
  return cabinet.specimens.flatMap((entry) => [...entry.molts.flatMap((molt) => molt.photos), ...entry.animalPhotos]);
}
