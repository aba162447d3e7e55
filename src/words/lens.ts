import type { LensFound } from '../domain/measuring/lens/lensFound.ts';

/** What is taken of the lens, in plain words. */
export function lensInWords({ reason, shift, isCorrected }: LensFound, cornerPx: number): string {
  if (isCorrected) {
    const px = Math.abs(shift.cornerShare * cornerPx);
    const way = shift.cornerShare < 0 ? 'inward' : 'outward';
    const uncertaintyPx = 2 * shift.standardUncertainty * cornerPx;
    return `Corrected: it moved the corner of the picture ${way} by ${px.toFixed(1)} px (± ${uncertaintyPx.toFixed(1)}), as the straight lines of the scale object show.`;
  }
  return NOT_CORRECTED[reason];
}

/** Why the lens stays as it is; beside its line in a budget. */
export const NOT_CORRECTED: Readonly<Record<LensFound['reason'], string>> = {
  found: '',
  'switched-off': 'Not corrected, because you left the picture as it is; what was seen of it stands in the uncertainty.',
  'nothing-straight': 'Not corrected: no straight edges were found on the scale object, so a bound stands in the uncertainty.',
  'too-short': 'Not corrected: the straight edges are too short to show it, so a bound stands in the uncertainty.',
  uneven: 'Not corrected: the edges are not straight enough to show it, so a bound stands in the uncertainty.',
};
