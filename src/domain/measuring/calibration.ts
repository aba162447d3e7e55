import { z } from 'zod';
import { CalendarDay, Instant } from '../dates.ts';
import { ImagePoint } from './points.ts';

const FACE_HEIGHT_UNCERTAINTY = z.number().min(0).max(50).optional().describe('Of that height; left out, it counts as exact');

/** Two points of known distance, such as two ticks of a rule: gives a scale, says nothing about tilt. */
export const TwoPointScale = z
  .object({
    kind: z.literal('two-points'),
    ends: z.tuple([ImagePoint, ImagePoint]),
    distanceMm: z.number().positive().max(5_000),
    distanceStandardUncertaintyMm: z.number().min(0).max(100).describe('Of the object itself: graduation, wear'),
    pointingPx: z.number().positive().max(100).describe('Standard uncertainty of placing one end'),
    heightMm: z.number().min(0).max(100).describe('Of the marked face above the table, 0 if unknown'),
    faceHeightStandardUncertaintyMm: FACE_HEIGHT_UNCERTAINTY,
  })
  .meta({ id: 'TwoPointScale' });
export type TwoPointScale = z.infer<typeof TwoPointScale>;

export const RectangleObject = z.enum(['id-1', 'a6', 'a5', 'a4', 'own']).meta({ id: 'RectangleObject' });
export type RectangleObject = z.infer<typeof RectangleObject>;

/** A point of an edge that is straight in space, as it was found in the picture. */
export const EdgePoint = ImagePoint.extend({
  acrossPx: z.number().positive().max(100).describe('Standard uncertainty across the edge'),
}).meta({ id: 'EdgePoint' });
export type EdgePoint = z.infer<typeof EdgePoint>;

/** Points of one side, along it; none for a side that was not seen. */
const SidePoints = z.array(EdgePoint).max(64);

const KEEPS_DISTORTION = z.literal(true).optional().describe('The keeper wants the picture left as the lens drew it');

/**
 * A flat rectangle of known size. Corners run round the rectangle: the side from the first to the second is `widthMm`,
 * from the second to the third `heightMm`. For rounded cards they are the constructed corners, where the straight edges meet.
 */
export const RectangleScale = z
  .object({
    kind: z.literal('rectangle'),
    object: RectangleObject,
    corners: z.tuple([ImagePoint, ImagePoint, ImagePoint, ImagePoint]),
    widthMm: z.number().positive().max(5_000),
    heightMm: z.number().positive().max(5_000),
    widthStandardUncertaintyMm: z.number().min(0).max(100),
    heightStandardUncertaintyMm: z.number().min(0).max(100),
    thicknessMm: z.number().min(0).max(100).describe('The measured plane is the upper face, this far above the table'),
    pointingPx: z.number().positive().max(100).describe('Standard uncertainty of placing one corner, per coordinate'),
    sidePoints: z
      .tuple([SidePoints, SidePoints, SidePoints, SidePoints])
      .optional()
      .describe(
        'What the corners were constructed from, side by side from the first to the second corner on; left out when a hand placed them',
      ),
    keepsDistortion: KEEPS_DISTORTION,
  })
  .meta({ id: 'RectangleScale' });
export type RectangleScale = z.infer<typeof RectangleScale>;

export const CoinName = z
  .enum([
    'us-cent',
    'us-nickel',
    'us-dime',
    'us-quarter',
    'us-half-dollar',
    'us-dollar',
    'euro-1-cent',
    'euro-2-cent',
    'euro-5-cent',
    'euro-10-cent',
    'euro-20-cent',
    'euro-50-cent',
    'euro-1',
    'euro-2',
  ])
  .meta({ id: 'CoinName' });
export type CoinName = z.infer<typeof CoinName>;

/** An ellipse in the picture; its angle runs from the x axis to the major axis, clockwise on the screen. */
export const EllipseMark = z
  .object({
    centre: ImagePoint,
    semiMajorPx: z.number().positive(),
    semiMinorPx: z.number().positive(),
    angleRad: z.number(),
  })
  .meta({ id: 'EllipseMark' });

/**
 * A coin or another disk of known diameter. Its outline is that of two possible planes, mirrored about the line of sight;
 * `nearEdgeRad` says which was real.
 */
