import { z } from 'zod';
import { addDays, CalendarDay, daysBetween } from '../../dates.ts';
import { foretoldSize, SizeForecast } from '../belief/foretoldSize.ts';
import { dayWithin, ForecastFact } from '../belief/growthRecord.ts';
import { informed, meanAt, varianceAt } from '../belief/line.ts';
import type { LineBasis } from '../belief/lineBasis.ts';
import { predictiveLaw } from '../belief/predictive.ts';
import { ownTrendShare, Shares, sharesAt } from '../belief/shares.ts';
import { evidenceFrom } from '../belief/stepProbabilities.ts';
import type { ForecastBasis, IntervalStart } from './basis.ts';
import { DueForecast, OwnTrend } from './dueForecast.ts';
import { isOverdue } from './expectedMolt.ts';
import {
  chanceFromFirstLook,
  chanceFromWideStart,
  chanceOfLasting,
  type IntervalLaw,
  runningIntervalQuantile,
  unseenStartQuantile,
  wideStartQuantile,
} from './waiting.ts';

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
        ownTrend: OwnTrend,
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
  return {
    model: basis.model,
    madeOn: basis.madeOn,
    due,
    size: sizeFrom(basis),
    facts: [...basis.facts, ...factsOf(basis.start, due)],
  };
}

/** What shows only in the forecast. */
function factsOf(start: IntervalStart | null, due: DueForecast | null): ForecastFact[] {
  if (!due) return start ? ['no-day-told'] : [];
  return isOverdue(due) ? ['overdue'] : [];
}

/** A window of nine chances in ten longer than this tells no day: ten years, an assumption of ours. */
const LONGEST_WINDOW_DAYS = 3653;
/** Below this share of an interval a span of days is a mere error of its middle; above, each of its days is a start of its own. */
const NARROW = 0.1;

/** The day alone; null where there is nothing to count from, or where what is known would allow any day within many years. */
export function dueFrom({
  start,
  madeOn,
  instar,
  interval,
}: Omit<ForecastBasis, 'model' | 'facts' | 'growth' | 'lastSkin'>): DueForecast | null {
  if (!start) return null;
  const [from, to] = start.kind === 'molt' ? [start.from, start.to] : [start.on, start.on];
  const belief = informed(interval.kin, evidenceFrom(interval.rows));
  const wait = waitOf({
    kind: start.kind,
    span: { from, to },
    waited: daysBetween(from, madeOn) + 0.5,
    lawWith: (variance) => predictiveLaw(meanAt(belief, instar), interval, 1, varianceAt(belief, instar) + variance),
  });
  /** Whole days that lie within; where none does, the one nearest. */
  const dayAt = (probability: number, rounded: (days: number) => number): CalendarDay => addDays(from, rounded(wait.quantile(probability)));
  const window = (probability: number) => {
    const [earliest, latest] = [dayAt(probability, Math.ceil), dayAt(1 - probability, Math.floor)];
    return earliest <= latest ? { from: earliest, to: latest } : { from: latest, to: earliest };
  };
  const window90 = window(0.05);
  if (daysBetween(window90.from, window90.to) > LONGEST_WINDOW_DAYS) return null;
  // Rounding to whole days must not carry one out of the other.
  const inside = (day: CalendarDay): CalendarDay => (day < window90.from ? window90.from : day > window90.to ? window90.to : day);
  const { from: first, to: last } = window(0.25);
  return {
    since: start,
    middle: inside(dayAt(0.5, Math.round)),
    window50: { from: inside(first), to: inside(last) },
    window90,
    chanceOfLasting: wait.chanceOfLasting,
    ownIntervals: stepsIn(interval),
    shares: sharesAt(interval, instar),
    ownTrend: ownTrendShare(interval),
  };
}

interface Started {
  readonly kind: IntervalStart['kind'];
  readonly span: { readonly from: CalendarDay; readonly to: CalendarDay };
  /** Days from the first day of the span to the end of today, a molt counting as at the middle of its day. */
  readonly waited: number;
  /** Days of the running interval, with so much variance more. */
  readonly lawWith: (variance: number) => IntervalLaw;
}

/** The running interval: days from the first it can have begun on to its end, and the share of intervals that last as long. */
function waitOf({ kind, span: { from, to }, waited, lawWith }: Started): {
  readonly quantile: (probability: number) => number;
  readonly chanceOfLasting: number;
} {
  const law = lawWith(0);
  const { middle, variance } = dayWithin({ happenedFrom: from, happenedTo: to });
  const relative = variance / Math.exp(law.location) ** 2;
  if (kind !== 'acquired' && relative > NARROW ** 2 && from < to) {
    const start = { law, widthDays: daysBetween(from, to) };
    return {
      quantile: (probability) => wideStartQuantile(start, Math.max(0, waited), probability),
      chanceOfLasting: chanceFromWideStart(start, waited),
    };
  }
  const blurred = lawWith(relative);
  const since = Math.max(0, waited - middle);
  const quantile = kind === 'acquired' ? unseenStartQuantile : runningIntervalQuantile;
  return {
    quantile: (probability) => middle + quantile(blurred, since, probability),
    chanceOfLasting: kind === 'acquired' ? chanceFromFirstLook(blurred, since) : chanceOfLasting(blurred, since),
  };
}

/** The size alone; null where no skin was measured, or so badly that no number can be told. */
export function sizeFrom({ lastSkin, instar, growth }: Pick<ForecastBasis, 'lastSkin' | 'instar' | 'growth'>): GrowthForecast['size'] {
  if (!lastSkin) return null;
  const molts = instar - lastSkin.instar;
  const nextSkin = foretoldSize(lastSkin, growth, molts);
  const afterMolt = foretoldSize(lastSkin, growth, molts + 1);
  if (!nextSkin || !afterMolt) return null;
  return {
    nextSkin,
    afterMolt,
    ownRatios: stepsIn(growth),
    shares: sharesAt(growth, lastSkin.instar + molts / 2),
    ownTrend: ownTrendShare(growth),
  };
}

function stepsIn({ rows }: LineBasis): number {
  return new Set(rows.map(({ along }) => along)).size;
}
