import { z } from 'zod';
import { addDays, CalendarDay, daysBetween } from '../../dates.ts';
import { foretoldSize, SizeForecast } from '../belief/foretoldSize.ts';
import { dayWithin, ForecastFact } from '../belief/growthRecord.ts';
import { informed, meanAt, varianceAt } from '../belief/line.ts';
import type { LineBasis } from '../belief/lineBasis.ts';
import { predictiveLaw } from '../belief/predictive.ts';
import { Shares, sharesAt } from '../belief/shares.ts';
import { evidenceFrom } from '../belief/stepShares.ts';
import { type ForecastBasis, IntervalStart } from './basis.ts';
import { stageOf } from './expectedMolt.ts';
import { chanceFromFirstLook, chanceOfLasting, runningIntervalQuantile, unseenStartQuantile } from './waiting.ts';

const DayWindow = z.object({ from: CalendarDay, to: CalendarDay }).meta({ id: 'DayWindow' });

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
  })
  .meta({ id: 'DueForecast' });
export type DueForecast = z.infer<typeof DueForecast>;

export const GrowthForecast = z
  .object({
    model: z.int(),
    madeOn: CalendarDay,
    due: DueForecast.nullable(),
    size: z
      .object({
        nextSkin: SizeForecast.describe('Of the skin that the next molt leaves, so of the animal as it lives now'),
        afterMolt: SizeForecast.describe('Of the animal after the next molt'),
        ownRatios: z.int().min(0),
        shares: Shares,
      })
      .nullable(),
    facts: z.array(ForecastFact).describe('What it was made from, where that is less than a row of dated, numbered, measured skins'),
  })
  .meta({ id: 'GrowthForecast' });
export type GrowthForecast = z.infer<typeof GrowthForecast>;

/**
 * Next molt and next size of one animal, from a basis alone.
 *
 * The time of year is no part of it. No effect of a season on captive tarantulas is published, keepers record no temperatures,
 * and a yearly wave costs two coefficients: with a scatter of 0.3 and ten intervals each is known to no better than 0.13, more
 * than a wave that anybody would notice; intervals longer than half a year average it out besides.
 */
export function forecastFrom(basis: ForecastBasis): GrowthForecast {
  const due = dueFrom(basis);
  const isOverdue = due !== null && stageOf(due) === 'overdue';
  return {
    model: basis.model,
    madeOn: basis.madeOn,
    due,
    size: sizeFrom(basis),
    facts: isOverdue ? [...basis.facts, 'overdue'] : basis.facts,
  };
}

/** The day alone; null where there is nothing to count from. */
export function dueFrom({
  start,
  madeOn,
  instar,
  interval,
}: Omit<ForecastBasis, 'model' | 'facts' | 'growth' | 'lastSkin'>): DueForecast | null {
  if (!start) return null;
  const [from, to] = start.kind === 'molt' ? [start.from, start.to] : [start.on, start.on];
  const { middle, variance } = dayWithin({ happenedFrom: from, happenedTo: to });
  const belief = informed(interval.kin, evidenceFrom(interval.rows));
  const location = meanAt(belief, instar);
  const law = predictiveLaw(location, interval, 1, varianceAt(belief, instar) + variance / Math.exp(location) ** 2);
  // A molt counts as at the middle of its day; what has not molted by the end of today has waited half a day longer.
  const waited = Math.max(0, daysBetween(from, madeOn) + 0.5 - middle);
  const quantile = start.kind === 'acquired' ? unseenStartQuantile : runningIntervalQuantile;
  /** Whole days that lie within; where none does, the one nearest. */
  const dayAt = (probability: number, rounded: (days: number) => number): CalendarDay =>
    addDays(from, rounded(middle + quantile(law, waited, probability)));
  const window = (probability: number) => {
    const [earliest, latest] = [dayAt(probability, Math.ceil), dayAt(1 - probability, Math.floor)];
    return earliest <= latest ? { from: earliest, to: latest } : { from: latest, to: earliest };
  };
  const window90 = window(0.05);
  // Rounding to whole days must not carry one out of the other.
  const inside = (day: CalendarDay): CalendarDay => (day < window90.from ? window90.from : day > window90.to ? window90.to : day);
  const { from: first, to: last } = window(0.25);
  return {
    since: start,
    middle: inside(dayAt(0.5, Math.round)),
    window50: { from: inside(first), to: inside(last) },
    window90,
    chanceOfLasting: start.kind === 'acquired' ? chanceFromFirstLook(law, waited) : chanceOfLasting(law, waited),
    ownIntervals: stepsIn(interval),
    shares: sharesAt(interval, instar),
  };
}

/** The size alone; null where no skin was measured, or so badly that no number can be told. */
export function sizeFrom({ lastSkin, instar, growth }: Pick<ForecastBasis, 'lastSkin' | 'instar' | 'growth'>): GrowthForecast['size'] {
  if (!lastSkin) return null;
  const molts = instar - lastSkin.instar;
  const nextSkin = foretoldSize(lastSkin, growth, molts);
  const afterMolt = foretoldSize(lastSkin, growth, molts + 1);
  if (!nextSkin || !afterMolt) return null;
  const ownRatios = stepsIn(growth);
  return { nextSkin, afterMolt, ownRatios, shares: sharesAt(growth, lastSkin.instar + molts / 2) };
}

function stepsIn({ rows }: LineBasis): number {
  return new Set(rows.map(({ along }) => along)).size;
}
