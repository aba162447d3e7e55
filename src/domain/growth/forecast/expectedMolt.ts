import type { CalendarDay } from '../../dates.ts';
import type { ForecastBasis } from './basis.ts';
import { forecastFrom } from './forecast.ts';

/** Days to watch an animal by. */
export interface ExpectedMolt {
  readonly from: CalendarDay;
  readonly likely: CalendarDay;
  readonly to: CalendarDay;
}

/**
 * The window as it stood when the interval began: what has been waited since moves it no further, or no animal would ever come
 * into its window or be overdue. It opens when a quarter of such intervals have ended and closes when 19 of 20 have. Null where
 * the beginning was not seen.
 */
export function expectedMoltFrom(basis: ForecastBasis): ExpectedMolt | null {
  const { start } = basis;
  if (!start || start.kind === 'acquired') return null;
  const { due } = forecastFrom({ ...basis, madeOn: start.kind === 'molt' ? start.from : start.on });
  return due && { from: due.window50.from, likely: due.middle, to: due.window90.to };
}
