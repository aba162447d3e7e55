import { z } from 'zod';
import { type CalendarDay, Instant } from '../../dates.ts';
import type { PlacedMolt, SkinSize } from '../belief/growthRecord.ts';
import { FORECAST_MODEL, ForecastBasis } from './basis.ts';
import { GrowthForecast, sizeFrom } from './forecast.ts';
import { ForecastScore, scoreForecast, scoreOverrun } from './score.ts';

/** A forecast as it was made. */
export const KeptForecast = z
  .object({ id: z.string(), specimenId: z.string(), madeAt: Instant, basis: ForecastBasis, forecast: GrowthForecast })
  .meta({ id: 'KeptForecast' });
export type KeptForecast = z.infer<typeof KeptForecast>;

/** Why a forecast has no score. */
export const Unscored = z.enum(['waiting', 'no-longer-awaited', 'start-not-on-record', 'had-molted-already', 'molt-missing']).meta({
  id: 'Unscored',
  description:
    'waiting: no molt since and its window is open; no-longer-awaited: none will be seen here; molt-missing: the next one on record is not the next one',
});
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
 * before, was history already: it scores nothing. Nor does one with molts missing before it. A window that has passed without a
 * molt is scored as missed. Sizes are scored one molt ahead, see `sizeForetold`.
 *
 * @param kept oldest first.
 */
export function judgeForecasts(kept: readonly KeptForecast[], { placed, ...waiting }: MoltsAwaited): JudgedForecast[] {
  const counted = new Set<number>();
  return kept.map((one) => {
    const judged = judge(one, { placed, ...waiting });
    if (typeof judged === 'string') return { score: null, unscored: judged, counts: false };
    const counts = !counted.has(judged.place);
    counted.add(judged.place);
    if (judged.score) return { score: judged.score, unscored: null, counts };
    return { score: null, unscored: 'waiting', counts: false };
  });
}

/** The animal's molts and whether another is awaited. */
export interface MoltsAwaited {
  /** Oldest first, with the sizes of their skins. */
  readonly placed: readonly PlacedMolt[];
  /** false for an animal that is gone or, as a mature male, molts no more. */
  readonly isAwaited: boolean;
  readonly today: CalendarDay;
}

/** `place` is that of the foretold molt in the row. */
function judge(
  { basis, forecast }: KeptForecast,
  { placed, isAwaited, today }: MoltsAwaited,
): Unscored | { readonly score: ForecastScore | null; readonly place: number } {
  const { start } = basis;
  const place = start?.kind === 'molt' ? placed.findIndex(({ molt }) => molt.id === start.moltId) : -1;
  if (start?.kind === 'molt' && place < 0) return 'start-not-on-record';
  const next = placed[place + 1];
  if (!next) return isAwaited ? { place: place + 1, score: scoreOverrun(forecast, today) } : 'no-longer-awaited';
  const { happenedFrom, happenedTo } = next.molt;
  if (happenedFrom <= basis.madeOn) return 'had-molted-already';
  const before = placed[place];
  if (!next.stepKnown || (before && next.instar - before.instar > 1)) return 'molt-missing';
  const foretold = { due: forecast.due, size: sizeForetold({ basis, forecast }, before ? sureSizeOf(before) : null) };
  return {
    place: place + 1,
    score: scoreForecast(foretold, { happenedFrom, happenedTo, carapaceLengthMm: sureSizeOf(next)?.lengthMm ?? null }),
  };
}

/** A size in doubt is nothing to judge by. */
function sureSizeOf({ size, inDoubt }: PlacedMolt): SkinSize | null {
  return inDoubt ? null : size;
}

/**
 * A forecast is mostly kept with a molt, days before the skin of that molt is measured, so it reaches from the skin before across two
 * molts. What is to be judged is the size one molt ahead, which the keeper was shown from the measuring on: the kept belief on
 * growth, counted from that skin as it is on record now. Null where that was never measured, or the way of forecasting has changed since.
 *
 * @param lastSkin of the molt from which the forecast counts.
 */
function sizeForetold({ basis, forecast }: Pick<KeptForecast, 'basis' | 'forecast'>, lastSkin: SkinSize | null): GrowthForecast['size'] {
  const { start, instar, growth, model } = basis;
  if (start?.kind !== 'molt') return null;
  if (basis.lastSkin?.moltId === start.moltId) return forecast.size;
  if (!lastSkin || model !== FORECAST_MODEL) return null;
  return sizeFrom({ instar, growth, lastSkin: { ...lastSkin, instar: instar - 1 } });
}
