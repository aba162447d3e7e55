import { z } from 'zod';
import { LEG_IDS, type LegId } from '../../measuring/landmarks.ts';
import { Estimate } from '../../measuring/quantity.ts';
import { growthRatio } from '../ratio.ts';
import { type LegSize, partnerOf } from './legSizes.ts';

export const RegrowthStage = z
  .object({
    moltId: z.string(),
    state: z.enum(['missing', 'regenerated', 'whole']),
    share: Estimate.nullable().describe('Length over that of the leg of the other side; null where one of them has none'),
    gained: z.number().nullable().describe('Share won since the stage before, a missing leg counting as 0; null where unknown'),
    unusual: z
      .boolean()
      .describe('A regenerated leg surely below 0.3 or above 0.9 of its partner: an assumption of ours, to be looked at again'),
  })
  .meta({ id: 'RegrowthStage' });
export type RegrowthStage = z.infer<typeof RegrowthStage>;

/** A leg that was lost, from the first skin that shows it on. */
export const LegRegrowth = z
  .object({ leg: z.enum(LEG_IDS), partner: z.enum(LEG_IDS), stages: z.array(RegrowthStage).min(1) })
  .meta({ id: 'LegRegrowth' });
export type LegRegrowth = z.infer<typeof LegRegrowth>;

/** The legs of one skin. */
export interface LeggedSkin {
  readonly moltId: string;
  readonly legs: readonly LegSize[];
}

/** No published figure was found for the share after one molt; these ends are an assumption of ours. */
const USUAL_SHARE = { least: 0.3, most: 0.9 };

/**
 * How legs grow back, against the leg of the other side on the same skin. A leg takes two or three molts to match it again
 * (common practice, no source). A partner that is itself missing or regenerated is no measure.
 *
 * @param skins of one animal, oldest first.
 */
export function regrowthOf(skins: readonly LeggedSkin[]): LegRegrowth[] {
  return LEG_IDS.flatMap((leg) => {
    const partner = partnerOf(leg);
    const since = skins.findIndex(({ legs }) => ['missing', 'regenerated'].includes(sizeOf(legs, leg)?.state ?? ''));
    if (since < 0) return [];
    const stages: RegrowthStage[] = [];
    for (const { moltId, legs } of skins.slice(since)) {
      const size = sizeOf(legs, leg);
      if (!size || size.state === 'not-measured') continue;
      const share = shareOf(size, sizeOf(legs, partner));
      stages.push({ moltId, state: size.state, share, gained: gainSince(stages.at(-1), share), unusual: isUnusual(size.state, share) });
    }
    return [{ leg, partner, stages }];
  });
}

function sizeOf(legs: readonly LegSize[], leg: LegId): LegSize | undefined {
  return legs.find((size) => size.leg === leg);
}

function shareOf(size: LegSize, partner: LegSize | undefined): Estimate | null {
  return size.lengthMm && partner?.state === 'whole' && partner.lengthMm ? growthRatio(size.lengthMm, partner.lengthMm) : null;
}

function gainSince(before: RegrowthStage | undefined, share: Estimate | null): number | null {
  if (!before || !share) return null;
  if (before.state === 'missing') return share.value;
  return before.share && share.value - before.share.value;
}

function isUnusual(state: LegSize['state'], share: Estimate | null): boolean {
  return (
    state === 'regenerated' &&
    share !== null &&
    (share.value + share.expandedUncertainty < USUAL_SHARE.least || share.value - share.expandedUncertainty > USUAL_SHARE.most)
  );
}
