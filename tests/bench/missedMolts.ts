import { USUAL_GROWTH } from '../../src/domain/growth/simulation/simulatedSkins.ts';
import { seededGenerator } from '../../src/domain/numerics/generator.ts';
import { tallyMissedMolts } from '../support/missedMoltTally.ts';
import { atLeast, atMost, type Figure, reported } from './figure.ts';

/** Growth so slow that one molt is harder to tell from two. */
const SLOW_GROWTH = { ...USUAL_GROWTH, ratio: 1.15 };

/**
 * How well molts without a skin are found: 2,000 simulated animals of ten molts, ratio 1.25, spread 0.05, reading error 1 %. The share found
 * hangs on the ratio, so it is told for a ratio of 1.15 beside it, without a bar: many a missed molt of a slow animal shows in no size.
 */
export function missedMolts(): Figure[] {
  const slow = tallyMissedMolts(SLOW_GROWTH, 2000, seededGenerator(4));
  const { recall, falseAlarms, crosbyRecall, crosbyFalseAlarms } = tallyMissedMolts(USUAL_GROWTH, 2000, seededGenerator(4));
  return [
    atLeast('missed-molt-recall-pct', 100 * recall, '%', 80),
    atMost('missed-molt-false-alarm-pct', 100 * falseAlarms, '%', 1),
    reported('missed-molt-recall-at-1.15-pct', 100 * slow.recall, '%'),
    reported('missed-molt-false-alarm-at-1.15-pct', 100 * slow.falseAlarms, '%'),
    reported('missed-molt-recall-of-crosby-pct', 100 * crosbyRecall, '%'),
    reported('missed-molt-false-alarm-of-crosby-pct', 100 * crosbyFalseAlarms, '%'),
  ];
}
