import type { GrowthStep } from '../measuredStep.ts';

/** Percent by which one ratio may differ from the one before (Crosby TK 1973, N. Z. Entomol. 5:175-176; from memory). */
export const CROSBY_LIMIT_PERCENT = 10;

/** What one skipped instar does to a perfect progression at ratios from 1.26 up is +26 % or more, then -21 % or less; a margin for scatter. */
const GAP_RISE_PERCENT = 20;
const GAP_FALL_PERCENT = -15;

export interface CrosbyValue {
  /** c = 100 (r_n - r_(n-1)) / r_(n-1) at this step; null at the first. */
  readonly percent: number | null;
  /** Whether c is beyond 10 % either way, and farther from 0 than the readings leave open: the classical alarm, of sizes that tell. */
  readonly beyondLimit: boolean;
  /** Whether c rises as at a skipped instar and falls just after: a lone value beyond the limit does not. */
  readonly looksLikeGap: boolean;
}

/**
 * Crosby's growth ratio criterion at each step: the change of the ratio in percent of the one before, beyond 10 % a sign that an
 * instar was missed or that growth keeps to no constant ratio there. Across a gap on record the ratio per instar is taken.
 * Signed; whether Crosby meant rises alone is not known, so the size counts. A value within twice its standard uncertainty is no alarm:
 * the size between the two steps stands in both, so its error counts twice (JCGM 100:2008, 5.1.2).
 */
export function crosbyValues(steps: readonly GrowthStep[]): CrosbyValue[] {
  const ratios = steps.map(({ logRatio, instars }) => Math.exp(logRatio / instars));
  const percents = ratios.map((ratio, index) => {
    const before = ratios[index - 1];
    return before === undefined ? null : (100 * (ratio - before)) / before;
  });
  return percents.map((percent, index) => {
    const next = percents[index + 1];
    return {
      percent,
      beyondLimit: percent !== null && Math.abs(percent) > CROSBY_LIMIT_PERCENT && !isWithinReadings(steps[index - 1], steps[index]),
      looksLikeGap: percent !== null && percent > GAP_RISE_PERCENT && next !== null && next !== undefined && next < GAP_FALL_PERCENT,
    };
  });
}

/** ln of the change, (ln L3 - ln L2) / n - (ln L2 - ln L1) / m, against twice what is not known of the three lengths. */
function isWithinReadings(before: GrowthStep | undefined, here: GrowthStep | undefined): boolean {
  if (!before || !here) return false;
  const change = here.logRatio / here.instars - before.logRatio / before.instars;
  const [first, middle, last] = [before.earlier, here.earlier, here.later].map(({ uncertaintyMm, lengthMm }) => uncertaintyMm / lengthMm);
  const uncertainty = Math.hypot(
    (last ?? 0) / here.instars,
    (middle ?? 0) * (1 / here.instars + 1 / before.instars),
    (first ?? 0) / before.instars,
  );
  return Math.abs(change) < 2 * uncertainty;
}

/** Series reared under watch, nothing missing, in which the criterion raises its alarm all the same. */
export const CROSBY_FALSE_ALARMS: readonly { readonly taxon: string; readonly percents: readonly number[]; readonly source: string }[] = [
  { taxon: 'Aglaoctenus lagotis', percents: [-11.04, -12.84], source: 'Moreira VSS, Del-Claro K 2011, Zoologia 28:565-570' },
  { taxon: 'Grosphus hirtus', percents: [-12.5], source: 'Lourenco WR, Goodman SM 2006, Zool. Anz. 244:181-185' },
  { taxon: 'Cydia pomonella', percents: [-12.25], source: 'Great Lakes Entomol. 20(3)' },
  { taxon: 'Diaphorina citri', percents: [29.63, -35.35], source: 'Nava DE et al. 2007, J. Appl. Entomol. 131:709-715' },
];
