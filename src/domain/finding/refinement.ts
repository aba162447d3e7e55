import { z } from 'zod';
import { CoinName, RectangleScale } from '../measuring/calibration.ts';
import { ImagePoint } from '../measuring/points.ts';

/** What lies between two ticks of a rule. */
export const Graduation = z.enum(['millimeter', 'sixteenth-inch']).meta({ id: 'Graduation' });
export type Graduation = z.infer<typeof Graduation>;

/** International inch: 25.4 mm exactly (ISO 31-1:1992, annex). */
export const GRADUATION_MM: { readonly [Name in Graduation]: number } = { millimeter: 1, 'sixteenth-inch': 25.4 / 16 };

/** A coin of the table, or another disk of known size. */
export const Disk = z
  .discriminatedUnion('coin', [
    z.object({ coin: CoinName }),
    z.object({
      coin: z.literal('own'),
      diameterMm: z.number().positive().max(5_000),
      diameterStandardUncertaintyMm: z.number().min(0).max(100),
      thicknessMm: z.number().min(0).max(100),
    }),
  ])
  .meta({ id: 'Disk' });
export type Disk = z.infer<typeof Disk>;

/** Where a keeper has pointed roughly, and at what. */
export const RoughScale = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('rectangle'),
      marks: RectangleScale.describe('With rough corners, each within 3 % of the longest side; one may lie outside of the picture'),
      cornerRadiusMm: z.number().min(0).max(100).default(0).describe('Of an own object; known ones have theirs'),
    }),
    z.object({
      kind: z.literal('rule'),
      ends: z.tuple([ImagePoint, ImagePoint]).describe('On the row of ticks'),
      graduation: Graduation,
      heightMm: z.number().min(0).max(100).default(0).describe('Of the marked face above the table, 0 if unknown'),
      faceHeightStandardUncertaintyMm: z.number().min(0).max(50).optional().describe('Of that height; left out, it counts as exact'),
    }),
    z.object({
      kind: z.literal('coin'),
      disk: Disk,
      at: z
        .union([z.tuple([ImagePoint]), z.tuple([ImagePoint, ImagePoint, ImagePoint])])
        .describe('Its rough middle, or three points of its rim'),
    }),
  ])
  .meta({ id: 'RoughScale' });
export type RoughScale = z.infer<typeof RoughScale>;
