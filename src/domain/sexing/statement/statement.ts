import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import { PhotoView } from '../../photo/photo.ts';
import { AbdomenDistance } from '../abdomenDistances.ts';
import { Determination, EvidencePin, SexSign } from '../determination.ts';
import { LiveFinding } from '../live/liveSign.ts';

/** What a seller or a breeding partner promises, if anything. */
export const StatementPromise = z
  .object({
    ifWrong: z.enum(['refund', 'exchange', 'none']).default('none'),
    until: CalendarDay.optional().describe('The last day of the promise'),
    sizeNow: z.string().trim().max(200).default('').describe('In the keeper’s words, with what was measured'),
  })
  .meta({ id: 'StatementPromise' });
export type StatementPromise = z.infer<typeof StatementPromise>;

/** A determination that says otherwise, with the days on which its skin was shed. */
export const OtherReading = z
  .object({ determination: Determination, shedFrom: CalendarDay, shedTo: CalendarDay })
  .meta({ id: 'OtherReading' });
export type OtherReading = z.infer<typeof OtherReading>;

/** What the animal itself showed, with the day and who saw it. */
export const SeenOnAnimal = z
  .object({
    finding: LiveFinding,
    on: CalendarDay.describe('The day it was seen; of an answer in a reading, the day of that reading'),
    by: z.string().describe('Who saw it; empty where nobody is named'),
    inReading: z.boolean().describe('Told in the answers of a reading'),
  })
  .meta({ id: 'SeenOnAnimal' });
export type SeenOnAnimal = z.infer<typeof SeenOnAnimal>;

/** Everything an honest statement about one animal's sex has to say. */
export const StatementFacts = z
  .object({
    today: CalendarDay,
    code: z.string(),
    taxon: z.string(),
    name: z.string().nullable(),
    sign: SexSign,
    leading: Determination.nullable().describe('The standing determination that carries the sign, at its level; null where none does'),
    carrying: z.array(LiveFinding).describe('What the animal itself showed that carries the sign, at its level'),
    skin: z
      .object({
        shedFrom: CalendarDay,
        shedTo: CalendarDay,
        carapaceMm: z.number().nullable(),
        legSpanMm: z.number().nullable(),
        distances: z.array(AbdomenDistance).describe('Measured on its opened abdomen'),
      })
      .nullable()
      .describe('That the leading determination was read on'),
    otherReadings: z.int().min(0).describe('Standing determinations besides the leading one and those against it'),
    against: z.array(OtherReading).describe('Standing, of another sex than the sign; in a conflict, all that name a sex'),
    takenBack: z.array(OtherReading).describe('Corrected or withdrawn, of another sex than the sign'),
    photosGone: z.int().min(0).describe('Of those photos, no longer on record'),
    shown: z.array(SeenOnAnimal).describe('What the animal itself showed and still stands: answers of readings, then signs'),
    photos: z
      .array(
        z.object({
          photoId: z.string(),
          originalName: z.string(),
          view: PhotoView,
          filedElsewhere: z.boolean(),
          widthPx: z.number(),
          heightPx: z.number(),
          pins: z.array(EvidencePin).describe('Of the readings named here, whose marks lie on it'),
        }),
      )
      .describe(
        'Evidence of the leading determination, or of what the animal showed that carries the sign; in a conflict, of all that contradict. `filedElsewhere`: given to another animal or to none since',
      ),
    promise: StatementPromise,
  })
  .meta({ id: 'StatementFacts' });
export type StatementFacts = z.infer<typeof StatementFacts>;
