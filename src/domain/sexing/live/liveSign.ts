import { z } from 'zod';
import { CalendarDay, Instant } from '../../dates.ts';

const Towards = z.enum(['female', 'male']);

/** What was seen of the animal itself. A skin shows none of it: it is of the instar before. */
export const LiveFinding = z
  .discriminatedUnion('kind', [
    z.object({
      kind: z.literal('palpal-bulbs'),
      seen: z.boolean(),
      ultimateMoltId: z.string().nullable().describe('The molt with which the bulbs came, where it is on record'),
    }),
    z.object({ kind: z.literal('tibial-hooks'), seen: z.boolean().describe('false never weighs: males of many genera have none') }),
    z.object({ kind: z.literal('sperm-web') }),
    z.object({ kind: z.literal('egg-sac'), fertile: z.enum(['yes', 'no', 'not-known']) }),
    z.object({
      kind: z.literal('ventral-fusillae'),
      seen: z.boolean(),
      legSpanMm: z.number().positive().max(500).nullable().describe('Of the animal, on that day'),
    }),
    z.object({ kind: z.literal('impression'), from: z.enum(['ventral', 'color', 'build', 'seller']), towards: Towards }),
  ])
  .refine((finding) => finding.kind !== 'palpal-bulbs' || finding.seen || finding.ultimateMoltId === null, {
    path: ['ultimateMoltId'],
    error: 'No bulbs, so no ultimate molt can be named',
  })
  .meta({ id: 'LiveFinding' });
export type LiveFinding = z.infer<typeof LiveFinding>;

export const LiveSignDraft = z
  .object({
    finding: LiveFinding,
    seenOn: CalendarDay,
    observer: z.string().trim().min(1).max(200),
    photoIds: z.array(z.string()).max(50).describe('Of the animal itself'),
    notes: z.string().max(20_000),
  })
  .meta({ id: 'LiveSignDraft' });
export type LiveSignDraft = z.infer<typeof LiveSignDraft>;

/** Signed once, never changed; a withdrawn one stays with its reason. */
export const LiveSign = LiveSignDraft.extend({
  id: z.string(),
  specimenId: z.string(),
  observer: z.string().trim().max(200).describe('Empty only for an egg sac that was noted in Watch by nobody named'),
  signedAt: Instant,
  withdrawn: z.object({ at: Instant, reason: z.string() }).nullable(),
  hooksSpeak: z
    .boolean()
    .optional()
    .describe('Of hooks alone, and never stored: males of its genus are known to carry them, as the profile stands now'),
}).meta({ id: 'LiveSign' });
export type LiveSign = z.infer<typeof LiveSign>;

export function standingLiveSigns(signs: readonly LiveSign[]): LiveSign[] {
  return signs.filter(({ withdrawn }) => withdrawn === null);
}

/** The molt that made a male of the animal, by the first bulbs that name one; null while none is on record. */
export function ultimateMoltOf(signs: readonly LiveSign[]): string | null {
  for (const { finding } of standingLiveSigns(signs)) {
    if (finding.kind === 'palpal-bulbs' && finding.ultimateMoltId !== null) return finding.ultimateMoltId;
  }
  return null;
}
