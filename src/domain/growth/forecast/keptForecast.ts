import { z } from 'zod';
import { Instant } from '../../dates.ts';
import { ForecastBasis } from './basis.ts';
import { GrowthForecast } from './forecast.ts';
import type { PlacedMolt } from './growthRecord.ts';
import { ForecastScore, scoreForecast } from './score.ts';

/** A forecast as it was made. */
export const KeptForecast = z
  .object({ id: z.string(), specimenId: z.string(), madeAt: Instant, basis: ForecastBasis, forecast: GrowthForecast })
  .meta({ id: 'KeptForecast' });
export type KeptForecast = z.infer<typeof KeptForecast>;

/** Why a forecast has no score. */
export const Unscored = z
  .enum(['waiting', 'start-not-on-record', 'had-molted-already', 'molt-missing'])
  .meta({ id: 'Unscored', description: 'waiting: no molt since; molt-missing: the next one on record is not the next one' });
export type Unscored = z.infer<typeof Unscored>;

export const JudgedForecast = z
  .object({
    score: ForecastScore.nullable(),
    unscored: Unscored.nullable(),
    counts: z.boolean().describe('false where an earlier forecast for the same molt counts already: one molt, one score'),
  })
  .meta({ id: 'JudgedForecast' });
export type JudgedForecast = z.infer<typeof JudgedForecast>;

/**
 * Scores the forecasts of one animal by what is on record now. A molt whose days reach back to the day the forecast was made, or
 * before, was history already: it scores nothing. Nor does one with molts missing before it.
 *
 * @param kept oldest first.
 * @param placed the animal's molts, oldest first, with the sizes of their skins.
 */
export function judgeForecasts(kept: readonly KeptForecast[], placed: readonly PlacedMolt[]): JudgedForecast[] {
  const counted = new Set<string>();
  return kept.map((one) => {
    const judged = judge(one, placed);
    if (typeof judged === 'string') return { score: null, unscored: judged, counts: false };
    const counts = !counted.has(judged.moltId);
    counted.add(judged.moltId);
    return { score: judged.score, unscored: null, counts };
  });
}

function judge(
  { basis, forecast }: KeptForecast,
  placed: readonly PlacedMolt[],
): Unscored | { readonly score: ForecastScore; readonly moltId: string } {
  const { start } = basis;
  const place = start?.kind === 'molt' ? placed.findIndex(({ molt }) => molt.id === start.moltId) : -1;
  if (start?.kind === 'molt' && place < 0) return 'start-not-on-record';
  const next = placed[place + 1];
  if (!next) return 'waiting';
  const { id, happenedFrom, happenedTo } = next.molt;
  if (happenedFrom <= basis.madeOn) return 'had-molted-already';
  const before = placed[place];
  if (!next.stepKnown || (before && next.instar - before.instar > 1)) return 'molt-missing';
  return { moltId: id, score: scoreForecast(forecast, { happenedFrom, happenedTo, carapaceLengthMm: next.size?.lengthMm ?? null }) };
}
