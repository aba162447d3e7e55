import { z } from 'zod';
import { CalendarDay } from '../dates.ts';
import { type DatedMolt, inDateOrder } from '../molting/instars.ts';
import { growthSteps, type MeasuredStep, measuredSteps } from './measuredStep.ts';
import type { Rung } from './rung.ts';
import { ONE_MOLT } from './stepDoubt.ts';

const Pair = { earlierMoltId: z.string(), laterMoltId: z.string() };

/** What a row of skins leaves open or what is odd about it: facts to be said, questions to be asked. Nothing here is refused. */
export const GrowthFinding = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('no-size') }),
    z.object({ kind: z.literal('one-size') }).describe('No ratio yet'),
    z.object({ kind: z.literal('two-sizes') }).describe('A ratio, but no scatter: neither fit nor bands'),
    z.object({ kind: z.literal('place-unknown'), moltIds: z.array(z.string()) }).describe('Measured, but their place in the row is open'),
    z.object({ kind: z.literal('equal-sizes'), ...Pair }).describe('Apart by less than the readings can tell'),
    z.object({ kind: z.literal('shrunk'), ...Pair, ratio: z.number() }).describe('Wrong instar? Wrong scale?'),
    z.object({ kind: z.literal('absurd-ratio'), ...Pair, perInstar: z.number() }).describe('Wrong scale? Wrong animal?'),
    z
      .object({ kind: z.literal('dates-out-of-order'), ...Pair })
      .describe('The numbers noted leave no room for molts in the order of their dates'),
    z.object({ kind: z.literal('one-day'), ...Pair, day: CalendarDay }).describe('Two molts known to the day fall on the same one'),
    z.object({ kind: z.literal('future-date'), moltId: z.string(), day: CalendarDay }),
    z.object({ kind: z.literal('no-interval') }).describe('No two molts are dated well enough to say the days between them'),
  ])
  .meta({ id: 'GrowthFinding' });
export type GrowthFinding = z.infer<typeof GrowthFinding>;

/**
 * Looks a ladder over before anything is fitted to it. Each finding stands for itself; one that explains another (an absurd
 * shrinking is not also called shrunk) takes its place.
 *
 * @param molts of these rungs.
 */
export function findingsOf(rungs: readonly Rung[], molts: readonly DatedMolt[], today: CalendarDay): GrowthFinding[] {
  const sizes = measuredSteps(rungs);
  const open = rungs.filter(({ stepKnown, carapaceLengthMm }) => !stepKnown && carapaceLengthMm !== null);
  return [
    ...countFinding(sizes.length),
    ...(open.length > 0 ? [{ kind: 'place-unknown' as const, moltIds: open.map(({ moltId }) => moltId) }] : []),
    ...sizeFindings(sizes),
    ...orderFindings(molts),
    ...dateFindings(rungs, today),
  ];
}

function countFinding(sizes: number): GrowthFinding[] {
  const kind = (['no-size', 'one-size', 'two-sizes'] as const)[sizes];
  return kind === undefined ? [] : [{ kind }];
}

function sizeFindings(sizes: readonly MeasuredStep[]): GrowthFinding[] {
  return growthSteps(sizes).flatMap((step): GrowthFinding[] => {
    const pair = { earlierMoltId: step.earlier.moltId, laterMoltId: step.later.moltId };
    const perInstar = Math.exp(step.logRatio / step.instars);
    if (perInstar < ONE_MOLT.least || perInstar > ONE_MOLT.most) return [{ kind: 'absurd-ratio', ...pair, perInstar }];
    if (Math.abs(step.logRatio) <= 2 * step.uncertainty) return [{ kind: 'equal-sizes', ...pair }];
    return step.logRatio < 0 ? [{ kind: 'shrunk', ...pair, ratio: Math.exp(step.logRatio) }] : [];
  });
}

function dateFindings(rungs: readonly Rung[], today: CalendarDay): GrowthFinding[] {
  const found: GrowthFinding[] = rungs.flatMap(({ moltId, happenedTo }) =>
    happenedTo > today ? [{ kind: 'future-date', moltId, day: happenedTo }] : [],
  );
  for (const [index, later] of rungs.entries()) {
    const earlier = rungs[index - 1];
    if (!earlier) continue;
    const pair = { earlierMoltId: earlier.moltId, laterMoltId: later.moltId };
    if (isOneDay(earlier) && isOneDay(later) && earlier.happenedFrom === later.happenedFrom) {
      found.push({ kind: 'one-day', ...pair, day: later.happenedFrom });
    }
  }
  const isDated = rungs.some(({ daysSincePrevious }) => daysSincePrevious !== null && daysSincePrevious.from > 0);
  return isDated ? found : [...found, { kind: 'no-interval' }];
}

/** A number that stands too low for the molts on record since the one before. */
function orderFindings(molts: readonly DatedMolt[]): GrowthFinding[] {
  const noted = inDateOrder(molts).flatMap(({ id, instarShed }, index) => (instarShed === null ? [] : [{ id, index, instarShed }]));
  return noted.flatMap((later, place): GrowthFinding[] => {
    const earlier = noted[place - 1];
    if (!earlier || later.instarShed - earlier.instarShed >= later.index - earlier.index) return [];
    return [{ kind: 'dates-out-of-order', earlierMoltId: earlier.id, laterMoltId: later.id }];
  });
}

function isOneDay({ happenedFrom, happenedTo }: Pick<Rung, 'happenedFrom' | 'happenedTo'>): boolean {
  return happenedFrom === happenedTo;
}
