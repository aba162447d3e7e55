import { z } from 'zod';
import type { Estimate } from '../measuring/quantity.ts';
import type { Sex } from '../sexing/determination.ts';

/** Reasons to ask whether a male is mature; never an answer. */
export const MaturityHint = z
  .object({
    legsGainedPercent: z.number().nullable().describe('Leg I over carapace, latest against the one before; null where it did not jump'),
    waitedDays: z.int().nullable().describe('Since the last molt; null where that is not long for this animal'),
    longestIntervalDays: z.int().nullable().describe('Of the latest three; null with fewer than two known'),
  })
  .meta({ id: 'MaturityHint' });
export type MaturityHint = z.infer<typeof MaturityHint>;

export interface MaturityEvidence {
  readonly sex: Sex;
  /**
   * By how much leg I gained on the carapace at each molt on record, oldest first, as a ratio of shares; null where the skins on either
   * side do not tell, or did not follow each other. The last may come from the living animal, who alone shows the last instar.
   */
  readonly legGains: readonly (Estimate | null)[];
  /** Days between molts that followed each other, oldest first. */
  readonly intervalDays: readonly number[];
  /** Whole days since the last molt; null without one. */
  readonly waitedDays: number | null;
}

/** Adult male Aphonopelma madera show 3.46 against 2.62 of females (Hamilton CA et al. 2016, ZooKeys 560); from where to ask, an assumption of ours. */
const JUMP_PERCENT = 10;
/** Males seldom molt once mature; how long a wait is long, an assumption of ours. */
const LONG_WAIT = 2;

/**
 * Whether to ask if a male has matured: at his last molt the legs gain much against the carapace (Barrantes G,
 * Madrigal-Brenes R 2008, J. Arachnol. 36:545-551, for Tengella), and then he molts no more. Long legs are asked about in an
 * unsexed animal too; a wait alone is not, for grown females wait long. Null where there is nothing to ask.
 */
export function askMaturity({ sex, legGains, intervalDays, waitedDays }: MaturityEvidence): MaturityHint | null {
  if (sex === 'female') return null;
  const legsGainedPercent = jumpOf(legGains);
  const latest = intervalDays.slice(-3);
  const longestIntervalDays = latest.length < 2 ? null : Math.max(...latest);
  const isLong = sex === 'male' && waitedDays !== null && longestIntervalDays !== null && waitedDays > LONG_WAIT * longestIntervalDays;
  if (legsGainedPercent === null && !isLong) return null;
  return { legsGainedPercent, waitedDays: isLong ? waitedDays : null, longestIntervalDays };
}

/** The gain of the last molt if it is large, beyond its own uncertainty, and larger than every gain before. */
function jumpOf(gains: MaturityEvidence['legGains']): number | null {
  const last = gains.at(-1);
  if (!last) return null;
  const percent = percentOf(last);
  const doubtPercent = (200 * last.standardUncertainty) / last.value;
  if (percent < JUMP_PERCENT || percent < doubtPercent) return null;
  return gains.slice(0, -1).every((gain) => gain === null || percentOf(gain) < percent) ? percent : null;
}

function percentOf({ value }: Estimate): number {
  return 100 * (value - 1);
}
