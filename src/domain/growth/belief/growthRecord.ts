import { z } from 'zod';
import { type CalendarDay, daysBetween } from '../../dates.ts';
import type { Acquisition } from '../../molting/instarAnchors.ts';
import { type DatedMolt, inDateOrder, moltsSinceSkin } from '../../molting/instars.ts';
import type { MoltOutcome } from '../../molting/molt.ts';
import { type Position, placeMolts, placeMoltsIfSound } from '../positions.ts';
import { ASSUMED_FIRST_INSTAR } from '../priors.ts';
import { isBeyondMolts, type StepInQuestion, skinsInDoubt } from '../stepDoubt.ts';
import type { KinLabels } from './kinTree.ts';
import { type CountedMolts, growthObservation, intervalObservation, type StepObservation } from './stepObservation.ts';

/** What a forecast reads of one animal. */
export interface GrowthRecord extends KinLabels, Acquisition {
  readonly hatchedOn: CalendarDay | null;
  /** In any order. */
  readonly molts: readonly RecordedMolt[];
  /** Carapace lengths of skins, by molt; of one measure throughout. */
  readonly sizes: readonly SkinSize[];
}

/** Those that were only presumed count as molts, and date nothing. */
export type RecordedMolt = DatedMolt & { readonly outcomes?: readonly MoltOutcome[] };

export interface SkinSize {
  readonly moltId: string;
  readonly lengthMm: number;
  /** Standard uncertainty. */
  readonly uncertaintyMm: number;
}

/** What a person should know about what a forecast was made from. */
export const ForecastFact = z
  .enum([
    'no-molts',
    'nothing-to-count-from',
    'no-whole-interval',
    'no-measured-skin',
    'one-measured-skin',
    'size-unusable',
    'instar-assumed',
    'instars-contradict',
    'steps-not-known',
    'date-in-future',
    'molts-on-one-day',
    'start-not-seen',
    'last-molt-wide',
    'no-day-told',
    'step-doubted',
    'last-skin-doubted',
    'overdue',
  ])
  .meta({ id: 'ForecastFact' });
export type ForecastFact = z.infer<typeof ForecastFact>;

/** A molt with its place; `instar` is the one its skin shows, assumed where nothing numbers it. */
export interface PlacedMolt {
  readonly molt: RecordedMolt;
  readonly instar: number;
  readonly stepKnown: boolean;
  readonly size: SkinSize | null;
  /** Its size does not fit the skins around it: see `stepDoubt.ts`. */
  readonly inDoubt: boolean;
}

type MoltInRow = Omit<PlacedMolt, 'inDoubt'>;

/** Growth from one measured skin to the next one that was measured. */
export interface SkinToSkin extends StepObservation {
  readonly earlierMoltId: string;
  readonly laterMoltId: string;
  /** The keeper is sure of it. */
  readonly noneMissed: boolean;
}

/** What the sizes of two skins are known to, before anything is believed of their growth. */
interface GrowthStep extends StepInQuestion {
  /** Instar in the middle. */
  readonly along: number;
}

/** One animal's steps, as the pools take them. */
export interface GrowthSeries {
  readonly record: GrowthRecord;
  readonly placed: readonly PlacedMolt[];
  readonly intervals: readonly StepObservation[];
  readonly growth: readonly SkinToSkin[];
  /** Of the number that the instars count from; 0 where it is known. */
  readonly instarVariance: number;
  readonly facts: ReadonlySet<ForecastFact>;
}

/**
 * Steps between molts whose place in the row is known. Across a gap on record a step counts as so many molts; molts after today,
 * pairs with no day between them, skins in doubt, and growth that no number of molts explains, are left out and said so.
 */
export function seriesOf(record: GrowthRecord, today: CalendarDay): GrowthSeries {
  const facts = new Set<ForecastFact>();
  const past = inDateOrder(record.molts).filter(({ happenedTo }) => happenedTo <= today);
  if (past.length < record.molts.length) facts.add('date-in-future');
  const positions = positionsOf(past, record, facts);
  const numbered = positions.find(({ instar, stepKnown }) => instar !== null && stepKnown);
  const first = numbered?.instar ? numbered.instar.number - numbered.step : ASSUMED_FIRST_INSTAR.instar;
  const isAssumed = past.length > 0 ? numbered === undefined : record.acquiredInstar === null;
  if (isAssumed) facts.add('instar-assumed');
  if (!record.sizes.every(isSound)) facts.add('size-unusable');
  const sizes = new Map(record.sizes.filter(isSound).map((size) => [size.moltId, size]));
  const inRow = past.map((molt, index): MoltInRow => {
    const { step = index, stepKnown = false } = positions[index] ?? {};
    if (!stepKnown) facts.add('steps-not-known');
    return { molt, instar: first + step, stepKnown, size: sizes.get(molt.id) ?? null };
  });
  const known = inRow.filter(({ stepKnown }) => stepKnown);
  const counted = (earlier: MoltInRow, later: MoltInRow): CountedMolts => {
    const since = inRow.slice(inRow.indexOf(earlier) + 1, inRow.indexOf(later) + 1);
    const noneMissed = since.every(({ molt: { outcomes } }) => outcomes?.includes('none-missed-before'));
    return { onRecord: later.instar - earlier.instar, noneMissed };
  };
  const measured = known.filter(({ size }) => size !== null);
  const stepsBetween = (row: readonly MoltInRow[]) =>
    pairs(row).flatMap(([earlier, later]) => growthBetween(earlier, later, counted(earlier, later)));
  const steps = stepsBetween(measured);
  const doubted = skinsInDoubt(steps);
  const explained = stepsBetween(measured.filter(({ molt }) => !doubted.has(molt.id))).filter((step) => !isBeyondMolts(step));
  const placed = inRow.map((molt): PlacedMolt => ({ ...molt, inDoubt: doubted.has(molt.molt.id) }));
  if (steps.some(isBeyondMolts)) facts.add('step-doubted');
  if (placed.findLast(({ size, stepKnown }) => size !== null && stepKnown)?.inDoubt) facts.add('last-skin-doubted');
  return {
    record,
    placed,
    intervals: pairs(known.filter(({ molt: { outcomes } }) => !outcomes?.includes('presumed'))).flatMap(([earlier, later]) =>
      intervalBetween(earlier, later, counted(earlier, later), facts),
    ),
    growth: explained.map(observed),
    instarVariance: isAssumed ? ASSUMED_FIRST_INSTAR.deviation ** 2 : 0,
    facts,
  };
}

