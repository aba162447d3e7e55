import { USUAL_GROWTH } from '../../src/domain/growth/simulation/simulatedSkins.ts';
import { seededGenerator } from '../../src/domain/numerics/generator.ts';
import { tallyMissedMolts } from '../support/missedMoltTally.ts';
import { type Figure, reported } from './figure.ts';

/** How well molts without a skin are found: 2,000 simulated animals of ten molts, ratio 1.25, spread 0.05, reading error 1 %. */
export function missedMolts(): Figure[] {
  const { recall, falseAlarms, crosbyRecall, crosbyFalseAlarms } = tallyMissedMolts(USUAL_GROWTH, 2000, seededGenerator(4));
  return [
    reported('missed-molt-recall-pct', 100 * recall, '%'),
    reported('missed-molt-false-alarm-pct', 100 * falseAlarms, '%'),
    reported('missed-molt-recall-of-crosby-pct', 100 * crosbyRecall, '%'),
    reported('missed-molt-false-alarm-of-crosby-pct', 100 * crosbyFalseAlarms, '%'),
  ];
}
