import { z } from 'zod';
import { FeedingHold } from '../../domain/care/feedingHold.ts';
import { FeedingTable } from '../../domain/care/feedingTable.ts';
import { MaleMaturitySign } from '../../domain/care/matureMale.ts';
import { MoltTimer } from '../../domain/care/moltTimer.ts';
import { Observation, ObservationDraft } from '../../domain/care/observation.ts';
import { Pairing } from '../../domain/care/pairing.ts';
import { SpanNow } from '../../domain/care/spanNow.ts';
import { Suspicion } from '../../domain/care/suspicion.ts';
import { WatchItem } from '../../domain/care/watchItem.ts';
import { CalendarDay, Instant } from '../../domain/dates.ts';
import { ExpectedMolt } from '../../domain/growth/forecast/expectedMolt.ts';
import { Removal } from '../../domain/removal.ts';
import { SexSign } from '../../domain/sexing/determination.ts';
import { Specimen } from '../../domain/specimen/specimen.ts';
import { BYTES, type Endpoint } from './endpoint.ts';

/** One kept animal and where it stands now. */
export const WatchedAnimal = z
  .object({
    specimen: Specimen.pick({ id: true, code: true, name: true, taxon: true, habit: true, sample: true }),
    sex: SexSign,
    coverPhotoId: z.string().nullable(),
    lastMoltOn: CalendarDay.nullable(),
    span: SpanNow.nullable().describe('While it molts or is held; null also where no size is known'),
    timer: MoltTimer.nullable().describe('While it molts'),
    hold: FeedingHold.nullable().describe('While it waits for prey after its last molt'),
    fangsUnseenSince: CalendarDay.nullable().describe(
      'The last molt, long ago, after which nobody noted fangs or a meal: look before feeding',
    ),
    suspicion: Suspicion,
    forecast: ExpectedMolt.nullable(),
    matureMaleBy: MaleMaturitySign.nullable().describe('What tells that he is grown and molts no more; then nothing is foretold'),
    latest: z.array(Observation).max(5).describe('What was noted last, the latest first, whenever it was seen'),
  })
  .meta({ id: 'WatchedAnimal' });
export type WatchedAnimal = z.infer<typeof WatchedAnimal>;

export const WatchBoard = z
  .object({
    at: Instant.describe('The moment this was worked out'),
    today: CalendarDay,
    table: FeedingTable.describe('In force: the one of the preferences or the cautious one'),
    items: z.array(WatchItem).describe('Who needs what today, the most urgent first'),
    animals: z.array(WatchedAnimal).describe('All that are kept, by code'),
  })
  .meta({ id: 'WatchBoard' });
export type WatchBoard = z.infer<typeof WatchBoard>;

export const watchEndpoints = {
  'GET /api/watch': { summary: 'Who needs what today', answer: WatchBoard },
  'GET /api/watch/calendar.ics': { summary: 'Feeding holds, expected molts and checks as iCalendar (RFC 5545)', answer: BYTES },
  'GET /api/watch/pairing': { summary: 'Mature males and grown females', answer: Pairing },
  'GET /api/specimens/{specimenId}/observations': { summary: 'What was seen of one animal, oldest first', answer: z.array(Observation) },
  'POST /api/specimens/{specimenId}/observations': {
    summary: 'Note what was seen',
    body: ObservationDraft,
    answer: Observation,
    status: 201,
  },
  'DELETE /api/observations/{observationId}': { summary: 'Remove an observation', answer: Removal },
} as const satisfies Record<string, Endpoint>;
