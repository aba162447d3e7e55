import { KeptForecast } from '../../domain/growth/forecast/keptForecast.ts';
import type { Forecasts } from '../records/forecasts.ts';
import type { RecordContext } from './context.ts';
import { decoder, parseDocument } from './decoding.ts';
import { specimenExists } from './specimens.ts';

const SELECT_FORECASTS = 'SELECT id, specimen_id AS specimenId, made_at AS madeAt, basis, forecast FROM forecast';
const IN_ORDER = 'ORDER BY specimen_id, ordinal';

export function forecastsIn(context: RecordContext): Forecasts {
  const { catalogue, ambient, damage } = context;
  const forecasts = decoder(
    'forecast',
    KeptForecast,
    ({ basis, forecast, ...row }) => ({ ...row, basis: parseDocument(basis), forecast: parseDocument(forecast) }),
    damage,
  );
  return {
    keep: (specimenId, { basis, forecast }) =>
      catalogue.atomically(() => {
        const known = specimenExists(context, specimenId);
        if (!known.ok) return known;
        const id = ambient.newId();
        catalogue.run(
          'INSERT INTO forecast (id, specimen_id, made_at, basis, forecast) VALUES (:id, :specimenId, :madeAt, :basis, :forecast)',
          {
            id,
            specimenId,
            madeAt: ambient.now(),
            basis: JSON.stringify(basis),
            forecast: JSON.stringify(forecast),
          },
        );
        return forecasts.one(catalogue.one(`${SELECT_FORECASTS} WHERE id = :id`, { id }), id);
      }),
    ofSpecimen: (specimenId) =>
      forecasts.many(catalogue.all(`${SELECT_FORECASTS} WHERE specimen_id = :specimenId ${IN_ORDER}`, { specimenId })),
    list: () => forecasts.many(catalogue.all(`${SELECT_FORECASTS} ${IN_ORDER}`)),
  };
}
