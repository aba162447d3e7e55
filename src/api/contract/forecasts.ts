import { z } from 'zod';
import { Coverage } from '../../domain/growth/forecast/coverage.ts';
import { JudgedForecast, KeptForecast } from '../../domain/growth/forecast/keptForecast.ts';
import type { Endpoint } from './endpoint.ts';

/** A forecast as it was made and what came of it. */
export const ScoredForecast = KeptForecast.omit({ basis: true }).extend(JudgedForecast.shape).meta({ id: 'ScoredForecast' });
export type ScoredForecast = z.infer<typeof ScoredForecast>;

/** How well forecasts hold. */
export const ForecastScores = z
  .object({
    coverage: Coverage.describe("Of the keeper's own animals, one forecast for each molt that came or should have come"),
    forecasts: z.array(ScoredForecast).describe('Those of one animal together, oldest first'),
  })
  .meta({ id: 'ForecastScores' });
export type ForecastScores = z.infer<typeof ForecastScores>;

export const forecastEndpoints = {
  'GET /api/forecasts/scores': { summary: 'Past forecasts and how they held', answer: ForecastScores },
  'GET /api/specimens/{specimenId}/forecasts': {
    summary: 'Past forecasts of one animal with all they followed from, oldest first',
    answer: z.array(KeptForecast),
  },
  'POST /api/specimens/{specimenId}/forecasts': { summary: 'Keep the forecast of today', answer: KeptForecast, status: 201 },
} as const satisfies Record<string, Endpoint>;
