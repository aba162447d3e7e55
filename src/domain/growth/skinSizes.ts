import { z } from 'zod';
import type { LegId } from '../measuring/landmarks.ts';
import type { PlausibilityWarning } from '../measuring/plausibility.ts';
import { Estimate, estimateFrom, type Measurement } from '../measuring/quantity.ts';
import { combineReadings, meanOfSides } from './combine.ts';
import { type MeasuredLength, measuredLength, standardUncertaintyOf } from './measuredLength.ts';

/** What one reading of one skin photo gives under that photo's calibration. */
export interface SkinReading {
  readonly readingId: string;
  readonly photoId: string;
  readonly measurement: Measurement;
  /** What cannot quite be believed of this reading. */
  readonly doubts: readonly PlausibilityWarning[];
  /** A second object in its photo contradicts the scale: then every size of it is doubted. */
  readonly isScaleDoubted: boolean;
}

/** The sizes of a skin that are followed from molt to molt. */
export const SizeName = z.enum(['carapaceLengthMm', 'carapaceWidthMm', 'legFirstMm', 'legFourthMm', 'legSpanMm']);
export type SizeName = z.infer<typeof SizeName>;

/** The sizes of one skin, from every reading of every photo of it: the only place where a skin gets its sizes. */
export const SkinSizes = z
  .object({
    carapaceLengthMm: Estimate.nullable(),
    carapaceWidthMm: Estimate.nullable(),
    legFirstMm: Estimate.nullable().describe('Leg I, mean of the sides that are neither missing nor regenerated'),
    legFourthMm: Estimate.nullable(),
    legSpanMm: Estimate.nullable().describe('The longer of the two diagonals, as the skin was laid out'),
    doubted: z.array(SizeName).describe('Sizes that rest on a reading with something hard to believe in it; the Bench says what'),
  })
  .meta({ id: 'SkinSizes' });
export type SkinSizes = z.infer<typeof SkinSizes>;

/** What each size is combined from. */
const NAMES: { readonly [Name in SizeName]: readonly string[] } = {
  carapaceLengthMm: ['carapace-length'],
  carapaceWidthMm: ['carapace-width'],
  legFirstMm: ['leg-L1', 'leg-R1'],
  legFourthMm: ['leg-L4', 'leg-R4'],
  legSpanMm: ['span-L1-R4', 'span-R1-L4'],
};

/** The sizes of one skin from all its readings. A size that no reading gives is null. */
export function sizesOf(readings: readonly SkinReading[]): SkinSizes {
  return {
    carapaceLengthMm: estimateOf(combineReadings(lengthsNamed(readings, 'carapace-length'))),
    carapaceWidthMm: estimateOf(combineReadings(lengthsNamed(readings, 'carapace-width'))),
    legFirstMm: legPair(readings, ['L1', 'R1']),
    legFourthMm: legPair(readings, ['L4', 'R4']),
    legSpanMm: estimateOf(longest(NAMES.legSpanMm.map((name) => combineReadings(lengthsNamed(readings, name))))),
    doubted: SizeName.options.filter((size) => readings.some((reading) => isDoubted(size, reading))),
  };
}

function isDoubted(size: SizeName, { measurement, doubts, isScaleDoubted }: SkinReading): boolean {
  if (isScaleDoubted && measurement.quantities.some(({ name }) => NAMES[size].includes(name))) return true;
  return doubts.some((doubt) => sizesTouchedBy(doubt).includes(size));
}

/** Which sizes would be wrong if a doubt is right. */
function sizesTouchedBy(doubt: PlausibilityWarning): readonly SizeName[] {
  switch (doubt.code) {
    case 'carapace-sides-crossed':
    case 'carapace-proportion':
      return ['carapaceLengthMm', 'carapaceWidthMm'];
    case 'legs-on-other-side':
      return doubt.legs.flatMap(sizeOfLeg);
    case 'leg-proportion':
      return sizeOfLeg(doubt.leg);
    case 'sides-differ':
      return sizeOfLeg(`L${doubt.pair}`);
    case 'span-too-long':
    case 'span-too-short':
      return ['legSpanMm'];
  }
}

/** Of the four pairs the first and the last are followed. */
function sizeOfLeg(leg: LegId): SizeName[] {
  const pair = leg.slice(1);
  return pair === '1' ? ['legFirstMm'] : pair === '4' ? ['legFourthMm'] : [];
}

/**
 * Mean of the left and right leg, or the one that counts. A side that any reading calls missing or regenerated is left
 * out altogether: a leg growing back is shorter for several molts and would pass for slow growth.
 */
function legPair(readings: readonly SkinReading[], legs: readonly [LegId, LegId]): Estimate | null {
  const sides = legs
    .filter((leg) => !readings.some((reading) => isReplaced(reading.measurement, `leg-${leg}`)))
    .map((leg) => combineReadings(lengthsNamed(readings, `leg-${leg}`)))
    .filter((length) => length !== null);
  return estimateOf(meanOfSides(sides));
}

export function isReplaced(measurement: Measurement, name: string): boolean {
  return (
    measurement.absent.some((quantity) => quantity.name === name && quantity.reason === 'missing') ||
    measurement.quantities.some((quantity) => quantity.name === name && quantity.flags.includes('regenerated'))
  );
}

/** Two landmarks on one spot give a length of zero, which is no size and has no logarithm. */
export function lengthsNamed(readings: readonly SkinReading[], name: string): MeasuredLength[] {
  return readings.flatMap(({ photoId, measurement }) =>
    measurement.quantities
      .filter((quantity) => quantity.name === name && quantity.estimate.value > 0)
      .map((quantity) => measuredLength(quantity, photoId)),
  );
}

function longest(lengths: readonly (MeasuredLength | null)[]): MeasuredLength | null {
  return lengths.reduce((found, next) => (next !== null && (found === null || next.valueMm > found.valueMm) ? next : found), null);
}

export function estimateOf(length: MeasuredLength | null): Estimate | null {
  return length && estimateFrom(length.valueMm, standardUncertaintyOf(length));
}
