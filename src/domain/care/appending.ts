import { type CalendarDay, dayOf, type Instant } from '../dates.ts';
import type { Molt } from '../molting/molt.ts';
import { fail, type Result, succeed } from '../result.ts';
import type { Specimen } from '../specimen/specimen.ts';
import { fangContradiction } from './fangs.ts';
import { type LastMolt, lastMoltOf } from './lastMolt.ts';
import { moltRunsOf, openRunOf } from './moltRun.ts';
import { inTimeOrder, isFangColor, isStage, MoltStage, type ObservationDraft, type Seen } from './observation.ts';

export interface AppendingContext {
  readonly specimen: Pick<Specimen, 'acquiredOn' | 'hatchedOn'>;
  /** All of the animal, in any order. */
  readonly observations: readonly Seen[];
  readonly molts: readonly Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo'>[];
  readonly now: Instant;
}

/** A clock that is set while somebody writes; also what two machines' clocks differ by. */
const AHEAD_ALLOWED_MS = 120_000;

/**
 * Whether a new observation fits among the others of its animal, whenever it was made:
 * - it does not lie in the future, nor before the animal hatched;
 * - no molt begins while one is under way, and while one is, it does not end before it began;
 * - the stages of one molt come in their order;
 * - after a molt the fangs do not grow lighter.
 *
 * Failures: `seen-in-future`, `seen-before-hatching`, `molt-under-way`, `molt-ends-before-start`, `stages-out-of-order`,
 * `fangs-out-of-order`.
 */
export function checkObservation(draft: ObservationDraft, context: AppendingContext): Result<ObservationDraft> {
  const { at } = draft.moment;
  const { hatchedOn } = context.specimen;
  if (Date.parse(at) > Date.parse(context.now) + AHEAD_ALLOWED_MS)
    return fail({ code: 'seen-in-future', moment: draft.moment, now: context.now });
  if (hatchedOn !== null && dayOf(draft.moment) < hatchedOn) return fail({ code: 'seen-before-hatching', moment: draft.moment, hatchedOn });
  if (isStage(draft.kind)) return checkStage(draft, draft.kind, context);
  return isFangColor(draft.kind) ? checkFangs(draft, context) : succeed(draft);
}

function checkStage(draft: ObservationDraft, stage: MoltStage, { observations, molts }: AppendingContext): Result<ObservationDraft> {
  const open = openRunOf(observations, molts);
  if (stage === 'free-of-skin' && open && isBefore(draft.moment.at, open.startedAt.at)) {
    return fail({ code: 'molt-ends-before-start', startedAt: open.startedAt, endedAt: draft.moment });
  }
  const runs = moltRunsOf([...observations, { ...draft, id: '' }], molts);
  const run = runs.find(({ stages }) => stages.some(({ observationId }) => observationId === ''));
  const turned = run?.stages.filter((one) => one.stage === 'turned-over') ?? [];
  const first = turned.find(({ observationId }) => observationId !== '');
  if (turned.length > 1 && first) return fail({ code: 'molt-under-way', startedAt: first.moment });
  const stages = run?.stages ?? [];
  for (const [index, later] of stages.entries()) {
    const earlier = stages.slice(0, index).find((one) => stageRank(one.stage) > stageRank(later.stage));
    if (earlier) {
      return fail({
        code: 'stages-out-of-order',
        earlier: earlier.stage,
        earlierAt: earlier.moment,
        later: later.stage,
        laterAt: later.moment,
      });
    }
  }
  return succeed(draft);
}

function checkFangs(draft: ObservationDraft, { observations, molts }: AppendingContext): Result<ObservationDraft> {
  const all = [...observations, { ...draft, id: '' }];
  const last = moltBefore(dayOf(draft.moment), all, { molts, at: draft.moment.at });
  const nextEnd = inTimeOrder(observations).find((seen) => seen.kind === 'free-of-skin' && isBefore(draft.moment.at, seen.moment.at));
  const nextMolt = molts
    .filter(({ happenedFrom }) => happenedFrom > dayOf(draft.moment))
    .toSorted((a, b) => (a.happenedFrom < b.happenedFrom ? -1 : 1))[0];
  const ofInstar = all.filter(
    ({ moment }) => (!nextEnd || isBefore(moment.at, nextEnd.moment.at)) && (!nextMolt || dayOf(moment) < nextMolt.happenedFrom),
  );
  const contradiction = last && fangContradiction(last, ofInstar);
  if (!contradiction) return succeed(draft);
  const { earlier, later } = contradiction;
  return fail({ code: 'fangs-out-of-order', earlier: earlier.color, earlierAt: earlier.moment, later: later.color, laterAt: later.moment });
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
