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

/** What a meal takes back of the points of the signs it came after, and at least. Judgment: prey taken speaks against premolt. */
const MEAL_TAKES = { share: 1 / 2, atLeast: 2 } as const;

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
  const sinceMeal = lastMeal ? ofInstar.slice(ofInstar.indexOf(lastMeal) + 1) : ofInstar;
  const items = [
    ...signs,
    ...refusalItems(sinceMeal, today),
    ...(lastMeal ? mealItems(ofInstar, lastMeal, { habit, today }) : []),
    ...forecastItems(forecast),
  ];
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
  const toldSinceMeal = sinceMeal.some(({ kind }) => kind === 'refused' || isPremoltSign(kind));
  return { points, level: levelOf(points, items, toldSinceMeal), items, lastMealOn, daysSinceMeal, unknown };
}

/** Strong only where something was noted since the last meal: an animal that took prey after all its signs is not. */
function levelOf(points: number, items: readonly SuspicionItem[], toldSinceMeal: boolean): Suspicion['level'] {
  const kinds = items.filter((item) => item.points > 0).length;
  if (points <= 0) return 'none';
  if (kinds < 2 || points < SUSPECTED_FROM) return 'little';
  return points < STRONGLY_FROM || !toldSinceMeal ? 'suspected' : 'strongly-suspected';
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
function refusalItems(sinceMeal: readonly Seen[], today: CalendarDay): SuspicionItem[] {
  const refusals = sinceMeal.filter(({ kind, moment }) => kind === 'refused' && addDays(dayOf(moment), SIGN_LASTS_DAYS) >= today);
  const first = refusals[0];
  if (!first) return [];
  return [{ kind: 'refused', times: refusals.length, since: dayOf(first.moment), points: refusals.length >= SEVERAL_REFUSALS ? 2 : 1 }];
}

/** What was seen before the last meal and not again since weighs less for it. */
function mealItems(
  ofInstar: readonly Seen[],
  lastMeal: Seen,
  { habit, today }: Pick<SuspicionContext, 'habit' | 'today'>,
): SuspicionItem[] {
  const lastOfKind = ofInstar.filter((seen) => ofInstar.findLast(({ kind }) => kind === seen.kind) === seen);
  const before = signItems(lastOfKind.slice(0, lastOfKind.indexOf(lastMeal)), habit, today);
  const points = before.reduce((sum, item) => sum + item.points, 0);
  if (points === 0) return [];
  const taken = Math.max(MEAL_TAKES.atLeast, Math.ceil(points * MEAL_TAKES.share));
  return [{ kind: 'ate-after-signs', on: dayOf(lastMeal.moment), points: -taken }];
}

/** A forecast that is for the most part assumed gives no points. */
function forecastItems(expected: ExpectedMolt | null): SuspicionItem[] {
  const forecast = groundsIn(expected);
  if (forecast === null || forecast.stage === 'early') return [];
  const { stage } = forecast;
  return [{ kind: 'forecast', stage, forecast, points: stage === 'window' ? 1 : 2 }];
}
