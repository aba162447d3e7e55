import { z } from 'zod';

/** Coverage factor of expanded uncertainties, unless few repeats stand behind them: about 95 % for a normal distribution (JCGM 100:2008, 6.3). */
export const COVERAGE_FACTOR = 2;
/** What it covers of a normal distribution: the column of 95.45 % in table G.2. */
export const COVERAGE_LEVEL = 0.954499736;

/** A value with its standard (u) and expanded (U = k u) uncertainty, all in one unit named by the field that holds it. */
export const Estimate = z
  .object({
    value: z.number(),
    standardUncertainty: z.number().min(0),
    expandedUncertainty: z.number().min(0),
    coverageFactor: z.number().positive().optional().describe('k where it is not 2: part of u is known from few repeats'),
  })
  .meta({ id: 'Estimate' });
export type Estimate = z.infer<typeof Estimate>;

/** An estimate from its standard uncertainty, which must not be negative. */
export function estimateFrom(value: number, standardUncertainty: number, coverageFactor?: number): Estimate {
  return {
    value,
    standardUncertainty,
    expandedUncertainty: (coverageFactor ?? COVERAGE_FACTOR) * standardUncertainty,
    ...(coverageFactor === undefined ? {} : { coverageFactor }),
  };
}

export const BudgetSource = z
  .enum(['pointing', 'calibration', 'scale-object', 'tilt-unknown', 'height', 'camera-distance', 'distortion'])
  .meta({ id: 'BudgetSource' });
export type BudgetSource = z.infer<typeof BudgetSource>;

export const QuantityFlag = z
  .enum(['posture-dependent', 'flat-projection', 'regenerated', 'height-assumed', 'height-not-corrected', 'tilt-unknown', 'far-from-scale'])
  .meta({ id: 'QuantityFlag' });
export type QuantityFlag = z.infer<typeof QuantityFlag>;

/**
 * One measured quantity. Names: `carapace-length`, `carapace-width`, `carapace-ratio` (length / width), `leg-L1`,
 * `leg-L1-femur` ..., `span-L1-R4`, `span-R1-L4`, and `free-...` of single distances.
 */
export const Quantity = z
  .object({
    name: z.string(),
    unit: z.enum(['mm', '1']),
    estimate: Estimate,
    flags: z.array(QuantityFlag),
    budget: z.array(
      z.object({
        source: BudgetSource,
        standardUncertainty: z.number().min(0).describe('Contribution to u of the quantity, in its unit'),
        share: z.number().min(0).max(1).describe('Of the variance'),
      }),
    ),
    heightCorrection: z.number().nullable().describe('What the height correction changed, in the unit; null when none could be made'),
  })
  .meta({ id: 'Quantity' });
export type Quantity = z.infer<typeof Quantity>;

export const AbsentQuantity = z
  .object({
    name: z.string(),
    reason: z
      .enum(['not-placed', 'missing', 'not-visible', 'no-position'])
      .describe('no-position: a landmark lies beyond the horizon of the calibrated plane, or its height reaches the camera'),
  })
  .meta({ id: 'AbsentQuantity' });
export type AbsentQuantity = z.infer<typeof AbsentQuantity>;

/** Everything one reading gives under one calibration. */
export const Measurement = z
  .object({
    quantities: z.array(Quantity),
    absent: z.array(AbsentQuantity),
  })
  .meta({ id: 'Measurement' });
export type Measurement = z.infer<typeof Measurement>;
