import type { CalendarDay } from '../dates.ts';
import type { Failure } from '../failure.ts';
import { fail, type Result } from '../result.ts';
import { checkNotTooEarly } from '../specimen/dates.ts';
import { byDate, inDateOrder } from './instars.ts';
import type { Molt, MoltDraft } from './molt.ts';
import { checkOutcomes } from './outcomes.ts';

export interface SequenceContext {
  /** All molts of the animal, in any order. */
  readonly molts: readonly Molt[];
  /** The molt the draft changes; null for a new one. */
  readonly replacing: string | null;
  readonly today: CalendarDay;
}

/**
 * Decides whether a molt fits among the others of its animal. Its dates place it; then
 * - the earlier date comes first and neither lies after today, nor too long ago;
 * - its days meet no other molt's days. Two spans may share the day on which one ends and the next begins (an animal found
 *   molted was that day not yet molted again), but two molts known to the day cannot fall on the same one;
 * - known instars rise with the dates by at least one for every recorded molt, unknown ones between them included. They may
 *   rise by more: then a molt between was never recorded. The first recorded molt can shed any instar;
 * - how it went does not contradict itself.
 *
 * Failures: `dates-reversed`, `date-in-future`, `date-too-early`, `molts-out-of-order`, `instars-out-of-order`, `instar-too-low`,
 * `outcomes-contradict`.
 */
export function checkMolt(draft: MoltDraft, context: SequenceContext): Result<MoltDraft> {
  const others = inDateOrder(context.molts.filter((molt) => molt.id !== context.replacing));
  const failure = datesFailure(draft, context.today) ?? overlapFailure(draft, others) ?? instarFailure(draft, others);
  return failure ? fail(failure) : checkOutcomes(draft);
}

type Neighbor = Pick<Molt, 'happenedFrom' | 'happenedTo' | 'instarShed'>;

function datesFailure(draft: MoltDraft, today: CalendarDay): Failure | null {
  if (draft.happenedFrom > draft.happenedTo) return { code: 'dates-reversed', from: draft.happenedFrom, to: draft.happenedTo };
  if (draft.happenedTo > today) return { code: 'date-in-future', field: 'happenedTo', date: draft.happenedTo };
  const early = checkNotTooEarly('happenedFrom', draft.happenedFrom);
  return early.ok ? null : early.failure;
}

function overlapFailure(draft: MoltDraft, others: readonly Neighbor[]): Failure | null {
  const clash = others.find((other) => !comesBefore(other, draft) && !comesBefore(draft, other));
  return clash ? { code: 'molts-out-of-order', date: draft.happenedFrom, neighbourDate: clash.happenedFrom } : null;
}

function comesBefore(first: Neighbor, second: Neighbor): boolean {
  if (first.happenedTo !== second.happenedFrom) return first.happenedTo < second.happenedFrom;
  return first.happenedFrom < first.happenedTo || second.happenedFrom < second.happenedTo;
}

function instarFailure(draft: MoltDraft, others: readonly Neighbor[]): Failure | null {
  const ordered = [...others, draft].sort(byDate);
  for (const [position, molt] of ordered.entries()) {
    if (molt.instarShed === null) continue;
    const earlier = lastKnownBefore(ordered, position);
    if (earlier === null) {
      if (molt.instarShed <= position) return { code: 'instar-too-low', instar: molt.instarShed, earlierMolts: position };
    } else if (molt.instarShed - earlier.instar < position - earlier.position) {
      return disorder(draft, { molt, instar: molt.instarShed, position }, earlier);
    }
  }
  return null;
}

interface Known {
  readonly molt: Neighbor;
  readonly instar: number;
  readonly position: number;
}

function lastKnownBefore(ordered: readonly Neighbor[], position: number): Known | null {
  for (let index = position - 1; index >= 0; index--) {
    const molt = ordered[index];
    if (molt && molt.instarShed !== null) return { molt, instar: molt.instarShed, position: index };
  }
  return null;
}

/** Names the draft's own number where it has one, and the neighbor it does not fit; else the two that stand too close round it. */
function disorder(draft: MoltDraft, later: Known, earlier: Known): Failure {
  const own = earlier.molt === draft ? earlier : later;
  const neighbor = own === later ? earlier : later;
  return {
    code: 'instars-out-of-order',
    instar: own.instar,
    neighbourInstar: neighbor.instar,
    neighbourDate: neighbor.molt.happenedFrom,
    recordedBetween: later.position - earlier.position - 1,
  };
}
