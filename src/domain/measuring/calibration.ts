import { z } from 'zod';
import { Instant } from '../dates.ts';
import { ImagePoint } from './points.ts';

/** Two points of known distance, such as two ticks of a rule: gives a scale, says nothing about tilt. */
export const TwoPointScale = z
  .object({
    kind: z.literal('two-points'),
    ends: z.tuple([ImagePoint, ImagePoint]),
    distanceMm: z.number().positive().max(5_000),
    distanceStandardUncertaintyMm: z.number().min(0).max(100).describe('Of the object itself: graduation, wear'),
    pointingPx: z.number().positive().max(100).describe('Standard uncertainty of placing one end'),
    heightMm: z.number().min(0).max(100).describe('Of the marked face above the table, 0 if unknown'),
  })
  .meta({ id: 'TwoPointScale' });
export type TwoPointScale = z.infer<typeof TwoPointScale>;

export const RectangleObject = z.enum(['id-1', 'a6', 'a5', 'a4', 'own']).meta({ id: 'RectangleObject' });
export type RectangleObject = z.infer<typeof RectangleObject>;

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
  })
  .meta({ id: 'RectangleScale' });
export type RectangleScale = z.infer<typeof RectangleScale>;

/** What the keeper marked; everything derived from it (scale, tilt, residual) is computed, never stored. */
export const ScaleMarks = z.discriminatedUnion('kind', [TwoPointScale, RectangleScale]).meta({ id: 'ScaleMarks' });
export type ScaleMarks = z.infer<typeof ScaleMarks>;

/** The stored calibration of one photo. `marks` is null before the first and after a removal. */
export const CalibrationRecord = z
  .object({
    photoId: z.string(),
    marks: ScaleMarks.nullable(),
    version: z.int(),
    changedAt: Instant,
  })
  .meta({ id: 'CalibrationRecord' });
export type CalibrationRecord = z.infer<typeof CalibrationRecord>;
