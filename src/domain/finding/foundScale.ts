import { z } from 'zod';
import { CoinName, ScaleMarks } from '../measuring/calibration.ts';

/** One straight side that was seen; null stands for one that was not: its two corners are constructed. */
const SeenSide = z
  .object({
    support: z.number().min(0).max(1).describe('Share of the side that lies on the straight line'),
    residualPx: z.number().min(0).describe('Scatter of its stretches about the line'),
  })
  .nullable();

/** What marks rest on that were found in the picture. */
export const ScaleEvidence = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('markers'),
      markers: z.int().describe('Of the card that were seen'),
      points: z.int().describe('Of the card that were placed'),
      sizeAssumed: z.boolean().describe('The card does not tell its size: that of the common kind was taken'),
    }),
    z.object({
      kind: z.literal('sides'),
      sides: z.tuple([SeenSide, SeenSide, SeenSide, SeenSide]).describe('From the first to the second corner, and on'),
      lost: z
        .array(z.enum(['shape-unchecked', 'leans-on-focal-length']))
        .describe('With three sides: a wrong corner no longer shows in the shape, and an error of the focal length turns the plane'),
    }),
    z.object({
      kind: z.literal('ticks'),
      found: z.int(),
      missing: z.array(z.int()).describe('Numbers between the first and the last tick that were not found, or lay off'),
      scatterPx: z.number().min(0).describe('Of the ticks about a straight line of equal spaces in perspective'),
      graduationAssumed: z.boolean().describe('Nobody has said yet what lies between two ticks: a millimeter was taken'),
    }),
    z.object({
      kind: z.literal('rim'),
      coverage: z.number().min(0).max(1).describe('Share of the rim in the picture along which its edge was seen'),
      visible: z.number().min(0).max(1).describe('Share of the rim that lies in the picture'),
      settled: z.boolean().describe('The upper rim was told from the wall of the coin, its shadow and engraved borders'),
      agreement: z.number().min(0).max(1).describe('How well the edges agreed on one ellipse'),
      residualPx: z.number().min(0),
      coinAssumed: z.boolean().describe('Nobody has said yet which coin it is'),
      coins: z.array(CoinName).describe('That it may be, the likeliest first; empty once it was said'),
    }),
  ])
  .meta({ id: 'ScaleEvidence' });
export type ScaleEvidence = z.infer<typeof ScaleEvidence>;

/** Marks that were found or refined in the picture, ready to be taken over, and what they rest on. */
export const FoundScale = z.object({ marks: ScaleMarks, evidence: ScaleEvidence }).meta({ id: 'FoundScale' });
export type FoundScale = z.infer<typeof FoundScale>;

/** A scale object that the program believes to see; the keeper accepts, corrects or declines it. */
export const ScaleProposal = FoundScale.extend({
  confidence: z.number().min(0).max(1).describe('How clear it is; not a probability'),
}).meta({ id: 'ScaleProposal' });
export type ScaleProposal = z.infer<typeof ScaleProposal>;
