import { z } from 'zod';
import { CalendarDay } from '../dates.ts';
import type { PointsScale, PrintFactors } from '../measuring/calibration.ts';
import { CHECK_BAR_MM } from './layout.ts';

/** What a keeper read with a caliper on the two check bars of one printed sheet. Made once per printer, and again with new paper. */
export const PrintCheckDraft = z
  .object({
    printer: z.string().trim().min(1).max(200),
    barAMm: z
      .number()
      .min(0.5 * CHECK_BAR_MM)
      .max(2 * CHECK_BAR_MM)
      .describe('Length of bar A, which lies along the card: its x direction'),
    barBMm: z
      .number()
      .min(0.5 * CHECK_BAR_MM)
      .max(2 * CHECK_BAR_MM)
      .describe('Length of bar B, which lies across the card: its y direction'),
    readingStandardUncertaintyMm: z.number().positive().max(5).describe('Of one reading of the caliper, with setting its jaws'),
    checkedOn: CalendarDay,
  })
  .meta({ id: 'PrintCheckDraft' });
export type PrintCheckDraft = z.infer<typeof PrintCheckDraft>;

export const PrintCheck = PrintCheckDraft.extend({ id: z.string() }).meta({ id: 'PrintCheck' });
export type PrintCheck = z.infer<typeof PrintCheck>;

/** A caliper read to 0.05 mm on a printed edge; common practice, no source. */
export const CALIPER_STANDARD_UNCERTAINTY_MM = 0.03;

/** Paper grows and shrinks with the air's moisture by a few tenths of a percent; from memory. */
const PAPER_RELATIVE_UNCERTAINTY = 0.001;

/** Printers left alone scale by up to 2 % (rectangular; seen in tests of copiers, from memory). */
const UNCHECKED_HALF_WIDTH = 0.02;

export const UNCHECKED_PRINT: PrintFactors = { xFactor: 1, yFactor: 1, relativeStandardUncertainty: UNCHECKED_HALF_WIDTH / Math.sqrt(3) };

/** How much larger than drawn a printer prints, from its check. */
export function printFactorsOf({ barAMm, barBMm, readingStandardUncertaintyMm }: PrintCheckDraft): PrintFactors {
  return {
    xFactor: barAMm / CHECK_BAR_MM,
    yFactor: barBMm / CHECK_BAR_MM,
    relativeStandardUncertainty: Math.hypot(readingStandardUncertaintyMm / CHECK_BAR_MM, PAPER_RELATIVE_UNCERTAINTY),
  };
}

/**
 * The check to offer for a card that nobody has said anything of: the latest, where all are of one printer. With several
 * printers nothing in a picture tells which one it came from.
 *
 * @param checks the latest first.
 */
export function likelyPrintCheck(checks: readonly PrintCheck[]): PrintCheck | null {
  const [latest] = checks;
  return latest !== undefined && checks.every(({ printer }) => printer === latest.printer) ? latest : null;
}

/** Marks on a printed card with the true size its printer gave it; with the uncertainty of any printer when none was measured. */
export function withPrintCheck(marks: PointsScale, check: PrintCheck | null): PointsScale {
  if (check === null) return { ...marks, print: UNCHECKED_PRINT, printCheck: null };
  return { ...marks, print: printFactorsOf(check), printCheck: { id: check.id, printer: check.printer, checkedOn: check.checkedOn } };
}
