import { unwrap } from '../../domain/result.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { forecastEndpoints } from '../contract/forecasts.ts';
import type { HandlersFor } from '../route.ts';
import { forecastScoresOf } from '../views/forecastScores.ts';
import { keepForecast } from '../views/forecasts.ts';

export function forecastHandlers(context: ApiContext): HandlersFor<keyof typeof forecastEndpoints> {
  const { archive } = context;
  return {
    'GET /api/forecasts/scores': () => forecastScoresOf(archive, todayOf(context)),
    'GET /api/specimens/{specimenId}/forecasts': ({ path }) => {
      const { id } = unwrap(archive.specimens.get(path.specimenId));
      return [...archive.forecasts.ofSpecimen(id)];
    },
    'POST /api/specimens/{specimenId}/forecasts': ({ path }) =>
      unwrap(archive.transaction(() => keepForecast(archive, unwrap(archive.specimens.get(path.specimenId)), todayOf(context)))),
  };
}
