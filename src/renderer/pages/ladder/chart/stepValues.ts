import { growthSteps, isOneMolt, measuredSteps } from '../../../../domain/growth/measuredStep.ts';
import { followsDirectly } from '../../../../domain/growth/positions.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { estimateFrom } from '../../../../domain/measuring/quantity.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { daysInWords, spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { rungName } from '../../../../words/ladder.ts';
import type { Measure } from './measures.ts';

/** A figure that belongs to one step of the row, with its bar. */
export interface StepValue {
  readonly rung: Rung;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Shared out over several instars. */
  readonly hollow: boolean;
  readonly lines: readonly string[];
  readonly spoken: string;
}

/** Later size over earlier, per instar, at the later skin. */
export function ratioValues(rungs: readonly Rung[], measure: Measure): StepValue[] {
  return growthSteps(measuredSteps(rungs, measure)).flatMap((step): StepValue[] => {
    const rung = rungs.find(({ moltId }) => moltId === step.later.moltId);
    const earlier = rungs.find(({ moltId }) => moltId === step.earlier.moltId);
    if (!rung || !earlier || step.instars < 1) return [];
    const value = Math.exp(step.logRatio / step.instars);
    const ratio = estimateFrom(value, (value * step.uncertainty) / step.instars);
    if (!isUsable(ratio)) return [];
    const words = estimateAsText(ratio, '1');
    const over = isOneMolt(step) ? 'in one molt' : `per instar, over ${step.instars} instars`;
    const since = `since ${rungName(earlier).toLowerCase()}`;
    return [
      {
        rung,
        value,
        low: Math.max(value / 10, value - ratio.expandedUncertainty),
        high: value + ratio.expandedUncertainty,
        hollow: !isOneMolt(step),
        lines: [`ratio ${words}`, over, since],
        spoken: `${rungName(rung)}: ratio ${words} ${over}, ${since}`,
      },
    ];
  });
}

/** How long each instar lasted, at the skin that shows it. Molts out of order, on one day or only presumed have no interval. */
export function intervalValues(rungs: readonly Rung[]): StepValue[] {
  return rungs.flatMap((rung, index): StepValue[] => {
    const previous = rungs[index - 1];
    const days = rung.daysSincePrevious;
    if (!previous || !days || days.to <= 0 || previous.presumed || rung.presumed) return [];
    const isOne = followsDirectly(previous, rung);
    // Between molts whose places are open, nobody knows over how many instars the days go.
    const instars = previous.stepKnown && rung.stepKnown ? rung.step - previous.step : 1;
    if (instars < 1) return [];
    const words = daysInWords(Math.max(0, days.from), days.to);
    const over = isOne ? [] : [instars > 1 ? `over ${instars} instars, shown per instar` : 'perhaps over several instars'];
    const until = `until ${spanInWords(rung.happenedFrom, rung.happenedTo)}`;
    const low = Math.max(0.5, days.from) / instars;
    return [
      {
        rung,
        value: (low + days.to / instars) / 2,
        low,
        high: days.to / instars,
        hollow: !isOne,
        lines: [words, ...over, until],
        spoken: `${rungName(rung)} lasted ${words}${over.length > 0 ? `, ${over.join()}` : ''}, ${until}`,
      },
    ];
  });
}
