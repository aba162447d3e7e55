import { z } from 'zod';
import { CalendarDay, type CameraTime, dayOf, Instant } from '../dates.ts';
import type { Reading } from '../measuring/reading.ts';
import type { Exuvia } from '../molting/exuvia.ts';
import type { Molt } from '../molting/molt.ts';
import type { Photo } from '../photo/photo.ts';
import type { Determination } from '../sexing/determination.ts';
import type { LiveSign } from '../sexing/live/liveSign.ts';
import type { Specimen } from '../specimen/specimen.ts';
import { isRecordOf, moltRunsOf } from './moltRun.ts';
import type { Seen } from './observation.ts';

/** One point on the line of an animal's life: a day, a moment where there is one, and the record it stands for. */
export const LifeEvent = z
  .object({
    on: CalendarDay,
    at: Instant.nullable().describe('Where the moment is known; null for what is known to the day'),
    kind: z.enum(['hatched', 'acquired', 'observation', 'molt', 'skin', 'photo', 'live-sign', 'reading', 'determination']),
    id: z.string().describe('Of the record; of the specimen for its hatching and acquisition'),
    exuviaId: z.string().nullable().describe('The skin that was recovered, measured or examined; null for what is about the animal'),
  })
  .meta({ id: 'LifeEvent' });
export type LifeEvent = z.infer<typeof LifeEvent>;

export interface LifeRecords {
  readonly specimen: Pick<Specimen, 'id' | 'hatchedOn' | 'acquiredOn'>;
  readonly molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[];
  readonly skins: readonly Pick<Exuvia, 'id' | 'moltId'>[];
  /** Of the living animal. */
  readonly animalPhotos: readonly (Pick<Photo, 'id' | 'takenOn'> & { readonly facts: Pick<Photo['facts'], 'takenAt'> })[];
  /** That were signed. */
  readonly liveSigns: readonly Pick<LiveSign, 'id' | 'seenOn'>[];
  readonly readings: readonly (Pick<Reading, 'id' | 'createdAt' | 'landmarks'> & { readonly exuviaId: string })[];
  readonly determinations: readonly Pick<Determination, 'id' | 'exuviaId' | 'readOn' | 'signedAt'>[];
  readonly observations: readonly Seen[];
  /** The keeper's calendar day of a moment in UTC. */
  readonly dayOfInstant: (instant: Instant) => CalendarDay;
  /** When a camera's clock showed a time; one that wrote no offset from UTC ran as this machine's does. */
  readonly instantOfCamera: (time: CameraTime) => Instant;
}

/**
 * Everything on record about one animal on one line, oldest first. A skin stands on the day of its molt, a molt that was watched at
 * its end, a reading and a determination on the day they were made; a pass without a single point is none. A photo of the animal
 * without a day is left out: it has no place on a line.
 */
export function lifeLineOf(records: LifeRecords): LifeEvent[] {
  const { specimen, molts, skins, animalPhotos, liveSigns, readings, determinations, observations, dayOfInstant } = records;
  const moltDay = new Map(molts.map(({ id, happenedTo }) => [id, happenedTo]));
  const runs = moltRunsOf(observations, molts);
  const event = (kind: LifeEvent['kind'], id: string, on: CalendarDay | null | undefined, known: Partial<LifeEvent> = {}): LifeEvent[] =>
    on ? [{ at: null, exuviaId: null, ...known, on, kind, id }] : [];
  return [
    ...event('hatched', specimen.id, specimen.hatchedOn),
    ...event('acquired', specimen.id, specimen.acquiredOn),
    ...observations.flatMap(({ id, moment }) => event('observation', id, dayOf(moment), { at: moment.at })),
    ...molts.flatMap((molt) => {
      const ended = runs.find((run) => isRecordOf(molt, run))?.endedAt;
      return event('molt', molt.id, molt.happenedTo, { at: ended && dayOf(ended) === molt.happenedTo ? ended.at : null });
    }),
    ...skins.flatMap(({ id, moltId }) => event('skin', id, moltDay.get(moltId), { exuviaId: id })),
    ...animalPhotos.flatMap(({ id, takenOn, facts: { takenAt } }) =>
      event('photo', id, takenOn, { at: takenAt?.local.startsWith(`${takenOn}T`) ? records.instantOfCamera(takenAt) : null }),
    ),
    ...liveSigns.flatMap(({ id, seenOn }) => event('live-sign', id, seenOn)),
    ...readings
      .filter(({ landmarks }) => Object.keys(landmarks).length > 0)
      .flatMap(({ id, createdAt, exuviaId }) => event('reading', id, dayOfInstant(createdAt), { at: createdAt, exuviaId })),
    ...determinations.flatMap(({ id, exuviaId, readOn, signedAt }) =>
      event('determination', id, readOn, { at: dayOfInstant(signedAt) === readOn ? signedAt : null, exuviaId }),
    ),
  ].toSorted(byPlace);
}

const KINDS: readonly LifeEvent['kind'][] = LifeEvent.shape.kind.options;
const OF_THE_HOUR: readonly LifeEvent['kind'][] = ['observation', 'molt', 'photo'];

/** On one day: what begins a life, then what is known to the minute of the animal, by its moment, then the rest by kind. */
function placeOf({ kind, at }: LifeEvent): number {
  return at !== null && OF_THE_HOUR.includes(kind) ? KINDS.indexOf('observation') : KINDS.indexOf(kind);
}

function byPlace(a: LifeEvent, b: LifeEvent): number {
  if (a.on !== b.on) return a.on < b.on ? -1 : 1;
  const moments = a.at !== null && b.at !== null ? Date.parse(a.at) - Date.parse(b.at) : 0;
  return placeOf(a) - placeOf(b) || moments || KINDS.indexOf(a.kind) - KINDS.indexOf(b.kind);
}
