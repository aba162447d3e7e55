import type { GrowthFit } from '../domain/growth/growthFit.ts';
import type { Rung } from '../domain/growth/rung.ts';
import type { SizeName } from '../domain/growth/skinSizes.ts';
import type { WeightedFit } from '../domain/growth/trend/weightedFit.ts';
import type { Instar } from '../domain/molting/instar.ts';
import { counted } from './counts.ts';
import { daysInWords } from './dates.ts';
import { unusableInWords } from './estimates.ts';
import type { NameOfMolt } from './growth.ts';
import { instarInWords, instarMark, recordedInWords } from './instars.ts';
import { capitalized, uncapitalized } from './labels.ts';
import { SIZE_LABELS } from './quantities.ts';

/** "Instar 7", or its place among the molts where the instar is not known. */
export function rungName(rung: Pick<Rung, 'instar' | 'recordedMolt'>): string {
  return rung.instar === null ? capitalized(recordedInWords(rung.recordedMolt)) : capitalized(instarInWords(rung.instar));
}

/** What the keeper has answered about two skins, in a row in which they are sure to follow each other. */
export function noneMissedInWords(earlier: Rung, later: Rung): string {
  const sure = ({ instar, recordedMolt }: Rung) =>
    uncapitalized(rungName({ recordedMolt, instar: instar && { ...instar, certainty: 'known' } }));
  return `You said that no molt was missed between ${sure(earlier)} and ${sure(later)}.`;
}

/** The names of these rungs by their molts. */
export function moltNames(rungs: readonly Rung[]): NameOfMolt {
  return (moltId) => {
    const rung = rungs.find((candidate) => candidate.moltId === moltId);
    return rung ? rungName(rung) : 'A molt no longer on record';
  };
}

/** What stands under a point of the chart, where room is short: "7", "7?" where it is only counted, "molt 3". */
export function rungMark(rung: Pick<Rung, 'instar' | 'recordedMolt'>): string {
  return rung.instar === null ? `molt ${rung.recordedMolt}` : instarMark(rung.instar);
}

/** What is missing between this rung and the one before, or the acquisition; null when nothing is. */
export function gapInWords(rung: Rung, previous: Rung | undefined): string | null {
  const skipped = rung.skippedInstars;
  if (skipped === 0) return null;
  if (rung.instar === null || (previous && rung.instar.number - (previous.instar?.number ?? Number.NaN) !== skipped + 1)) {
    const verb = skipped === 1 ? 'has' : 'have';
    return `${counted(skipped, 'instar')} before this one ${verb} no molt on record; on which side of the molts without a number is not known.`;
  }
  const first = rung.instar.number - skipped;
  const last = rung.instar.number - 1;
  if (first === last) return `Instar ${first} has no molt on record.`;
  return `Instars ${first} ${last - first > 1 ? 'to' : 'and'} ${last} have no molt on record.`;
}

/** Why a rung has no size. */
export function unmeasuredInWords(rung: Rung): string {
  if (rung.presumed) return 'presumed molt: nobody saw it, and no skin of it is on record';
  if (rung.recovered === false) return 'skin not recovered';
  if (rung.photoId !== null) return rung.readingIds.length === 0 ? 'not measured yet' : 'carapace not measured';
  return rung.recovered === null ? 'nothing on record about the skin' : 'skin not photographed yet';
}

/**
 * Why a place in the row has no point in one measure: "leg I not measured" where the skin has other sizes.
 *
 * @param rung undefined for an instar without a molt on record.
 */
export function missingSizeInWords(rung: Rung | undefined, measure: Exclude<SizeName, 'legSpanMm'>): string {
  if (!rung) return 'no molt on record';
  if (rung[measure]) return unusableInWords('mm');
  const isMeasured = rung.carapaceLengthMm || rung.carapaceWidthMm || rung.legFirstMm || rung.legFourthMm;
  return isMeasured ? `${uncapitalized(SIZE_LABELS[measure])} not measured` : unmeasuredInWords(rung);
}

/** Why there is no ratio to the instar before. */
export function noRatioInWords(rung: Rung, previous: Rung | undefined): string {
  if (!previous) return 'first on record';
  if (rung.skippedInstars > 0) return 'gap before it';
  if (!rung.stepKnown || !previous.stepKnown) return 'place in the row not known';
  if (rung.presumed || previous.presumed) return 'a presumed molt has no size';
  return 'not both measured';
}

/** Days since the molt on record before. Across a gap they hold more than one instar's life, which is said with them. */
export function daysSinceInWords(rung: Rung, previous: Rung | undefined): string | null {
  if (!rung.daysSincePrevious) return null;
  if (rung.presumed || previous?.presumed) return 'not known, beside a presumed molt';
  const days = daysInWords(rung.daysSincePrevious.from, rung.daysSincePrevious.to);
  if (!rung.stepKnown || previous?.stepKnown === false) return `${days}, perhaps across a gap`;
  return rung.skippedInstars === 0 ? days : `${days} in ${rung.skippedInstars + 1} instars`;
}

/** Two decimals, or three where the interval is narrower than two can show. */
function ratioDigits(fit: WeightedFit): number {
  return fit.ratioHigh95 - fit.ratioLow95 < 0.02 ? 3 : 2;
}

/** The fit as sentences: what it is, how sure, and which way up; the classical figures of the same skins beside it. */
export function fitInWords(fit: WeightedFit, classical: GrowthFit): { ratio: string; interval: string; explanation: string } {
  const digits = ratioDigits(fit);
  return {
    ratio: fit.ratio.toFixed(digits),
    interval: `${fit.ratioLow95.toFixed(digits)} to ${fit.ratioHigh95.toFixed(digits)}`,
    explanation:
      `Fitted to ${counted(fit.rungs, 'measured skin')}, later over earlier. What one molt grew too much or too little stays in all later sizes, and the ` +
      `interval counts it so. The classical exp(b), ln L = a + b n by least squares (L the length, n the instar), is ${classical.ratio.toFixed(digits)}, ` +
      `R² ${classical.rSquared.toFixed(3)}; from first to last, the geometric mean is ${classical.geometricMeanRatio.toFixed(digits)}.`,
  };
}

/** An interval this many times as high as it is low tells nothing of growth: the ratios of all arthropods on record lie closer. Own judgment. */
const TELLS_NOTHING = 2.5;

/** Whether the skins agree so badly, or are so few, that their mean ratio says nothing. */
export function tellsGrowth({ ratioLow95, ratioHigh95 }: Pick<WeightedFit, 'ratioLow95' | 'ratioHigh95'>): boolean {
  return ratioHigh95 < TELLS_NOTHING * ratioLow95;
}

/** The sentence that keeps skin and animal apart. `now` of a living animal, null where its instar is not known. */
export function pastInWords(called: string, now: Instar | null | undefined): string {
  const rule = 'Each skin shows the instar that ended with its molt.';
  if (now === undefined) return rule;
  const further = now === null ? 'at least one instar further' : `in ${instarInWords(now)}`;
  return `${rule} ${called} is already ${further}, and larger than the last rung.`;
}
