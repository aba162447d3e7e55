import { type CalendarDay, dayOf, type Instant } from '../dates.ts';
import type { Failure } from '../failure.ts';
import type { Molt } from '../molting/molt.ts';
import { fail, type Result, succeed } from '../result.ts';
import { checkNotTooEarly } from '../specimen/dates.ts';
import type { Specimen } from '../specimen/specimen.ts';
import { neighborTooClose } from './apart.ts';
import { fangContradiction } from './fangs.ts';
import { isAfter, type LastMolt, lastMoltOf } from './lastMolt.ts';
import { type MoltRun, moltRunsOf } from './moltRun.ts';
import { inTimeOrder, isFangColor, isStage, MoltStage, type ObservationDraft, type Seen } from './observation.ts';
import { lightBefore, notWhileMolting } from './whileMolting.ts';

export interface AppendingContext {
  readonly specimen: Pick<Specimen, 'hatchedOn'>;
  /** All of the animal, in any order. */
  readonly observations: readonly Seen[];
  readonly molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[];
  readonly now: Instant;
}

/** A clock that is set while somebody writes; also what two machines' clocks differ by. */
const AHEAD_ALLOWED_MS = 120_000;

/**
 * Whether a new observation fits among the others of its animal, whenever it was made:
 * - it does not lie in the future, nor too long ago, nor before the animal hatched;
 * - no molt begins while one is under way, nor ends before it began or twice;
 * - the stages of one molt come in their order;
 * - no molt lies within five days of another one, watched or on record;
 * - nothing is noted in the middle of a molt that cannot be seen of one, nor light fangs shortly before it;
 * - after a molt the fangs do not grow lighter, and are not black within a day of its watched end.
 *
 * Failures: `seen-in-future`, `date-too-early`, `seen-before-hatching`, `molt-under-way`, `molt-already-ended`,
 * `molt-ends-before-start`, `molts-too-close`, `stages-out-of-order`, `not-while-molting`, `fangs-light-before-molt`, `fangs-black-too-soon`, `fangs-out-of-order`.
 */
export function checkObservation(draft: ObservationDraft, context: AppendingContext): Result<ObservationDraft> {
  const { at } = draft.moment;
  const { hatchedOn } = context.specimen;
  if (Date.parse(at) > Date.parse(context.now) + AHEAD_ALLOWED_MS)
    return fail({ code: 'seen-in-future', moment: draft.moment, now: context.now });
  const early = checkNotTooEarly('moment', dayOf(draft.moment));
  if (!early.ok) return early;
  if (hatchedOn !== null && dayOf(draft.moment) < hatchedOn) return fail({ code: 'seen-before-hatching', moment: draft.moment, hatchedOn });
  const failure = contradictionWith({ ...draft, id: '' }, context);
  return failure === null ? succeed(draft) : fail(failure);
}

/** What speaks against one note among the others of its animal; null where nothing does. */
export function contradictionWith(
  note: Seen,
  { observations, molts }: Pick<AppendingContext, 'observations' | 'molts'>,
): ObservationContradiction | null {
  const others = observations.filter(({ id }) => id !== note.id);
  if (isStage(note.kind)) {
    const runs = moltRunsOf([...others, note], molts);
    const run = runs.find(({ stages }) => stages.some(({ observationId }) => observationId === note.id));
    if (!run) return null;
    const contradiction = stageContradiction(run, note.id) ?? endBeforeStart(run, runs) ?? neighborTooClose(run, runs, molts);
    return contradiction ?? (run.observationId === note.id ? lightBefore(run, others) : null);
  }
  const runs = moltRunsOf(others, molts);
  const molting = notWhileMolting(note, runs, others, molts);
  if (molting || !isFangColor(note.kind)) return molting;
  const next = runs.find(({ startedAt }) => isBefore(note.moment.at, startedAt.at));
  return (next && lightBefore(next, [note])) ?? fangsContradict(note, others, molts);
}

/** The first of several stages, such as times taken from photos, that cannot be of the molt they stand in; null where all can. */
export function contradictionAmong(stages: readonly Seen[]): ObservationContradiction | null {
  const runs = moltRunsOf(stages, []);
  for (const run of runs) {
    const failure = stageContradiction(run, null) ?? endBeforeStart(run, runs) ?? neighborTooClose(run, runs, []);
    if (failure) return failure;
  }
  return null;
}

