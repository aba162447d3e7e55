import { z } from 'zod';
import { CalendarDay } from '../../dates.ts';
import { Share, Shares } from '../belief/shares.ts';
import { IntervalStart } from './basis.ts';

const DayWindow = z.object({ from: CalendarDay, to: CalendarDay }).meta({ id: 'DayWindow' });

/** Left out of forecasts kept before it was told. */
export const OwnTrend = Share.optional().describe('Share of the change from instar to instar that its own steps tell');

/** When the next molt is due. */
export const DueForecast = z
  .object({
    since: IntervalStart,
    middle: CalendarDay.describe('As likely to come before as after'),
    window50: DayWindow,
    window90: DayWindow,
    chanceOfLasting: z.number().min(0).max(1).describe('Share of such intervals that last longer than this one already has'),
    ownIntervals: z.int().min(0),
    shares: Shares,
    ownTrend: OwnTrend,
  })
  .meta({ id: 'DueForecast' });
export type DueForecast = z.infer<typeof DueForecast>;