export const CoinScale = z
  .object({
    kind: z.literal('coin'),
    coin: z.union([CoinName, z.literal('own')]),
    rim: EllipseMark.describe('Of the upper rim'),
    rimPx: z
      .number()
      .positive()
      .max(100)
      .describe('Standard uncertainty of the middle per coordinate, of the mean radius, of the elongation'),
    diameterMm: z.number().positive().max(5_000),
    diameterStandardUncertaintyMm: z.number().min(0).max(100),
    thicknessMm: z.number().min(0).max(100).describe('The measured plane is the upper rim, this far above the table'),
    nearEdgeRad: z
      .number()
      .nullable()
      .describe('Direction in the picture, from x towards y, from the middle to the edge that was nearer to the camera; null if undecided'),
  })
  .meta({ id: 'CoinScale' });
export type CoinScale = z.infer<typeof CoinScale>;

export const PointsObject = z.enum(['scale-card', 'markers']).meta({ id: 'PointsObject' });
export type PointsObject = z.infer<typeof PointsObject>;

/** How much larger a printer draws than it was told, as measured with a caliper on one sheet. */
export const PrintFactors = z
  .object({
    xFactor: z.number().min(0.5).max(2),
    yFactor: z.number().min(0.5).max(2),
    relativeStandardUncertainty: z.number().min(0).max(0.2).describe('Of each factor'),
  })
  .meta({ id: 'PrintFactors' });
export type PrintFactors = z.infer<typeof PrintFactors>;

/** Points of a printed pattern, found in the picture. Their nominal places run like the picture's axes: x to y clockwise. */
export const PointsScale = z
  .object({
    kind: z.literal('points'),
    object: PointsObject,
    points: z
      .array(z.object({ at: ImagePoint, xMm: z.number(), yMm: z.number() }))
      .min(4)
      .max(1_000),
    pointPx: z.number().positive().max(100).describe('Standard uncertainty of one point per coordinate'),
    print: PrintFactors.describe('True millimeters are the nominal ones times these'),
    printCheck: z
      .object({ id: z.string(), printer: z.string(), checkedOn: CalendarDay })
      .nullable()
      .default(null)
      .describe('That the factors are from, as it was then; null when no printer was measured'),
    mirrored: z
      .boolean()
      .default(false)
      .describe('The picture shows the card as in a mirror, so it shows the animal so; the nominal places are mirrored to fit it'),
    thicknessMm: z.number().min(0).max(100).describe('The measured plane is the printed face, this far above the table'),
    keepsDistortion: KEEPS_DISTORTION,
  })
  .meta({ id: 'PointsScale' });
export type PointsScale = z.infer<typeof PointsScale>;

/** The middle line of one tick, between two points of it. */
export const TickMark = z.object({ number: z.int(), from: ImagePoint, to: ImagePoint }).meta({ id: 'TickMark' });
export type TickMark = z.infer<typeof TickMark>;

/**
 * A row of equally spaced ticks found between two clicks on a rule. Their spacing tells the slope along the rule, the way they lean
 * towards each other that across it.
 */
export const RuleTicksScale = z
  .object({
    kind: z.literal('rule-ticks'),
    ends: z.tuple([ImagePoint, ImagePoint]).describe('Where the keeper clicked'),
    graduationMm: z.number().positive().max(100).describe('From tick to tick'),
    spanStandardUncertaintyMm: z.number().min(0).max(100).describe('Of the true length between the first and the last tick'),
    ticks: z.array(TickMark).min(4).max(2_000),
    tickPx: z
      .number()
      .positive()
      .max(100)
      .describe('Standard uncertainty of one point of a tick, across it; in marks from before, how far ticks lie off an even row'),
    heightMm: z.number().min(0).max(100).describe('Of the marked face above the table, 0 if unknown'),
    faceHeightStandardUncertaintyMm: FACE_HEIGHT_UNCERTAINTY,
    keepsDistortion: KEEPS_DISTORTION,
  })
  .meta({ id: 'RuleTicksScale' });
export type RuleTicksScale = z.infer<typeof RuleTicksScale>;

/** What the keeper marked; everything derived from it (scale, tilt, residual) is computed, never stored. */
export const ScaleMarks = z
  .discriminatedUnion('kind', [TwoPointScale, RectangleScale, CoinScale, PointsScale, RuleTicksScale])
  .meta({ id: 'ScaleMarks' });
export type ScaleMarks = z.infer<typeof ScaleMarks>;

/** The stored calibration of one photo. `marks` is null before the first and after a removal. */
export const CalibrationRecord = z
  .object({
    photoId: z.string(),
    marks: ScaleMarks.nullable(),
    check: ScaleMarks.optional().describe('A second object in the same photo, to check the first by; nothing is measured by it'),
    version: z.int(),
    changedAt: Instant,
  })
  .meta({ id: 'CalibrationRecord' });
export type CalibrationRecord = z.infer<typeof CalibrationRecord>;
