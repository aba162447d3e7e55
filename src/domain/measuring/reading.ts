import { z } from 'zod';
import { Instant } from '../dates.ts';
import { Landmarks } from './landmarks.ts';

/**
 * Height of the carapace landmarks above the table. `entered` comes from a caliper or a side view; `assumed` is the
 * default share of the carapace width (see heights.ts).
 */
export const CarapaceHeight = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('assumed') }),
    z.object({
      kind: z.literal('entered'),
      heightMm: z.number().min(0).max(100),
      standardUncertaintyMm: z.number().min(0).max(50),
    }),
  ])
  .meta({ id: 'CarapaceHeight' });
export type CarapaceHeight = z.infer<typeof CarapaceHeight>;

/** One pass over one photo by one observer. Only what was pointed at is stored; lengths are computed. */
export const ReadingDraft = z
  .object({
    protocol: z.literal('dorsal-skin'),
    observer: z.string().trim().max(200),
    pass: z.int().min(1).max(99),
    carapaceHeight: CarapaceHeight,
    pointingPx: z.number().positive().max(100).describe('Standard uncertainty of placing one landmark, per coordinate'),
    landmarks: Landmarks,
    earlierSeen: z.literal(true).optional().describe('The passes before it were looked at before all of its points were placed'),
  })
  .meta({ id: 'ReadingDraft' });
export type ReadingDraft = z.infer<typeof ReadingDraft>;

export const Reading = ReadingDraft.extend({
  id: z.string(),
  photoId: z.string(),
  version: z.int(),
  createdAt: Instant,
  changedAt: Instant,
}).meta({ id: 'Reading' });
export type Reading = z.infer<typeof Reading>;

/** Default standard uncertainty of one click, in pixels, per coordinate (our assumption; metrology notes, section 5). */
export const DEFAULT_POINTING_PX = 1.5;
