import type { Estimate } from '../../measuring/quantity.ts';
import { studentTQuantile } from '../../numerics/studentT.ts';
import type { AlignedAnimal, Alignment } from './aligned.ts';

/** Where one more animal of the group would lie, nine times in ten. */
export interface GroupBand {
  /** One instar, or the days between which no animal of the group molts. */
  readonly from: number;
  readonly to: number;
  readonly animals: number;
  readonly middleMm: number;
  readonly lowMm: number;
  readonly highMm: number;
}

export const FEWEST_FOR_BAND = 3;

/**
 * The band of a group: geometric mean times exp(-+ t s sqrt(1 + 1/n)), Student's t at 95 % on n - 1 degrees of freedom, s the
 * standard deviation of ln L over the animals (prediction interval of a normal sample; Hahn GJ, Meeker WQ, Statistical
 * Intervals, ch. 4; from memory). At each instar; along days from molt to molt, whoever molts, each animal with the size of the
 * instar it lives in, which its next skin shows: between them no size changes.
 */
export function groupBand(animals: readonly AlignedAnimal[], alignment: Alignment): GroupBand[] {
  const places = alignment === 'instar' ? instarsIn(animals).map((at) => ({ from: at, to: at })) : stillDays(animals);
  return places.flatMap(({ from, to }) => {
    const middle = (from + to) / 2;
    const sizes = animals.flatMap((animal) => (alignment === 'instar' ? sizeAtInstar(animal, from) : sizeOnDay(animal, middle)) ?? []);
    const logs = sizes.map((size) => Math.log(size.value));
    if (logs.length < FEWEST_FOR_BAND) return [];
    const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
    const deviation = Math.sqrt(logs.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (logs.length - 1));
    const reach = studentTQuantile(0.95, logs.length - 1) * deviation * Math.sqrt(1 + 1 / logs.length);
    return [{ from, to, animals: logs.length, middleMm: Math.exp(mean), lowMm: Math.exp(mean - reach), highMm: Math.exp(mean + reach) }];
  });
}

/** One animal among those measured in the same instar. */
export interface Ranked {
  readonly specimenId: string;
  readonly called: string;
  /** 1 for the largest. From the best to the worst place that the uncertainties leave open. */
  readonly rankFrom: number;
  readonly rankTo: number;
  readonly size: Estimate;
  /** Against the geometric mean of all of them, percent. */
  readonly fromMeanPercent: number;
}

/**
 * The animals by size. Two are told apart where they differ by more than the expanded uncertainty of their difference,
 * sqrt(U1^2 + U2^2) for readings that share nothing (JCGM 100:2008, 5.1.2).
 *
 * @param animals aligned by instar.
 */
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
      rankFrom: 1 + measured.filter(({ size }) => isSurelyLarger(size, one.size)).length,
      rankTo: measured.length - measured.filter(({ size }) => isSurelyLarger(one.size, size)).length,
      fromMeanPercent: 100 * (one.size.value / mean - 1),
    }));
}

/** Instars in which at least one animal is measured, rising. */
export function instarsIn(animals: readonly AlignedAnimal[]): number[] {
  return [...new Set(animals.flatMap(({ sizes }) => sizes.map(({ at }) => at)))].sort((a, b) => a - b);
}

/** The latest instar in which an animal is measured beside another one; without any, the latest of all; null without a size. */
export function latestSharedInstar(animals: readonly AlignedAnimal[], ownId: string): number | null {
  const isShared = (instar: number) => {
    const measured = animals.filter((animal) => sizeAtInstar(animal, instar) !== null);
    return measured.length > 1 && measured.some(({ specimenId }) => specimenId === ownId);
  };
  const instars = instarsIn(animals);
  return instars.findLast(isShared) ?? instars.at(-1) ?? null;
}

function sizeAtInstar({ sizes }: Pick<AlignedAnimal, 'sizes'>, instar: number): Estimate | null {
  return sizes.find(({ at }) => at === instar)?.size ?? null;
}

function isSurelyLarger(one: Estimate, other: Estimate): boolean {
  return one.value - other.value > Math.hypot(one.expandedUncertainty, other.expandedUncertainty);
}

/** The skin shed next after a day shows the size on it, if that instar had begun. */
function sizeOnDay({ sizes }: AlignedAnimal, day: number): Estimate | null {
  return sizes.find(({ from, at }) => from !== null && from < day && day <= at)?.size ?? null;
}

/** The times between molts of the group, rising. */
function stillDays(animals: readonly AlignedAnimal[]): { from: number; to: number }[] {
  const ends = animals.flatMap(({ sizes }) => sizes.flatMap(({ from, at }) => (from === null ? [at] : [from, at])));
  const days = [...new Set(ends)].sort((a, b) => a - b);
  return days.slice(1).map((to, index) => ({ from: days[index] ?? to, to }));
}
