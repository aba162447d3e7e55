import type { GrowthFit, Rung } from '../domain/growth/rung.ts';
import { counted } from './counts.ts';
import { daysInWords } from './dates.ts';

/** "Instar 7", or its place among the molts where the instar is not known. */
export function rungName(rung: Pick<Rung, 'instar' | 'recordedMolt'>): string {
  return rung.instar === null ? `Molt ${rung.recordedMolt} of those recorded` : `Instar ${rung.instar}`;
}

/** What stands under a point of the chart, where room is short: "7", "molt 3". */
export function rungMark(rung: Pick<Rung, 'instar' | 'recordedMolt'>): string {
  return rung.instar === null ? `molt ${rung.recordedMolt}` : String(rung.instar);
}

/** What is missing between this rung and the one before; null when nothing is. */
export function gapInWords(rung: Rung, previous: Rung | undefined): string | null {
  const skipped = rung.skippedInstars;
  if (skipped === 0 || !previous) return null;
  if (previous.instar === null || rung.instar === null || rung.instar - previous.instar !== skipped + 1) {
    const verb = skipped === 1 ? 'has' : 'have';
    return `${counted(skipped, 'instar')} before this one ${verb} no molt on record; on which side of the molts without a number is not known.`;
  }
  const first = rung.instar - skipped;
  const last = rung.instar - 1;
  if (first === last) return `Instar ${first} has no molt on record.`;
  return `Instars ${first} ${last - first > 1 ? 'to' : 'and'} ${last} have no molt on record.`;
}

/** Why a rung has no size. */
export function unmeasuredInWords(rung: Rung): string {
  if (rung.recovered === false) return 'skin not recovered';
  if (rung.photoId !== null) return rung.readingIds.length === 0 ? 'not measured yet' : 'carapace not measured';
  return rung.recovered === null ? 'nothing on record about the skin' : 'skin not photographed yet';
}

/** Why there is no ratio to the instar before. */
export function noRatioInWords(rung: Rung, previous: Rung | undefined): string {
  if (!previous) return 'first on record';
  if (rung.skippedInstars > 0) return 'gap before it';
  if (!rung.stepKnown || !previous.stepKnown) return 'place in the row not known';
  return 'not both measured';
}

export function daysSinceInWords(rung: Rung): string | null {
  return rung.daysSincePrevious && daysInWords(rung.daysSincePrevious.from, rung.daysSincePrevious.to);
}

/** Two decimals, or three where the interval is narrower than two can show. */
function ratioDigits(fit: GrowthFit): number {
  return fit.ratioHigh95 - fit.ratioLow95 < 0.02 ? 3 : 2;
}

/** The fit as sentences: what it is, how sure, and which way up. */
export function fitInWords(fit: GrowthFit): { ratio: string; interval: string; explanation: string } {
  const digits = ratioDigits(fit);
  return {
    ratio: fit.ratio.toFixed(digits),
    interval: `${fit.ratioLow95.toFixed(digits)} to ${fit.ratioHigh95.toFixed(digits)}`,
    explanation:
      `Fitted to ${counted(fit.rungs, 'measured skin')}: ln L = a + b n by least squares, later over earlier; ` +
      `from first to last, the geometric mean is ${fit.geometricMeanRatio.toFixed(digits)}. R² ${fit.rSquared.toFixed(3)}.`,
  };
}

/** The sentence that keeps skin and animal apart. `last` is the last rung of a living animal. */
export function pastInWords(called: string, last: Rung | undefined): string {
  const rule = 'Each skin shows the instar that ended with its molt.';
  if (!last) return rule;
  const now = last.instar === null ? 'is already one instar further' : `is already in instar ${last.instar + 1}`;
  return `${rule} ${called} ${now} and larger than the last rung.`;
}
