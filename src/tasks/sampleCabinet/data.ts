import { z } from 'zod';
import { CalendarDay } from '../../domain/dates.ts';
import { ScaleMarks } from '../../domain/measuring/calibration.ts';
import { ReadingDraft } from '../../domain/measuring/reading.ts';
import { ExuviaDraft } from '../../domain/molting/exuvia.ts';
import { MoltDraft } from '../../domain/molting/molt.ts';
import { PhotoView } from '../../domain/photo/photo.ts';
import { DeterminationDraft } from '../../domain/sexing/determination.ts';
import { SpecimenDraft } from '../../domain/specimen/specimen.ts';

const SamplePhoto = z.object({
  file: z.string().regex(/^[\w-]+\.jpg$/),
  view: PhotoView,
  takenOn: CalendarDay,
  notes: z.string(),
  marks: ScaleMarks.nullable(),
  reading: ReadingDraft.nullable(),
});
export type SamplePhoto = z.infer<typeof SamplePhoto>;

const SampleDetermination = DeterminationDraft.omit({ evidencePhotoIds: true, supersedes: true }).extend({
  evidence: z.array(z.string()).describe('File names of photos of the same animal'),
  withdrawnBecause: z.string().nullable(),
});

const SampleMolt = z.object({
  molt: MoltDraft,
  exuvia: ExuviaDraft,
  photos: z.array(SamplePhoto),
  determinations: z.array(SampleDetermination),
});

const SampleSpecimen = z.object({ specimen: SpecimenDraft, molts: z.array(SampleMolt), animalPhotos: z.array(SamplePhoto) });

/** `resources/sample/cabinet.json`: an invented collection, its pictures in `photos/` beside it. */
export const SampleCabinet = z.object({ format: z.literal('exuviary-sample/1'), about: z.string(), specimens: z.array(SampleSpecimen) });
export type SampleCabinet = z.infer<typeof SampleCabinet>;

export function photosOf(cabinet: SampleCabinet): readonly SamplePhoto[] {
  return cabinet.specimens.flatMap((entry) => [...entry.molts.flatMap((molt) => molt.photos), ...entry.animalPhotos]);
}
