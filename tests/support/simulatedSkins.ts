import type { MeasuredStep } from '../../src/domain/growth/measuredStep.ts';
import { checkMissedMolts } from '../../src/domain/growth/missed/missedMolts.ts';
import { type Generator, normalDeviate } from '../../src/domain/numerics/generator.ts';

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

/** How often missed molts are found, and suggested where none is missing; by the classical criterion beside. */
export interface MissedMoltTally {
  readonly gaps: number;
  readonly whole: number;
  readonly recall: number;
  readonly falseAlarms: number;
  /** Of those called likely. */
  readonly falseLikely: number;
  readonly crosbyRecall: number;
  readonly crosbyFalseAlarms: number;
}

export function tallyMissedMolts(truth: GrowthTruth, animals: number, draw: Generator): MissedMoltTally {
  const counts = { gaps: 0, found: 0, foundByCrosby: 0, whole: 0, alarms: 0, likelyAlarms: 0, alarmsByCrosby: 0 };
  for (let animal = 0; animal < animals; animal += 1) {
    const { sizes, missedBefore } = simulateSkins(truth, draw);
    for (const [index, check] of checkMissedMolts(sizes).entries()) {
      const isGap = (missedBefore[index] ?? 0) > 0;
      counts[isGap ? 'gaps' : 'whole'] += 1;
      if (check.suggestedSkipped > 0) counts[isGap ? 'found' : 'alarms'] += 1;
      if (check.verdict === 'likely' && !isGap) counts.likelyAlarms += 1;
      if (check.crosbyAlarm) counts[isGap ? 'foundByCrosby' : 'alarmsByCrosby'] += 1;
    }
  }
  return {
    gaps: counts.gaps,
    whole: counts.whole,
    recall: counts.found / counts.gaps,
    falseAlarms: counts.alarms / counts.whole,
    falseLikely: counts.likelyAlarms / counts.whole,
    crosbyRecall: counts.foundByCrosby / counts.gaps,
    crosbyFalseAlarms: counts.alarmsByCrosby / counts.whole,
  };
}
