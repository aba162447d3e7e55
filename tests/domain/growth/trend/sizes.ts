import type { MeasuredStep } from '../../../../src/domain/growth/measuredStep.ts';

/** Sizes at consecutive instars, each read with one relative uncertainty. */
export function stepsOf(lengthsMm: readonly number[], firstStep = 1, relativeUncertainty = 0.01): MeasuredStep[] {
  return lengthsMm.map((lengthMm, index) => ({
    moltId: `molt-${firstStep + index}`,
    step: firstStep + index,
    lengthMm,
    uncertaintyMm: lengthMm * relativeUncertainty,
  }));
}

export function lengthsOf(firstMm: number, ratios: readonly number[]): number[] {
  const lengths = [firstMm];
  for (const ratio of ratios) lengths.push((lengths.at(-1) ?? firstMm) * ratio);
  return lengths;
}