type ObservationContradiction = Extract<
  Failure,
  {
    code:
      | 'molt-under-way'
      | 'molt-already-ended'
      | 'molt-ends-before-start'
      | 'molts-too-close'
      | 'stages-out-of-order'
      | 'fangs-black-too-soon'
      | 'fangs-out-of-order'
      | 'fangs-light-before-molt'
      | 'not-while-molting';
  }
>;

/** An end alone, a few days before a molt began: it is of that molt, and its time is wrong. */
function endBeforeStart(run: MoltRun, runs: readonly MoltRun[]): ObservationContradiction | null {
  const next = runs[runs.indexOf(run) + 1];
  const isEndAlone = run.endedAt && run.stages.every(({ stage }) => stage === 'free-of-skin');
  if (!isEndAlone || !next || next.stages[0]?.stage === 'free-of-skin' || neighborTooClose(run, [run, next], []) === null) return null;
  return { code: 'molt-ends-before-start', startedAt: next.startedAt, endedAt: run.startedAt };
}

/** `noteId` names the note that is new, where one is. */
function stageContradiction({ stages }: Pick<MoltRun, 'stages'>, noteId: string | null): ObservationContradiction | null {
  const ending = stages.filter(({ stage }) => stage === 'free-of-skin');
  const starting = stages.filter(({ stage }) => stage === 'turned-over');
  const [end] = ending;
  const [start] = starting;
  // Whichever of the two was noted first, and whether a photo told it.
  if (end && start && ending.length === 1 && starting.length === 1 && stages.indexOf(end) < stages.indexOf(start)) {
    return { code: 'molt-ends-before-start', startedAt: start.moment, endedAt: end.moment };
  }
  const twiceOf = (stage: MoltStage) => {
    const [one, other] = stages.filter((each) => each.stage === stage);
    return one && other && (one.observationId === noteId ? { known: other, again: one } : { known: one, again: other });
  };
  const ends = twiceOf('free-of-skin');
  if (ends) return { code: 'molt-already-ended', endedAt: ends.known.moment, again: ends.again.moment };
  const starts = twiceOf('turned-over');
  if (starts && stages.every(({ stage }) => stage !== 'free-of-skin')) return { code: 'molt-under-way', startedAt: starts.known.moment };
  for (const [index, later] of stages.entries()) {
    const earlier = stages.slice(0, index).find((one) => stageRank(one.stage) > stageRank(later.stage));
    if (earlier) {
      return {
        code: 'stages-out-of-order',
        earlier: earlier.stage,
        earlierAt: earlier.moment,
        later: later.stage,
        laterAt: later.moment,
      };
    }
  }
  return starts ? { code: 'molt-under-way', startedAt: starts.known.moment } : null;
}

function fangsContradict(note: Seen, others: readonly Seen[], molts: AppendingContext['molts']): ObservationContradiction | null {
  const all = [...others, note];
  const { moment } = note;
  const last = moltBefore(dayOf(moment), all, { molts, at: moment.at });
  const endedAt = last?.run?.endedAt;
  if (endedAt && note.kind === 'fangs-black' && !isAfter(note, last)) return { code: 'fangs-black-too-soon', endedAt, moment };
  const nextEnd = inTimeOrder(others).find((seen) => seen.kind === 'free-of-skin' && isBefore(moment.at, seen.moment.at));
  const nextMolt = molts
    .filter(({ happenedFrom }) => happenedFrom > dayOf(moment))
    .toSorted((a, b) => (a.happenedFrom < b.happenedFrom ? -1 : 1))[0];
  const ofInstar = all.filter(
    (seen) => (!nextEnd || isBefore(seen.moment.at, nextEnd.moment.at)) && (!nextMolt || dayOf(seen.moment) < nextMolt.happenedFrom),
  );
  const contradiction = last && fangContradiction(last, ofInstar);
  if (!contradiction) return null;
  const { earlier, later } = contradiction;
  return { code: 'fangs-out-of-order', earlier: earlier.color, earlierAt: earlier.moment, later: later.color, laterAt: later.moment };
}

/** The molt that the instar in which something was seen began with. */
function moltBefore(
  day: CalendarDay,
  observations: readonly Seen[],
  { molts, at }: Pick<AppendingContext, 'molts'> & { at: Instant },
): LastMolt | null {
  return lastMoltOf(
    observations.filter((seen) => !isBefore(at, seen.moment.at)),
    molts.filter(({ happenedTo }) => happenedTo <= day),
  );
}

function isBefore(one: Instant, other: Instant): boolean {
  return Date.parse(one) < Date.parse(other);
}

function stageRank(stage: MoltStage): number {
  return MoltStage.options.indexOf(stage);
}
