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
 * The skins whose sizes are in doubt, by the ids of their molts: those with such a step on every side on which a measured skin stands.
 * One that a sound step joins to its neighbor is believed, and the doubt is the other's.
 *
 * @param steps of one animal, in order.
 */
export function skinsInDoubt(steps: readonly StepInQuestion[]): ReadonlySet<string> {
  const skins = steps.flatMap(({ earlierMoltId, laterMoltId }) => [earlierMoltId, laterMoltId]);
  const sound = new Set(
    steps.filter((step) => !isBeyondMolts(step)).flatMap(({ earlierMoltId, laterMoltId }) => [earlierMoltId, laterMoltId]),
  );
  return new Set(skins.filter((moltId) => !sound.has(moltId)));
}
