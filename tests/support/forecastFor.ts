import { basisFor, type CabinetGrowth } from '../../src/domain/growth/forecast/cabinetForecast.ts';
import { forecastFrom, type GrowthForecast } from '../../src/domain/growth/forecast/forecast.ts';

/** The forecast for one animal; null for an animal that is not in the cabinet. */
export function forecastFor(cabinet: CabinetGrowth, specimenId: string): GrowthForecast | null {
  const basis = basisFor(cabinet, specimenId);
  return basis && forecastFrom(basis);
}
