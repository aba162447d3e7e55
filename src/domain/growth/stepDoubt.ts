/** From one measured skin to the next one. */
export interface StepInQuestion {
  readonly earlierMoltId: string;
  readonly laterMoltId: string;
  /** ln(later / earlier) and its standard uncertainty, the readings' alone. */
  readonly logRatio: number;
  readonly uncertainty: number;
  /** Molts of the step on record, at least 1. */
  readonly molts: number;
  /** The keeper is sure that these were all. */
  readonly noneMissed: boolean;
}

/** How many molts more than on record a step is allowed to hold. */
export const MOST_UNSEEN = 2;

/** No single molt of a reared series on record makes a carapace larger by as much, or smaller; an assumption of ours. */
export const ONE_MOLT = { least: 0.7, most: 2.2 };
/** The largest mean ratio of a reared series is 1.63 (Spodoptera cosmioides; Zoologia 33(4), 2016); above it a margin of ours. */
const MOST_ON_AVERAGE = 1.8;

/**
 * Whether no number of molts explains a step: the size falls by more than the readings can tell (twice their standard uncertainty), or
 * grows more than all the molts it may hold could make it. A scale or an owner was then mistaken, of either skin, so nothing is read
 * from such growth.
 */
export function isBeyondMolts({
  logRatio,
  uncertainty,
  molts,
  noneMissed,
}: Omit<StepInQuestion, 'earlierMoltId' | 'laterMoltId'>): boolean {
  if (logRatio < -2 * uncertainty) return true;
  return logRatio > (noneMissed ? molts * Math.log(ONE_MOLT.most) : (molts + MOST_UNSEEN) * Math.log(MOST_ON_AVERAGE));
}

/**
 * The skins whose sizes are in doubt, by the ids of their molts: first each without which its neighbors fit each other,
 * then those with a step beyond molts on every side on which a measured skin still stands. One that a sound step joins to its neighbor
 * is believed, and the doubt is the other's.
 *
 * @param steps of one animal, in order.
 */
export function skinsInDoubt(steps: readonly StepInQuestion[]): ReadonlySet<string> {
  const doubted = new Set<string>();
  let row = steps;
  for (let odd = oddOneOut(row); odd !== null; odd = oddOneOut(row)) {
    doubted.add(odd);
    row = without(row, odd);
  }
  const sound = new Set(row.filter((step) => !isBeyondMolts(step)).flatMap(endsOf));
  for (const moltId of row.flatMap(endsOf)) if (!sound.has(moltId)) doubted.add(moltId);
  return doubted;
}

/** Growth per molt of two steps on end hardly ever differs by more on a reared row (in ln); an assumption of ours. */
const UNEVEN = 0.25;

/**
 * The skin at a step beyond molts without which the skins around that step fit each other, and clearly better than without the other
 * one; two molts that went unseen are allowed for.
 */
function oddOneOut(row: readonly StepInQuestion[]): string | null {
  for (const [index, step] of row.entries()) {
    if (!isBeyondMolts(step)) continue;
    const around = neighborhood(row, index);
    const earlier = unevenness(without(around, step.earlierMoltId));
    const later = unevenness(without(around, step.laterMoltId));
    if (Math.min(earlier, later) > MOST_UNSEEN * UNEVEN || Math.abs(earlier - later) <= UNEVEN) continue;
    return earlier < later ? step.earlierMoltId : step.laterMoltId;
  }
  return null;
}

/** A step with the one before and the one after it; at an end of the row with the two on the other side. */
function neighborhood(row: readonly StepInQuestion[], index: number): readonly StepInQuestion[] {
  const isFirst = row[index - 1]?.laterMoltId !== row[index]?.earlierMoltId;
  const isLast = row[index + 1]?.earlierMoltId !== row[index]?.laterMoltId;
  const from = isFirst ? index : isLast ? Math.max(0, index - 2) : index - 1;
  const to = isLast ? index : isFirst ? index + 2 : index + 1;
  return row.slice(from, to + 1);
}

/** How far steps differ in their growth per molt; more than any number where one is beyond molts, or where there are not two. */
function unevenness(steps: readonly StepInQuestion[]): number {
  if (steps.length < 2 || steps.some(isBeyondMolts)) return Number.POSITIVE_INFINITY;
  const perMolt = steps.map(({ logRatio, molts }) => logRatio / molts);
  return Math.max(...perMolt) - Math.min(...perMolt);
}

/** Two steps on end as one. The reading between them counts twice in the uncertainty, which only errs to the careful side. */
function joined(one: StepInQuestion, next: StepInQuestion): StepInQuestion {
  return {
    earlierMoltId: one.earlierMoltId,
    laterMoltId: next.laterMoltId,
    logRatio: one.logRatio + next.logRatio,
    uncertainty: Math.hypot(one.uncertainty, next.uncertainty),
    molts: one.molts + next.molts,
    noneMissed: one.noneMissed && next.noneMissed,
  };
}

function without(row: readonly StepInQuestion[], moltId: string): readonly StepInQuestion[] {
  return row.flatMap((step, index) => {
    const next = row[index + 1];
    if (step.laterMoltId === moltId && next?.earlierMoltId === moltId) return [joined(step, next)];
    return step.earlierMoltId === moltId || step.laterMoltId === moltId ? [] : [step];
  });
}

function endsOf({ earlierMoltId, laterMoltId }: StepInQuestion): string[] {
  return [earlierMoltId, laterMoltId];
}
