import { chiSquareTail } from '../../numerics/chiSquare.ts';
import { studentTQuantile, studentTTwoSided } from '../../numerics/studentT.ts';
import { type PredictiveLaw, scaleOf } from '../belief/predictive.ts';

/** Days of an interval whose logarithm follows Student's t: log-normal with a scatter that is itself only estimated. */
export type IntervalLaw = PredictiveLaw;

/** No quantile reaches further: more than any tarantula lives. */
const LONGEST_DAYS = 36_525;
/** Below this chance of lasting so long the law says nothing of use, and rounding would. */
const LEAST_CHANCE = 1e-12;

/** P(interval > days). 1 for no days at all. */
export function chanceOfLasting(law: IntervalLaw, days: number): number {
  if (!(days > 0)) return 1;
  const t = (Math.log(days) - law.location) / scaleOf(law);
  const oneSided = studentTTwoSided(t, law.degreesOfFreedom) / 2;
  return t > 0 ? oneSided : 1 - oneSided;
}

/**
 * Days from the start of a running interval below which it stays with the given probability, given that it has lasted
 * `waitedDays`: the quantile of the law cut off there, F^-1(1 - (1 - p) P(interval > waited)).
 *
 * @param probability strictly between 0 and 1.
 * @throws RangeError outside: a mistake of the caller.
 */
export function runningIntervalQuantile(law: IntervalLaw, waitedDays: number, probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Expected a probability between 0 and 1, got ${probability}`);
  const lasting = Math.max(LEAST_CHANCE, chanceOfLasting(law, waitedDays));
  const t = -studentTQuantile((1 - probability) * lasting, law.degreesOfFreedom);
  return within(Math.exp(law.location + t * scaleOf(law)), waitedDays);
}

/** A start that is known to lie within some days, each as likely as the others. */
export interface WideStart {
  readonly law: IntervalLaw;
  readonly widthDays: number;
}

/** So finely a wide start is summed over. */
const STARTS = 40;

/** P(the interval lasts beyond so many days after the first day it can have begun). 1 where it cannot have begun by then. */
function chancesBeyond({ law, widthDays }: WideStart, days: number): readonly number[] {
  return Array.from({ length: STARTS }, (_, index) => chanceOfLasting(law, days - ((index + 0.5) / STARTS) * widthDays));
}

/**
 * The same as `runningIntervalQuantile`, counted from the first day of a wide start S: below it S + D stays with the given
 * probability, given that it has lasted until `waitedDays`. P(S + D > t | S + D > w) = sum P(D > t - s) / sum P(D > w - s) over
 * equally likely s, so that a start long ago counts only as far as an interval would last from it. Solved by halving.
 */
export function wideStartQuantile(start: WideStart, waitedDays: number, probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Expected a probability between 0 and 1, got ${probability}`);
  const beyond = (days: number) => sum(chancesBeyond(start, days));
  const lasting = Math.max(LEAST_CHANCE, beyond(waitedDays)) * (1 - probability);
  let low = waitedDays;
  let high = Math.max(1, waitedDays) + 256;
  while (beyond(high) > lasting && high - waitedDays < LONGEST_DAYS) high = waitedDays + 2 * (high - waitedDays);
  while (high - low > 0.01) {
    const middle = (low + high) / 2;
    if (beyond(middle) > lasting) low = middle;
    else high = middle;
  }
  return within((low + high) / 2, waitedDays);
}

/** Share of such intervals that last longer than this one has, over the starts it may have had, as likely as the wait makes them. */
export function chanceFromWideStart(start: WideStart, waitedDays: number): number {
  const chances = chancesBeyond(start, waitedDays);
  const all = sum(chances);
  return all < LEAST_CHANCE ? 0 : sum(chances.map((chance) => chance ** 2)) / all;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}

/**
 * Days from a first look at the animal, somewhere within an interval that had begun nobody knows when, given that it has lasted
 * `waitedDays` since: the forward recurrence time of a renewal process, P(> t) = E[(D - t)+] / E[D] (Cox 1962, Renewal Theory,
 * ch. 5), here for log-normal D, whose partial expectation has a closed form. Solved by halving.
 */
export function unseenStartQuantile(law: IntervalLaw, waitedDays: number, probability: number): number {
  if (!(probability > 0 && probability < 1)) throw new RangeError(`Expected a probability between 0 and 1, got ${probability}`);
  const lasting = Math.max(LEAST_CHANCE, chanceFromFirstLook(law, waitedDays)) * (1 - probability);
  let low = waitedDays;
  let high = Math.max(1, waitedDays);
  while (chanceFromFirstLook(law, high) > lasting && high < LONGEST_DAYS) high *= 2;
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (chanceFromFirstLook(law, middle) > lasting) low = middle;
    else high = middle;
  }
  return within((low + high) / 2, waitedDays);
}

/** P(days from a first look > t) for a normal logarithm. */
export function chanceFromFirstLook({ location, variance }: IntervalLaw, days: number): number {
  if (!(days > 0)) return 1;
  const deviation = Math.sqrt(variance);
  const z = (location - Math.log(days)) / deviation;
  return Math.max(0, normalBelow(z + deviation) - days * Math.exp(-location - variance / 2) * normalBelow(z));
}

function normalBelow(z: number): number {
  const half = chiSquareTail(z * z, 1) / 2;
  return z > 0 ? 1 - half : half;
}

function within(days: number, waitedDays: number): number {
  return Math.min(LONGEST_DAYS + waitedDays, Math.max(waitedDays, days));
}
