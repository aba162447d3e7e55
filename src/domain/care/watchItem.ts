import { z } from 'zod';
import { CalendarDay } from '../dates.ts';
import { ExpectedMolt } from '../growth/forecast/expectedMolt.ts';
import { FeedingHold } from './feedingHold.ts';
import { MoltTimer } from './moltTimer.ts';
import { Suspicion } from './suspicion.ts';

/** What to do next about one need. */
export const NextAction = z
  .enum([
    'look-in',
    'ask-a-veterinarian',
    'set-the-clock',
    'note-fangs',
    'wait',
    'record-death',
    'record-molt',
    'record-skin',
    'read-skin',
    'stop-offering-prey',
    'watch-for-signs',
  ])
  .meta({ id: 'NextAction' });
export type NextAction = z.infer<typeof NextAction>;

/** Why an animal is on the board: facts, one kind of need each. */
export const Need = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('molting'), timer: MoltTimer }),
    z.object({
      kind: z.literal('molt-end-unseen'),
      startedOn: CalendarDay,
      endedBy: CalendarDay.describe('The last day on which it can have ended'),
      ateOn: CalendarDay.describe('The meal that tells that it is over'),
    }),
    z.object({ kind: z.literal('died-in-molt'), diedOn: CalendarDay }),
    z.object({ kind: z.literal('hardening'), hold: FeedingHold }),
    z.object({ kind: z.literal('feeding-hold'), hold: FeedingHold }),
    z.object({ kind: z.literal('fangs-unseen'), moltedOn: CalendarDay }),
    z.object({ kind: z.literal('molt-to-record'), moltedOn: CalendarDay }),
    z.object({ kind: z.literal('skin-to-recover'), moltId: z.string(), moltedOn: CalendarDay }),
    z.object({
      kind: z.literal('skin-to-read'),
      exuviaId: z.string(),
      photoId: z.string().nullable().describe('One of its photos'),
      moltedOn: CalendarDay,
      missing: z.array(z.enum(['photo', 'measuring', 'sexing'])).min(1),
      others: z.int().min(0).describe('How many earlier skins are still to be read'),
    }),
    z.object({ kind: z.literal('premolt'), suspicion: Suspicion }),
    z.object({ kind: z.literal('molt-overdue'), forecast: ExpectedMolt }),
    z.object({ kind: z.literal('molt-due'), forecast: ExpectedMolt }),
  ])
  .meta({ id: 'Need' });
export type Need = z.infer<typeof Need>;

/** One reason to look after an animal, and the step it asks for. */
export const Reason = z.object({ action: NextAction, need: Need }).meta({ id: 'Reason' });
export type Reason = z.infer<typeof Reason>;

/** The one entry of an animal: its most urgent reason, and the others after it. */
export const WatchItem = Reason.extend({
  specimenId: z.string(),
  urgency: z.int().min(1).describe('1 is the most urgent'),
  on: CalendarDay.describe('The day it has to do with, which orders equals'),
  also: z.array(Reason).describe('What else brings this animal here, the more urgent first'),
}).meta({ id: 'WatchItem' });
export type WatchItem = z.infer<typeof WatchItem>;

/** The one next step of an animal: where its first reason only asks to wait, that of the next one. */
export function nextStepOf(item: Pick<WatchItem, 'action' | 'need' | 'also'>): Reason {
  return item.action === 'wait' ? (item.also[0] ?? item) : item;
}
