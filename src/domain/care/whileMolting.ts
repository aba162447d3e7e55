import { type Instant, minutesBetween } from '../dates.ts';
import type { Failure } from '../failure.ts';
import { MOLTS_APART_DAYS } from './apart.ts';
import { MOLT_LASTS_MINUTES, type MoltRun, openRunOf } from './moltRun.ts';
import { isFangColor, type ObservationKind, type Seen } from './observation.ts';

type NotWhileMolting = Extract<Failure, { code: 'not-while-molting' }>;
type LightBeforeMolt = Extract<Failure, { code: 'fangs-light-before-molt' }>;
type Molts = Parameters<typeof openRunOf>[1];

/** What nobody can see of an animal in its molt, nor should try to: common practice, no source. */
const NOT_THEN: readonly ObservationKind[] = [
  'ate',
  'fangs-white',
  'fangs-red-brown',
  'fangs-black',
  'span-measured',
  'mature',
  'sperm-web',
  'egg-sac',
];

/**
 * The molt that a note falls into which cannot be of one; null where none does. Where nobody noted the end, a meal after the longest that a
 * molt lasts is no slip: it tells that the molt is over.
 */
export function notWhileMolting(note: Seen, runs: readonly MoltRun[], others: readonly Seen[], molts: Molts): NotWhileMolting | null {
  if (!NOT_THEN.includes(note.kind)) return null;
  const openId = openRunOf(others, molts)?.observationId;
  const run = runs.find(({ observationId, startedAt, endedAt }) => {
    const sinceStart = minutesBetween(startedAt.at, note.moment.at);
    if (sinceStart < 0) return false;
    if (endedAt) return minutesBetween(note.moment.at, endedAt.at) > 0;
    return observationId === openId && (note.kind !== 'ate' || sinceStart < MOLT_LASTS_MINUTES);
  });
  return run ? { code: 'not-while-molting', kind: note.kind, startedAt: run.startedAt, moment: note.moment } : null;
}

/** Fangs that were light a few days before this molt began, though they only are after one; null where none were. */
export function lightBefore(run: MoltRun, others: readonly Seen[]): LightBeforeMolt | null {
  const light = others.find(({ kind, moment }) => isLight(kind) && isShortlyBefore(moment.at, run.startedAt.at));
  return light && isFangColor(light.kind)
    ? { code: 'fangs-light-before-molt', color: light.kind, moment: light.moment, startedAt: run.startedAt }
    : null;
}

function isLight(kind: ObservationKind): boolean {
  return isFangColor(kind) && kind !== 'fangs-black';
}

function isShortlyBefore(at: Instant, start: Instant): boolean {
  const minutes = minutesBetween(at, start);
  return minutes > 0 && minutes < MOLTS_APART_DAYS * 24 * 60;
}