/** The day an animal hatched, if no molt can have gone by unseen before it came; else null. */
export function hatchingSeen({ hatchedOn, acquiredOn, acquiredInstar }: GrowthRecord, today: CalendarDay): CalendarDay | null {
  const isBred = acquiredInstar === 1 || (acquiredInstar === null && acquiredOn === null);
  return hatchedOn !== null && hatchedOn <= today && isBred ? hatchedOn : null;
}

/** In which the animal lives: one more than the last shed, or what its acquisition tells since; without a molt that of the hatching, or in which it came. */
export function instarNow({ record, placed }: Pick<GrowthSeries, 'record' | 'placed'>, today: CalendarDay): number {
  const last = placed.at(-1);
  const molts = placed.map(({ molt }) => molt);
  if (last) return last.instar + moltsSinceSkin(molts, molts.length - 1, record).fewest;
  return hatchingSeen(record, today) === null ? (record.acquiredInstar ?? ASSUMED_FIRST_INSTAR.instar) : 1;
}

/** Middle of the days a molt may have fallen on, counted from the first of them, and the variance of the day. */
export function dayWithin({ happenedFrom, happenedTo }: Pick<DatedMolt, 'happenedFrom' | 'happenedTo'>): {
  readonly middle: number;
  readonly variance: number;
} {
  const days = daysBetween(happenedFrom, happenedTo);
  return { middle: days / 2, variance: (days + 1) ** 2 / 12 };
}

/** Numbers that leave no room for each other are left out of the count altogether. */
function positionsOf(molts: readonly DatedMolt[], acquisition: Acquisition, facts: Set<ForecastFact>): Position[] {
  const positions = placeMoltsIfSound(molts, acquisition);
  if (positions) return positions;
  facts.add('instars-contradict');
  return placeMolts(molts.map((molt) => ({ ...molt, instarShed: null })));
}

/** No carapace is shorter or longer, so its scale must be wrong, and a length as uncertain as itself says nothing. */
const SHORTEST_MM = 0.05;
const LONGEST_MM = 500;

function isSound({ lengthMm, uncertaintyMm }: SkinSize): boolean {
  return lengthMm >= SHORTEST_MM && lengthMm <= LONGEST_MM && uncertaintyMm >= 0 && uncertaintyMm < lengthMm;
}

function pairs<Item>(items: readonly Item[]): [Item, Item][] {
  return items.slice(1).flatMap((later, index) => {
    const earlier = items[index];
    return earlier === undefined ? [] : [[earlier, later] satisfies [Item, Item]];
  });
}

/** The instars lived through from one molt to the next: those after the earlier skin's, up to the later one's. */
function intervalBetween(earlier: MoltInRow, later: MoltInRow, counted: CountedMolts, facts: Set<ForecastFact>): StepObservation[] {
  const [from, to] = [dayWithin(earlier.molt), dayWithin(later.molt)];
  const days = daysBetween(earlier.molt.happenedFrom, later.molt.happenedFrom) - from.middle + to.middle;
  if (days < 1) facts.add('molts-on-one-day');
  if (days < 1 || counted.onRecord < 1) return [];
  return [intervalObservation((earlier.instar + 1 + later.instar) / 2, days, from.variance + to.variance, counted)];
}

/** Errors of the two readings do not correlate here, although neighboring steps share one: it is small beside the scatter of growth. */
function growthBetween(earlier: MoltInRow, later: MoltInRow, { onRecord: molts, noneMissed }: CountedMolts): GrowthStep[] {
  if (!earlier.size || !later.size || molts < 1) return [];
  const [before, after] = [earlier.size, later.size];
  return [
    {
      earlierMoltId: earlier.molt.id,
      laterMoltId: later.molt.id,
      along: (earlier.instar + later.instar) / 2,
      logRatio: Math.log(after.lengthMm / before.lengthMm),
      uncertainty: Math.hypot(before.uncertaintyMm / before.lengthMm, after.uncertaintyMm / after.lengthMm),
      molts,
      noneMissed,
    },
  ];
}

function observed({ earlierMoltId, laterMoltId, along, logRatio, uncertainty, molts, noneMissed }: GrowthStep): SkinToSkin {
  const observation = growthObservation(along, logRatio, uncertainty ** 2, { onRecord: molts, noneMissed });
  return { ...observation, earlierMoltId, laterMoltId, noneMissed };
}
