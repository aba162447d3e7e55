import { z } from 'zod';
import type { ForecastScore } from './score.ts';

const Tally = z
  .object({
    scored: z.int().min(0),
    within50: z.int().min(0).describe('About half of `scored` if the forecasts are right'),
    within90: z.int().min(0).describe('About nine of ten; counts those within the narrower window too'),
  })
  .meta({ id: 'CoverageTally' });

/** How often the truth came to lie in the windows. */
export const Coverage = z
  .object({
    due: Tally,
    size: Tally,
    overrun: z.int().min(0).describe('Windows that passed without a molt, counted among the `scored` days'),
    open: z.int().min(0).describe('Molts whose days lie partly within a window: not counted'),
  })
  .meta({ id: 'Coverage' });
export type Coverage = z.infer<typeof Coverage>;

export function coverageOf(scores: readonly ForecastScore[]): Coverage {
  const tally = (hits: readonly (string | null)[]) => {
    const scored = hits.filter((hit) => hit !== null && hit !== 'open');
    const within50 = scored.filter((hit) => hit === 'within-50').length;
    return { scored: scored.length, within50, within90: within50 + scored.filter((hit) => hit === 'within-90').length };
  };
  return {
    due: tally(scores.map(({ due }) => due)),
    size: tally(scores.map(({ size }) => size)),
    overrun: scores.filter(({ due }) => due === 'overrun').length,
    open: scores.filter(({ due }) => due === 'open').length,
  };
}
