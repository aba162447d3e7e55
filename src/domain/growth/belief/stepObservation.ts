import { z } from 'zod';
import { UNSEEN_STEPS } from '../priors.ts';
import { MOST_UNSEEN } from '../stepDoubt.ts';

/**
 * One step between two molts under each number of molts it may hold: those on record, one more, two more; or only those on
 * record, where the keeper is sure. Values are per molt, and so are their variances.
 */
export interface StepObservation {
  /** Instar in the middle of the step. */
  readonly along: number;
  readonly readings: readonly StepReading[];
}

export interface StepReading {
  readonly molts: number;
  /** ln of the days or of the ratio of one molt. */
  readonly value: number;
  /** Of the value, by what is not known of dates or sizes alone. */
  readonly knownVariance: number;
  /** Turns a density of the value into one of what was observed. */
  readonly density: number;
}

/** A reading with the weight it came to carry, as it is kept with a forecast. */
export const WeighedReading = z
  .object({
    along: z.number().describe('Instar'),
    value: z.number().describe('Natural logarithm, per molt'),
    variance: z.number().positive(),
    weight: z.number().min(0).max(1).describe('Probability that the step held as many molts'),
  })
  .meta({ id: 'WeighedReading' });
export type WeighedReading = z.infer<typeof WeighedReading>;

/** The molts of one step. */
export interface CountedMolts {
  readonly onRecord: number;
  /** The keeper is sure that these were all. */
  readonly noneMissed: boolean;
}

/**
 * Days between two molts. Each date may be a span, all of whose days are equally likely: the variance of a difference of two
 * of them is (w1^2 + w2^2) / 12, with a width of one day for a known day. The sum of several log-normal intervals is taken as
 * log-normal again (Fenton 1960, IRE Trans. Commun. Syst. 8:57-67), which is `scatter / molts` for intervals of the same
 * length to the first order.
 *
 * @param days mean of the difference, above zero.
 */
export function intervalObservation(along: number, days: number, dateVariance: number, counted: CountedMolts): StepObservation {
  return {
    along,
    readings: possibleCounts(counted).map((count) => ({
      molts: count,
      value: Math.log(days / count),
      knownVariance: dateVariance / days ** 2,
      density: 1,
    })),
  };
}

/** Growth between two measured skins: ln of the later over the earlier and the variance the readings leave it. */
export function growthObservation(along: number, logRatio: number, readingVariance: number, counted: CountedMolts): StepObservation {
  return {
    along,
    readings: possibleCounts(counted).map((count) => ({
      molts: count,
      value: logRatio / count,
      knownVariance: readingVariance / count ** 2,
      density: 1 / count,
    })),
  };
}

function possibleCounts({ onRecord, noneMissed }: CountedMolts): number[] {
  return Array.from({ length: noneMissed ? 1 : MOST_UNSEEN + 1 }, (_, more) => onRecord + more);
}

/** How likely each reading is, given the share of steps that hold more than is on record. */
export function readingPriors(unseen: number): readonly number[] {
  return [1 - unseen, unseen * UNSEEN_STEPS.oneMolt, unseen * (1 - UNSEEN_STEPS.oneMolt)];
}
