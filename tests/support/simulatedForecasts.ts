import { readCabinet } from '../../src/domain/growth/forecast/cabinetForecast.ts';
import { type ForecastScore, scoreForecast } from '../../src/domain/growth/forecast/score.ts';
import type { SimulatedAnimal } from '../../src/domain/growth/simulation/simulatedCabinet.ts';
import { forecastFor } from './forecastFor.ts';

/** Forecasts each animal on the last day of the records and holds that against the molt that nobody has seen yet. */
export function scoresOf(animals: readonly SimulatedAnimal[], today: string): ForecastScore[] {
  const cabinet = readCabinet(
    animals.map(({ record }) => record),
    today,
  );
  return animals.map(({ record, truth }) => {
    const forecast = forecastFor(cabinet, record.specimenId);
    if (!forecast) throw new Error(`Expected a forecast for ${record.specimenId}`);
    return scoreForecast(forecast, {
      happenedFrom: truth.nextMoltOn,
      happenedTo: truth.nextMoltOn,
      carapaceLengthMm: truth.nextSkinMm,
    });
  });
}
