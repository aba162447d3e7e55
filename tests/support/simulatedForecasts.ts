import { allSeries, growthIn } from '../../src/domain/growth/belief/pooledCabinet.ts';
import { type CabinetGrowth, readCabinet } from '../../src/domain/growth/forecast/cabinetForecast.ts';
import { type ForecastScore, scoreForecast } from '../../src/domain/growth/forecast/score.ts';
import { nearestKin } from '../../src/domain/growth/kin.ts';
import type { SimulatedAnimal } from '../../src/domain/growth/simulation/simulatedCabinet.ts';
import { forecastFor } from './forecastFor.ts';

/** Forecasts each animal on the last day of the records and holds that against the molt that nobody has seen yet. */
export function scoresOf(animals: readonly SimulatedAnimal[], today: string): ForecastScore[] {
  const cabinet = wholeCabinet(animals, today);
  return animals.map((animal) => scoreOf(animal, cabinet));
}

/** The same with the growth of an animal and of its nearest measured kin alone, which is what every room reads. */
export function scoresByNearestKin(animals: readonly SimulatedAnimal[], today: string): ForecastScore[] {
  const { intervals } = wholeCabinet(animals, today);
  const candidates = animals.map(({ record }) => ({
    specimenId: record.specimenId,
    taxon: record.taxon,
    eggSacGroup: record.eggSacGroup,
    molts: record.molts.length,
    isMeasured: record.sizes.length > 0,
    record,
  }));
  return animals.map((animal) => {
    const near = nearestKin(animal.record, candidates).map(({ record }) => record);
    return scoreOf(animal, { intervals, growth: growthIn(allSeries(near, today), today) });
  });
}

function wholeCabinet(animals: readonly SimulatedAnimal[], today: string): CabinetGrowth {
  return readCabinet(
    animals.map(({ record }) => record),
    today,
  );
}

function scoreOf({ record, truth }: SimulatedAnimal, cabinet: CabinetGrowth): ForecastScore {
  const forecast = forecastFor(cabinet, record.specimenId);
  if (!forecast) throw new Error(`Expected a forecast for ${record.specimenId}`);
  return scoreForecast(forecast, {
    happenedFrom: truth.nextMoltOn,
    happenedTo: truth.nextMoltOn,
    carapaceLengthMm: truth.nextSkinMm,
  });
}
