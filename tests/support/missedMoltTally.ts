import type { MeasuredStep } from '../../src/domain/growth/measuredStep.ts';
import { checkMissedMolts } from '../../src/domain/growth/missed/missedMolts.ts';
import { type GrowthTruth, simulateSkins } from '../../src/domain/growth/simulation/simulatedSkins.ts';
import type { Generator } from '../../src/domain/numerics/generator.ts';
import { beliefOn } from './believedGrowth.ts';

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

/** @param kinOf the siblings that each animal is kept with, as rows of their skins; none where it is left out. */
export function tallyMissedMolts(
  truth: GrowthTruth,
  animals: number,
  draw: Generator,
  kinOf: () => readonly (readonly MeasuredStep[])[] = () => [],
): MissedMoltTally {
  const counts = { gaps: 0, found: 0, foundByCrosby: 0, whole: 0, alarms: 0, likelyAlarms: 0, alarmsByCrosby: 0 };
  for (let animal = 0; animal < animals; animal += 1) {
    const { sizes, missedBefore } = simulateSkins(truth, draw);
    for (const [index, check] of checkMissedMolts(sizes, beliefOn(sizes, { kin: kinOf() }).steps).entries()) {
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
