import { z } from 'zod';
import type { BelievedStep } from '../belief/growthBelief.ts';
import { growthSteps, type MeasuredStep } from '../measuredStep.ts';
import { type CrosbyValue, crosbyValues } from './crosby.ts';

/** What one step of growth says about molts that may be missing between two measured skins. */
export const MissedMoltCheck = z
  .object({
    earlierMoltId: z.string(),
    laterMoltId: z.string(),
    instarsOnRecord: z.int().min(1).describe('From one skin to the other, as far as is on record'),
    observedRatio: z.number().describe('Later over earlier'),
    expectedRatio: z.number().describe('Of one molt here, by the other steps of the animal, its kin and its family'),
    probabilities: z.array(z.number().min(0).max(1)).length(3).describe('Of 0, 1, 2 instars more than on record'),
    crosbyPercent: z.number().nullable().describe('Change of the ratio against the one before, in percent; null at the first'),
    crosbyAlarm: z.boolean().describe('The change is beyond 10 % either way'),
    verdict: z
      .enum(['none', 'irregular', 'possible', 'likely'])
      .describe(
        'likely: probable, with a rise and a fall as a skipped instar leaves; possible: one chance in four; irregular: an alarm alone',
      ),
    suggestedSkipped: z.int().min(0).max(2),
  })
  .meta({ id: 'MissedMoltCheck' });
export type MissedMoltCheck = z.infer<typeof MissedMoltCheck>;

/** From what probability of a missed molt on it is worth a question, and from what on it is the better explanation. */
const POSSIBLE = 1 / 4;
const PROBABLE = 1 / 2;

/**
 * Checks each step for molts that may be missing in it. Each is judged by kin and all the other steps of the animal, never by itself,
 * and none of them, of kin neither, is taken at its word.
 *
 * A missed molt is `likely` only where it is more probable than not and Crosby's value rises above 20 % and falls below -15 % just
 * after, which is what a skipped instar leaves and scatter seldom does; `possible` from one chance in four on, or where rise
 * and fall stand alone; else a value beyond 10 % means growth that is `irregular`, as many complete series are, unless it is
 * the fall after a suggested gap. Where the keeper is sure that none was missed, nothing is suggested, whatever the sizes.
 *
 * @param sizes in rising order of step.
 * @param believed of the same animal. A step that no belief speaks of, one with a size no carapace has, is not judged.
 */
export function checkMissedMolts(sizes: readonly MeasuredStep[], believed: readonly BelievedStep[]): MissedMoltCheck[] {
  const steps = growthSteps(sizes);
  const crosby = crosbyValues(steps);
  const checks = steps.flatMap((step, index): MissedMoltCheck[] => {
    const [earlierMoltId, laterMoltId] = [step.earlier.moltId, step.later.moltId];
    const belief = believed.find((one) => one.earlierMoltId === earlierMoltId && one.laterMoltId === laterMoltId);
    if (!belief) return [];
    const [none = 1, one = 0, two = 0] = belief.probabilities;
    const value = crosby[index];
    const verdict = belief.noneMissed ? 'none' : verdictOf(1 - none, value);
    return [
      {
        earlierMoltId,
        laterMoltId,
        instarsOnRecord: step.instars,
        observedRatio: Math.exp(step.logRatio),
        expectedRatio: Math.exp(belief.expectedLogRatio),
        probabilities: [none, one, two],
        crosbyPercent: value?.percent ?? null,
        crosbyAlarm: value?.beyondLimit ?? false,
        verdict,
        suggestedSkipped: verdict === 'likely' || verdict === 'possible' ? (two > one ? 2 : 1) : 0,
      },
    ];
  });
  return checks.map((check, index) => (isEchoOf(check, checks[index - 1]) ? { ...check, verdict: 'none' } : check));
}

function verdictOf(missed: number, crosby: CrosbyValue | undefined): MissedMoltCheck['verdict'] {
  if (crosby?.looksLikeGap) return missed > PROBABLE ? 'likely' : 'possible';
  if (missed > POSSIBLE) return 'possible';
  return crosby?.beyondLimit ? 'irregular' : 'none';
}

/**
 * Whether an irregular step only falls back from a gap suggested just before it: the rise there and the fall here are one thing, and
 * the gap is the better explanation of both.
 */
function isEchoOf({ verdict, crosbyPercent }: MissedMoltCheck, before: MissedMoltCheck | undefined): boolean {
  return verdict === 'irregular' && (crosbyPercent ?? 0) < 0 && before !== undefined && before.suggestedSkipped > 0;
}
