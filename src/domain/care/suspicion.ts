import { z } from 'zod';
import { addDays, CalendarDay, dayOf, daysBetween } from '../dates.ts';
import { ExpectedMolt, groundsIn, IntervalStage } from '../growth/forecast/expectedMolt.ts';
import type { Habit } from '../specimen/specimen.ts';
import { isAfter, type LastMolt } from './lastMolt.ts';
import { inTimeOrder, isPremoltSign, PremoltSign, type Seen } from './observation.ts';

/** How much each sign counts toward premolt. Judgment: what is laid or turns dark shortly before weighs most. */
export const SIGN_POINTS: Readonly<Record<PremoltSign, number>> = {
  'slow-and-hiding': 1,
  'abdomen-dark-and-tight': 2,
  'bald-patch-dark': 2,
  'whole-animal-dark': 2,
  'climbs-badly': 1,
  'retreat-closed': 1,
  'mat-laid': 3,
  'setae-on-mat': 3,
};

/** Points from here up, of at least two kinds, are called premolt: no single sign proves it. Judgment. */
export const SUSPECTED_FROM = 3;
export const STRONGLY_FROM = 6;

/** A sign or a refusal older than this says nothing about now: the longest fast told of adults is about as long. Judgment. */
const SIGN_LASTS_DAYS = 90;

/** Refusals in a row that count double. Judgment. */
const SEVERAL_REFUSALS = 3;

/** One thing that was weighed, with its points. */
export const SuspicionItem = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('sign'), sign: PremoltSign, seenOn: CalendarDay, points: z.number() }),
    z.object({ kind: z.literal('refused'), times: z.int(), since: CalendarDay, points: z.number() }),
    z.object({ kind: z.literal('ate-after-signs'), on: CalendarDay, points: z.number() }),
    z.object({
      kind: z.literal('forecast'),
      stage: IntervalStage.exclude(['early']),
      forecast: ExpectedMolt,
      points: z.number(),
    }),
  ])
  .meta({ id: 'SuspicionItem' });
export type SuspicionItem = z.infer<typeof SuspicionItem>;

export const Suspicion = z
  .object({
    points: z.number(),
    level: z.enum(['none', 'little', 'suspected', 'strongly-suspected']),
    items: z.array(SuspicionItem),
    lastMealOn: CalendarDay.nullable(),
    daysSinceMeal: z.int().nullable(),
    unknown: z.array(z.enum(['last-meal', 'signs', 'forecast', 'habit'])).describe('What would have helped and nobody noted'),
  })
  .meta({ id: 'Suspicion' });
export type Suspicion = z.infer<typeof Suspicion>;

export interface SuspicionContext {
  readonly observations: readonly Seen[];
  readonly lastMolt: LastMolt | null;
  readonly habit: Habit | null;
  readonly forecast: ExpectedMolt | null;
  readonly today: CalendarDay;
}

/** Premolt as far as what was noted since the last molt goes; says what it rests on and what it lacks. Never a proof. */
export function premoltSuspicion({ observations, lastMolt, habit, forecast, today }: SuspicionContext): Suspicion {
  const ofInstar = inTimeOrder(observations.filter((seen) => lastMolt === null || isAfter(seen, lastMolt)));
  const lastMeal = ofInstar.findLast(({ kind }) => kind === 'ate');
  const lastMealOn = lastMeal ? dayOf(lastMeal.moment) : null;
  const signs = signItems(ofInstar, habit, today);
  const items = [...signs, ...refusalItems(ofInstar, lastMeal, today), ...mealItems(ofInstar, lastMeal, signs), ...forecastItems(forecast)];
  const points = Math.max(
    0,
    items.reduce((sum, item) => sum + item.points, 0),
  );
  const unknown: Suspicion['unknown'] = [];
  if (lastMealOn === null) unknown.push('last-meal');
  if (signs.length === 0) unknown.push('signs');
  if (groundsIn(forecast) === null) unknown.push('forecast');
  if (habit === null) unknown.push('habit');
  const daysSinceMeal = lastMealOn === null ? null : daysBetween(lastMealOn, today);
  return { points, level: levelOf(points, items), items, lastMealOn, daysSinceMeal, unknown };
}

function levelOf(points: number, items: readonly SuspicionItem[]): Suspicion['level'] {
  const kinds = items.filter((item) => item.points > 0).length;
  if (points <= 0) return 'none';
  if (kinds < 2 || points < SUSPECTED_FROM) return 'little';
  return points < STRONGLY_FROM ? 'suspected' : 'strongly-suspected';
}

/** Each sign counts once, by its latest note. Badly climbing smooth walls says something of arboreal animals alone. */
function signItems(observations: readonly Seen[], habit: Habit | null, today: CalendarDay): SuspicionItem[] {
  return PremoltSign.options.flatMap((sign): SuspicionItem[] => {
    const latest = observations.findLast(({ kind }) => kind === sign);
    if (!latest) return [];
    const seenOn = dayOf(latest.moment);
    if (addDays(seenOn, SIGN_LASTS_DAYS) < today) return [];
    const counts = sign !== 'climbs-badly' || habit === 'arboreal';
    return [{ kind: 'sign', sign, seenOn, points: counts ? SIGN_POINTS[sign] : 0 }];
  });
}

/** Refusals since the last meal, those of long ago left out as signs are. */
function refusalItems(observations: readonly Seen[], lastMeal: Seen | undefined, today: CalendarDay): SuspicionItem[] {
  const refusals = observations
    .slice(lastMeal ? observations.indexOf(lastMeal) + 1 : 0)
    .filter(({ kind, moment }) => kind === 'refused' && addDays(dayOf(moment), SIGN_LASTS_DAYS) >= today);
  const first = refusals[0];
  if (!first) return [];
  return [{ kind: 'refused', times: refusals.length, since: dayOf(first.moment), points: refusals.length >= SEVERAL_REFUSALS ? 2 : 1 }];
}

/** An animal that took prey after its latest sign is hardly in premolt. */
function mealItems(observations: readonly Seen[], lastMeal: Seen | undefined, signs: readonly SuspicionItem[]): SuspicionItem[] {
  const lastSign = observations.findLast(({ kind }) => isPremoltSign(kind));
  if (!lastMeal || !lastSign || signs.length === 0) return [];
  const atePast = observations.indexOf(lastMeal) > observations.indexOf(lastSign);
  return atePast ? [{ kind: 'ate-after-signs', on: dayOf(lastMeal.moment), points: -2 }] : [];
}

/** A forecast that is for the most part assumed gives no points. */
function forecastItems(expected: ExpectedMolt | null): SuspicionItem[] {
  const forecast = groundsIn(expected);
  if (forecast === null || forecast.stage === 'early') return [];
  const { stage } = forecast;
  return [{ kind: 'forecast', stage, forecast, points: stage === 'window' ? 1 : 2 }];
}
