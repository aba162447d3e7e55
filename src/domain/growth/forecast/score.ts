import { z } from 'zod';
import type { CalendarDay } from '../../dates.ts';
import type { GrowthForecast } from './forecast.ts';

/** Where the truth came to lie. A span of days that is only partly within a window leaves it open; overrun: its days passed without a molt. */
export const Hit = z.enum(['within-50', 'within-90', 'early', 'late', 'overrun', 'open']).meta({ id: 'Hit' });
export type Hit = z.infer<typeof Hit>;

export const ForecastScore = z
  .object({
    due: Hit.nullable().describe('Null where no day was foretold'),
    size: z
      .enum(['within-50', 'within-90', 'smaller', 'larger'])
      .nullable()
      .describe('One molt ahead; null where no size was foretold or measured'),
  })
  .meta({ id: 'ForecastScore' });
export type ForecastScore = z.infer<typeof ForecastScore>;

/** The molt that came. */
export interface CameTrue {
  readonly happenedFrom: CalendarDay;
  readonly happenedTo: CalendarDay;
  /** Of the skin it left; null where that was not measured. */
  readonly carapaceLengthMm: number | null;
}

/** How a forecast held: pure comparison, made anew whenever it is asked for, so that a date put right puts its score right. */
export function scoreForecast({ due, size }: Pick<GrowthForecast, 'due' | 'size'>, came: CameTrue): ForecastScore {
  return {
    due: due && dueHit(due, came),
    size: size && came.carapaceLengthMm !== null ? sizeHit(size.nextSkin, came.carapaceLengthMm) : null,
  };
}

/** A window that has passed is missed at once, or only what comes early would be scored; null while it is open. */
export function scoreOverrun({ due }: Pick<GrowthForecast, 'due'>, today: CalendarDay): ForecastScore | null {
  return due && today > due.window90.to ? { due: 'overrun', size: null } : null;
}

function dueHit({ window50, window90 }: NonNullable<GrowthForecast['due']>, { happenedFrom, happenedTo }: CameTrue): Hit {
  const place = (day: CalendarDay): Hit => {
    if (day >= window50.from && day <= window50.to) return 'within-50';
    if (day >= window90.from && day <= window90.to) return 'within-90';
    return day < window90.from ? 'early' : 'late';
  };
  const [first, last] = [place(happenedFrom), place(happenedTo)];
  if (first === last) return first === 'within-90' && happenedFrom < window50.from && happenedTo > window50.to ? 'open' : first;
  return 'open';
}

function sizeHit(interval: NonNullable<GrowthForecast['size']>['nextSkin'], lengthMm: number): ForecastScore['size'] {
  if (lengthMm >= interval.low50Mm && lengthMm <= interval.high50Mm) return 'within-50';
  if (lengthMm >= interval.low90Mm && lengthMm <= interval.high90Mm) return 'within-90';
  return lengthMm < interval.low90Mm ? 'smaller' : 'larger';
}
