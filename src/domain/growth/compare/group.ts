import type { Estimate } from '../../measuring/quantity.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { followsDirectly } from '../positions.ts';
import type { AlignedAnimal, Alignment } from './aligned.ts';

/** Where one more animal of the group would lie, nine times in ten. */
export interface GroupBand {
  readonly at: number;
  readonly animals: number;
  readonly middleMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

export const FEWEST_FOR_BAND = 3;
const PLACES_OF_DAYS = 48;

/**
 * The band of a group: geometric mean times exp(-+ t s sqrt(1 + 1/n)), Student's t at 95 % on n - 1 degrees of freedom, s the
 * standard deviation of ln L over the animals (prediction interval of a normal sample; Hahn GJ, Meeker WQ, Statistical
 * Intervals, ch. 4; from memory). Along instars at each one; along days at evenly spaced ones, each animal with the size of the
 * instar it lived in then, which its next skin shows.
 */
export function groupBand(animals: readonly AlignedAnimal[], alignment: Alignment): GroupBand[] {
  const places = alignment === 'instar' ? instarsIn(animals) : daysIn(animals);
  return places.flatMap((at) => {
    const sizes = animals.flatMap((animal) => (alignment === 'instar' ? sizeAtInstar(animal, at) : sizeOnDay(animal, at)) ?? []);
    const logs = sizes.map((size) => Math.log(size.value));
    if (logs.length < FEWEST_FOR_BAND) return [];
    const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
    const deviation = Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (logs.length - 1));
    const reach = studentTQuantile(0.95, logs.length - 1) * deviation * Math.sqrt(1 + 1 / logs.length);
    return [{ at, animals: logs.length, middleMm: Math.exp(mean), lowMm: Math.exp(mean - reach), highMm: Math.exp(mean + reach) }];
  });
}

/** One animal among those measured in the same instar. */
export interface Ranked {
  readonly specimenId: string;
  readonly called: string;
  /** 1 for the largest; alike for sizes that are. */
  readonly rank: number;
  readonly size: Estimate;
  /** Against the geometric mean of all of them, percent. */
  readonly fromMeanPercent: number;
}

/** @param animals aligned by instar. */
export function ranksAt(animals: readonly AlignedAnimal[], instar: number): Ranked[] {
  const measured = animals.flatMap(({ specimenId, called, ...animal }) => {
    const size = sizeAtInstar(animal, instar);
    return size ? [{ specimenId, called, size }] : [];
  });
  const mean = Math.exp(measured.reduce((sum, { size }) => sum + Math.log(size.value), 0) / Math.max(1, measured.length));
  return measured
    .toSorted((a, b) => b.size.value - a.size.value)
    .map((one) => ({
      ...one,
      rank: 1 + measured.filter(({ size }) => size.value > one.size.value).length,
      fromMeanPercent: 100 * (one.size.value / mean - 1),
    }));
}

/** Instars in which at least one animal is measured, rising. */
export function instarsIn(animals: readonly AlignedAnimal[]): number[] {
  return [...new Set(animals.flatMap(({ sizes }) => sizes.map(({ at }) => at)))].sort((a, b) => a - b);
}

/** The instar that most animals share, of several the latest; null without any. */
export function mostSharedInstar(animals: readonly AlignedAnimal[]): number | null {
  let best: { instar: number; animals: number } | null = null;
  for (const instar of instarsIn(animals)) {
    const sharing = animals.filter((animal) => sizeAtInstar(animal, instar) !== null).length;
    if (best === null || sharing >= best.animals) best = { instar, animals: sharing };
  }
  return best?.instar ?? null;
}

function sizeAtInstar({ sizes }: Pick<AlignedAnimal, 'sizes'>, instar: number): Estimate | null {
  return sizes.find(({ at }) => at === instar)?.size ?? null;
}

/** The skin shed next after a day shows the size on it; before the first and after the last molt nothing is known. */
function sizeOnDay({ sizes }: AlignedAnimal, day: number): Estimate | null {
  const index = sizes.findIndex(({ at }) => at >= day);
  const next = sizes[index];
  const before = sizes[index - 1];
  if (!next) return null;
  if (next.at === day) return next.size;
  return before && followsDirectly(before.rung, next.rung) ? next.size : null;
}

function daysIn(animals: readonly AlignedAnimal[]): number[] {
  const days = animals.flatMap(({ sizes }) => sizes.map(({ at }) => at));
  if (days.length === 0) return [];
  const [first, last] = [Math.min(...days), Math.max(...days)];
  return Array.from({ length: PLACES_OF_DAYS + 1 }, (_, index) => first + ((last - first) * index) / PLACES_OF_DAYS);
}
