import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import { PhotoView } from '../../photo/photo.ts';
import { AbdomenDistance } from '../abdomenDistances.ts';
import { Determination, SexSign } from '../determination.ts';
import { LiveSign } from '../live/liveSign.ts';

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

/** Everything an honest statement about one animal's sex has to say. */
export const StatementFacts = z
  .object({
    today: CalendarDay,
    code: z.string(),
    taxon: z.string(),
    name: z.string().nullable(),
    sign: SexSign,
    leading: Determination.nullable().describe('The standing determination that carries the sign; null where none does'),
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
    against: z.array(OtherReading).describe('Standing, of another sex than the leading one; where none leads, all that name a sex'),
    takenBack: z.array(OtherReading).describe('Corrected or withdrawn, of another sex than the leading one'),
    photosGone: z.int().min(0).describe('Evidence photos of the leading determination that are no longer on record'),
    liveSigns: z.array(LiveSign).describe('Standing, oldest first'),
    photos: z
      .array(z.object({ photoId: z.string(), originalName: z.string(), view: PhotoView, filedElsewhere: z.boolean() }))
      .describe('Evidence of the leading determination; `filedElsewhere`: given to another animal or to none since'),
    promise: StatementPromise,
  })
  .meta({ id: 'StatementFacts' });
export type StatementFacts = z.infer<typeof StatementFacts>;
