import type { KeptForecast } from '../../domain/growth/forecast/keptForecast.ts';
import type { Result } from '../../domain/result.ts';

/** Append-only: a forecast is only worth scoring if nobody can put it right afterwards. */
export interface Forecasts {
  keep(specimenId: string, made: Pick<KeptForecast, 'basis' | 'forecast'>): Result<KeptForecast>;
  /** Oldest first. */
  ofSpecimen(specimenId: string): readonly KeptForecast[];
  /** Of all animals, those of one together and oldest first. */
  list(): readonly KeptForecast[];
}
