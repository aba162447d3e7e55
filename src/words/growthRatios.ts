import type { ReadingConsistency } from '../domain/growth/consistency.ts';
import type { GrowthReport } from '../domain/growth/growthReport.ts';
import type { MissedMoltCheck } from '../domain/growth/missed/missedMolts.ts';
import { FEWEST_RUNGS_FOR_CURVE } from '../domain/growth/trend/curvature.ts';
import { counted } from './counts.ts';
import { estimateAsText } from './estimates.ts';
import type { NameOfMolt } from './growth.ts';
import { tellsGrowth } from './ladder.ts';

export interface RatioInWords {
  /** What the figure is, by the name it has in the literature. */
  readonly name: string;
  readonly ratio: string;
  readonly means: string;
}

/** Every growth ratio of the carapace's length that these skins give, each named as what it is, the published yardstick last. */
export function ratiosInWords({ ratios, weighted, robust }: Pick<GrowthReport, 'ratios' | 'weighted' | 'robust'>): RatioInWords[] {
  const { arithmeticMean, spread, geometricMean, regression, przibram } = ratios;
  return [
    ...row(
      'Geometric mean',
      geometricMean && estimateAsText(geometricMean, '1'),
      'from the first and the last skin alone, over the instars between',
    ),
    ...row(
      'Mean of the single steps',
      arithmeticMean?.toFixed(3),
      spread === null ? 'one step only' : `the steps scatter by ${spread.toFixed(3)} (standard deviation)`,
    ),
    ...row(
      'Regression, exp(b)',
      regression && estimateAsText(regression, '1'),
      'the classical figure: least squares of ln L on the instar, all skins alike; ± from the readings alone',
    ),
    ...row(
      'Weighted regression',
      weighted &&
        (tellsGrowth(weighted)
          ? `${weighted.ratio.toFixed(3)} (95 % ${weighted.ratioLow95.toFixed(3)} to ${weighted.ratioHigh95.toFixed(3)})`
          : 'not told by these skins'),
      'a skin read badly counts less; the interval takes in the scatter of growth, which adds up from molt to molt',
    ),
    ...row('Robust line', robust?.ratio.toFixed(3), 'the median of all slopes between two skins, which one wrong size cannot pull away'),
    {
      name: 'Przibram’s yardstick',
      ratio: przibram.toFixed(3),
      means: 'if each molt doubled the weight and nothing of the shape changed; no law',
    },
  ];
}

function row(name: string, ratio: string | null | undefined, means: string): RatioInWords[] {
  return ratio ? [{ name, ratio, means }] : [];
}

/** What is open about a row and changes its ratio; null where nothing is. */
export function ratioCautionInWords(missed: readonly Pick<MissedMoltCheck, 'verdict'>[], inDoubt: readonly string[]): string | null {
  if (inDoubt.length > 0) return 'A skin that does not fit the others is counted in, see the warning above.';
  if (missed.every(({ verdict }) => verdict === 'none')) return null;
  return 'A molt may be missing in this row, see the question above. With it, the ratio of a single molt is smaller than this one.';
}

/** Whether the ratios change along the row, or why that can't be told. */
export function curvatureInWords({ curvature, ratios }: Pick<GrowthReport, 'curvature' | 'ratios'>): string {
  if (curvature === null) {
    return ratios.stepwise.length + 1 < FEWEST_RUNGS_FOR_CURVE
      ? `Whether the ratio falls as the animal grows can be tested from ${FEWEST_RUNGS_FOR_CURVE} measured skins up.`
      : 'Whether the ratio falls as the animal grows cannot be tested: the sizes are known too badly.';
  }
  const { ratioChangePercent, probability, bends } = curvature;
  const test = `quadratic term: p ${probability < 0.001 ? '< 0.001' : `= ${probability.toFixed(3)}`}`;
  if (!bends) return `These skins do not show that the ratio changes from molt to molt (${test}); so few can hide a small change.`;
  const change = `${Math.abs(ratioChangePercent).toFixed(1)} % with each molt (${test}).`;
  return ratioChangePercent < 0
    ? `The ratio falls by about ${change} That is usual as spiders grow.`
    : `The ratio rises by about ${change}`;
}

/** How the readings of one skin agree with each other. */
export function consistencyInWords(consistency: ReadingConsistency & { readonly moltId: string }, nameOf: NameOfMolt): string {
  const readings = counted(consistency.readings, 'reading');
  const name = nameOf(consistency.moltId);
  const figures = `Birge ratio ${consistency.birgeRatio.toFixed(2)}, about 1 where they agree`;
  return consistency.agree
    ? `${name}: its ${readings} agree within their uncertainties (${figures}).`
    : `${name}: its ${readings} differ by more than their uncertainties allow (${figures}). Look at the scale and the two ends of the carapace on each photo again.`;
}
