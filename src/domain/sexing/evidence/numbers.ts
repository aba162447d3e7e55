import { z } from 'zod';

/** Where a number comes from. Most are judgments of ours: no controlled study of error rates is known (Hildebrandt 2022). */
export type Basis = 'judgement' | { readonly source: string };

export interface ModelNumber {
  readonly value: number;
  /** What a keeper may set it to. */
  readonly lowest: number;
  readonly highest: number;
  readonly basis: Basis;
}

function judged(value: number, lowest: number, highest: number): ModelNumber {
  return { value, lowest, highest, basis: 'judgement' };
}

const chance = (value: number): ModelNumber => judged(value, 0.001, 0.999);
const factor = (value: number): ModelNumber => judged(value, 0.01, 20);
const strength = (value: number): ModelNumber => judged(value, 1, 10_000);
const lengthMm = (value: number): ModelNumber => judged(value, 0.1, 400);
/** A probability of at least a half, of whichever sex is the likelier. */
const certainty = (value: number): ModelNumber => judged(value, 0.5, 0.9999);

/**
 * Every number of the evidence model as shipped. Strengths are likelihood ratios for the sex they speak for, at least 1.
 * `seen.C` is the chance that a competent reader sees the spermatheca of a female in a skin of size class C, `mistaken.C`
 * that something of a male's is called one.
 */
export const SHIPPED_NUMBERS = {
  'prior.female': chance(0.5),

  'span.fromB': lengthMm(20),
  'span.fromC': lengthMm(40),
  'span.aboveD': lengthMm(75),
  /** "Over about 5 cm": what the levels of a reading call large enough for absence to weigh. No publication gives a limit. */
  'span.largeAbove': lengthMm(50),
  /** The same by the carapace: a leg span is some 6.5 carapaces (from memory; varies by genus), as in the size classes. */
  'carapace.largeAbove': lengthMm(7.5),
  'carapace.fromB': lengthMm(3),
  'carapace.fromC': lengthMm(6),
  'carapace.aboveD': lengthMm(11),
  'relative.fromB': chance(0.15),
  'relative.fromC': chance(0.3),
  'relative.aboveD': chance(0.5),

  'seen.A': chance(0.15),
  'seen.B': chance(0.5),
  'seen.C': chance(0.85),
  'seen.D': chance(0.96),
  'mistaken.A': chance(0.05),
  'mistaken.B': chance(0.07),
  'mistaken.C': chance(0.04),
  'mistaken.D': chance(0.015),

  'seen.gradeB': factor(0.85),
  'seen.gradeC': factor(0.6),
  'seen.unaided': factor(0.5),
  'seen.weak': factor(0.7),
  'seen.novice': factor(0.85),
  'mistaken.novice': factor(2),
  'mistaken.accessory': factor(3),
  'mistaken.lipAbsent': factor(3),
  'mistaken.blindReaders': factor(0.6),
  'lip.factor': strength(2),
  'lip.most': strength(120),
  'accessory.male': strength(2),
  'fusillae.skinB': strength(2),
  'fusillae.skinC': strength(4),
  'fusillae.skinD': strength(8),
  'fusillae.withAbsenceMost': strength(60),

  'bulbs.photographed': strength(2000),
  'bulbs.told': strength(300),
  'hooks.seen': strength(300),
  'noBulbs.least': strength(1.5),
  'noBulbs.most': strength(5),
  'noBulbs.fromRelativeSize': judged(0.8, 0.1, 2),
  'noBulbs.fullAtRelativeSize': judged(1, 0.1, 2),
  'eggSac.laid': strength(3000),
  'spermWeb.seen': strength(20),
  'spermWeb.photographed': strength(60),
  'ventral.large': strength(6),
  'ventral.middle': strength(3),
  'ventral.small': strength(1.5),
  'ventral.absentLarge': strength(3),
  'ventral.absentSmaller': strength(1.3),
  'ventral.opinion': {
    ...strength(2.3),
    basis: { source: 'one figure quoted on a German keepers’ page (Max Terrarienseite, n.d.): about 70 % certain, 0.7 / 0.3' },
  },
  'color.early': strength(3),
  'build.impression': strength(1.3),
  'seller.word': strength(1.2),

  'weakerSkin.power': chance(0.6),
  'cap.maleByAbsence': certainty(0.95),
  'cap.maleWithoutBulbs': certainty(0.98),
  'cap.femaleOneSkin': certainty(0.985),
  'cap.smallSkins': certainty(0.9),
  /** Just below "probable". */
  'cap.doubtful': certainty(0.79),
  'conflict.strength': strength(10),
  'band.leaning': certainty(0.6),
  'band.probable': certainty(0.8),
  'band.strong': certainty(0.95),
  'band.established': certainty(0.99),
} as const satisfies Record<string, ModelNumber>;

export type NumberId = keyof typeof SHIPPED_NUMBERS;
export type ModelNumbers = Readonly<Record<NumberId, number>>;

export const NUMBER_IDS = Object.keys(SHIPPED_NUMBERS) as readonly NumberId[] as readonly [NumberId, ...NumberId[]];

export const NumberIdSchema = z.enum(NUMBER_IDS).meta({ id: 'ModelNumberId' });

/** The numbers a keeper has set otherwise than shipped. */
export const Adjustments = z.partialRecord(NumberIdSchema, z.number()).meta({ id: 'ModelAdjustments' });
export type Adjustments = z.infer<typeof Adjustments>;

export function numbersWith(adjustments: Adjustments): ModelNumbers {
  const entries = NUMBER_IDS.map((id) => [id, adjustments[id] ?? SHIPPED_NUMBERS[id].value] as const);
  return Object.fromEntries(entries) as Record<NumberId, number>;
}
