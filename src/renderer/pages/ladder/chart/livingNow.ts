import { type CalendarDay, daysBetween } from '../../../../domain/dates.ts';
import type { SizeForecast } from '../../../../domain/growth/belief/foretoldSize.ts';
import type { DueForecast } from '../../../../domain/growth/forecast/dueForecast.ts';
import { isDayTold } from '../../../../domain/growth/forecast/expectedMolt.ts';
import type { GrowthForecast } from '../../../../domain/growth/forecast/forecast.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Instar } from '../../../../domain/molting/instar.ts';
import { daysInWords, spanInWords } from '../../../../words/dates.ts';
import { millimeters } from '../../../../words/forecast.ts';
import { instarMark } from '../../../../words/instars.ts';
import type { Measure } from './measures.ts';

/** The instar that has not ended: the one place of the charts without a skin. */
export interface LivingNow {
  readonly today: CalendarDay;
  /** Null where it is not known. */
  readonly instar: Instar | null;
  /** Of the carapace of the skin that this instar will leave; null where none is foretold. */
  readonly nextSkin: SizeForecast | null;
  /** Null where no day is foretold. */
  readonly due: Pick<DueForecast, 'middle' | 'window50' | 'window90'> | null;
}

/** @param forecast null of an animal whose next molt is not foretold, a mature male among them. */
export function livingNowOf(today: CalendarDay, instar: Instar | null, forecast: GrowthForecast | null): LivingNow {
  return {
    today,
    instar,
    nextSkin: forecast?.size?.nextSkin ?? null,
    due: forecast?.due && isDayTold(forecast.due) ? forecast.due : null,
  };
}

/** What is foretold of its size in the measure drawn: only the carapace's length is foretold. */
export function foretoldIn(living: LivingNow | null, measure: Measure): SizeForecast | null {
  return measure === 'carapaceLengthMm' ? (living?.nextSkin ?? null) : null;
}

/** "12, living now" below an axis, on two lines. */
export function livingTick({ instar }: LivingNow): readonly string[] {
  return instar ? [instarMark(instar), 'living now'] : ['living now'];
}

/** Days since the last molt, shortest and longest, and those at which the next is foretold. Null where nothing was shed before today. */
export interface RunningInterval {
  readonly waited: { readonly from: number; readonly to: number };
  readonly foretold: Readonly<Record<'low90' | 'low50' | 'middle' | 'high50' | 'high90', number>> | null;
}

export function runningInterval(last: Pick<Rung, 'happenedFrom' | 'happenedTo' | 'presumed'>, living: LivingNow): RunningInterval | null {
  const waited = { from: Math.max(0, daysBetween(last.happenedTo, living.today)), to: daysBetween(last.happenedFrom, living.today) };
  if (last.presumed || waited.to < 1) return null;
  const middle = (waited.from + waited.to) / 2;
  const at = (day: CalendarDay): number => middle + daysBetween(living.today, day);
  const { due } = living;
  return {
    waited,
    foretold: due && {
      low90: at(due.window90.from),
      low50: at(due.window50.from),
      middle: at(due.middle),
      high50: at(due.window50.to),
      high90: at(due.window90.to),
    },
  };
}

/** What the green signs say of the carapace, in a legend. */
export function foretoldSizeInWords({ low90Mm, high90Mm, low50Mm, high50Mm }: SizeForecast): string {
  return `The green bar stands at the instar living now and is what the forecast tells of its skin, the next one: ${millimeters(low90Mm, high90Mm)} with nine chances in ten, ${millimeters(low50Mm, high50Mm)} with even ones.`;
}

/** What the open part of a chart says of the interval that runs. */
export function runningInWords({ waited }: RunningInterval, { due }: LivingNow): string {
  const so = `The instar living now has lasted ${daysInWords(waited.from, waited.to)} so far and has not ended.`;
  return due
    ? `${so} Green is where the forecast has its end: ${spanInWords(due.window90.from, due.window90.to)}, nine chances in ten.`
    : so;
}
