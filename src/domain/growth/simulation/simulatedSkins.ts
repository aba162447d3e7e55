import { type Generator, normalDeviate } from '../../numerics/generator.ts';
import type { MeasuredStep } from '../measuredStep.ts';

/** One animal of known truth: its skins as kept, counted as if none were missing. */
export interface SimulatedSkins {
  readonly sizes: readonly MeasuredStep[];
  /** Skins that are missing before each of `sizes` but the first. */
  readonly missedBefore: readonly number[];
}

export interface GrowthTruth {
  readonly skins: number;
  readonly ratio: number;
  /** Standard deviation of the ratio of single molts. */
  readonly spread: number;
  /** Relative standard deviation of a reading. */
  readonly readingError: number;
  /** Share of skins, the first and last apart, that nobody kept. */
  readonly missed: number;
  /** ln r falls by as much each molt. */
  readonly decline?: number;
}

/** A row of skins by the plain rule, each ratio scattering about one for all. The same draws give the same skins. */
export function simulateSkins(truth: GrowthTruth, draw: Generator): SimulatedSkins {
  const sizes: MeasuredStep[] = [];
  const missedBefore: number[] = [];
  let trueMm = 1.5;
  let missing = 0;
  for (let instar = 0; instar < truth.skins; instar += 1) {
    const isInside = instar > 0 && instar < truth.skins - 1;
    if (isInside && draw() < truth.missed) missing += 1;
    else {
      const lengthMm = trueMm * (1 + truth.readingError * normalDeviate(draw));
      sizes.push({ moltId: `molt-${instar}`, step: sizes.length, lengthMm, uncertaintyMm: lengthMm * truth.readingError });
      if (sizes.length > 1) missedBefore.push(missing);
      missing = 0;
    }
    trueMm *= (truth.ratio + truth.spread * normalDeviate(draw)) * Math.exp(-(truth.decline ?? 0) * instar);
  }
  return { sizes, missedBefore };
}

/** Ratio 1.25, spread 0.05, reading error 1 %, one skin in ten lost. */
export const USUAL_GROWTH: GrowthTruth = { skins: 10, ratio: 1.25, spread: 0.05, readingError: 0.01, missed: 0.1 };
