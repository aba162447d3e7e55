import type { SizeAtStep } from './growthFit.ts';
import { followsDirectly } from './positions.ts';
import type { Rung } from './rung.ts';

/** A size with how well it was read and the molt whose skin shows it. */
export interface MeasuredStep extends SizeAtStep {
  readonly moltId: string;
  /** Standard uncertainty of `lengthMm`. */
  readonly uncertaintyMm: number;
}

/** From one measured skin to the next: over how many instars, as far as is on record, and by how much. */
export interface GrowthStep {
  readonly earlier: MeasuredStep;
  readonly later: MeasuredStep;
  /** 1 where the two followed each other; more across a gap or across skins that were not measured. */
  readonly instars: number;
  /** ln(later / earlier) and its standard uncertainty, the readings' alone. */
  readonly logRatio: number;
  readonly uncertainty: number;
}

type Measure = 'carapaceLengthMm' | 'carapaceWidthMm' | 'legFirstMm' | 'legFourthMm';

/** Skins whose place in the row is known and which were measured, oldest first. */
export function measuredSteps(rungs: readonly Rung[], measure: Measure = 'carapaceLengthMm'): MeasuredStep[] {
  return rungs.flatMap(({ moltId, step, stepKnown, [measure]: size }) =>
    stepKnown && size ? [{ moltId, step, lengthMm: size.value, uncertaintyMm: size.standardUncertainty }] : [],
  );
}

/**
 * Growth from each measured skin to the next measured one. First-order uncertainty of a logarithm of a quotient,
 * u^2 = (u_1 / L_1)^2 + (u_2 / L_2)^2 (JCGM 100:2008, 5.1.6).
 *
 * @param sizes in rising order of step, each length above zero.
 */
export function growthSteps(sizes: readonly MeasuredStep[]): GrowthStep[] {
  return sizes.slice(1).flatMap((later, index) => {
    const earlier = sizes[index];
    if (!earlier) return [];
    return [
      {
        earlier,
        later,
        instars: later.step - earlier.step,
        logRatio: Math.log(later.lengthMm / earlier.lengthMm),
        uncertainty: Math.hypot(earlier.uncertaintyMm / earlier.lengthMm, later.uncertaintyMm / later.lengthMm),
      },
    ];
  });
}

/** Whether the two skins of a step shed one right after the other. */
export function isOneMolt({ earlier, later }: GrowthStep): boolean {
  return followsDirectly({ ...earlier, stepKnown: true }, { ...later, stepKnown: true });
}
