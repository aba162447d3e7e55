import { z } from 'zod';
import type { Determination } from './determination.ts';
import { claimOf, isProof } from './live/claim.ts';
import { type LiveSign, standingLiveSigns } from './live/liveSign.ts';
import { answeredIn, provedBy } from './live/shown.ts';
import { standingOf } from './standing.ts';

/** What has become of a determination since it was signed. */
export const LaterFate = z
  .object({
    determinationId: z.string(),
    fate: z.enum(['stands', 'withdrawn', 'superseded', 'contradicted', 'confirmed']),
    by: z.array(z.string()).describe('Ids of the later determinations and signs of the animal that did it'),
  })
  .meta({ id: 'LaterFate' });
export type LaterFate = z.infer<typeof LaterFate>;

/**
 * The fate of each determination, in the order given, which is the order of signing: a clock that was set back changes nothing.
 * Only a reading that was signed later and still stands confirms or contradicts, and another reading of the same skin confirms
 * nothing: it is the same evidence. Signs of the animal go by the day they were seen; a proof contradicts whenever it was seen.
 * One that is contradicted stays so though others confirm it.
 */
export function fatesOf(determinations: readonly Determination[], liveSigns: readonly LiveSign[]): LaterFate[] {
  const standing = standingOf(determinations);
  return determinations.map((determination, place): LaterFate => {
    const { id: determinationId } = determination;
    if (determination.withdrawn !== null) return { determinationId, fate: 'withdrawn', by: [] };
    const corrections = determinations.filter(({ supersedes }) => supersedes === determinationId).map(({ id }) => id);
    if (corrections.length > 0) return { determinationId, fate: 'superseded', by: corrections };
    const later = [
      ...laterReadings(
        determination,
        determinations.slice(place + 1).filter((other) => standing.includes(other)),
      ),
      ...laterSigns(determination, liveSigns),
    ];
    const against = later.filter(({ agrees }) => !agrees).map(({ id }) => id);
    if (against.length > 0) return { determinationId, fate: 'contradicted', by: against };
    const confirming = later.filter(({ agrees, exuviaId }) => agrees && exuviaId !== determination.exuviaId).map(({ id }) => id);
    return { determinationId, fate: confirming.length > 0 ? 'confirmed' : 'stands', by: confirming };
  });
}

interface Later {
  readonly id: string;
  readonly exuviaId: string | null;
  readonly agrees: boolean;
}

/** A leaning is a guess: it neither confirms nor contradicts; bulbs or an egg sac told in a reading do, whatever that concludes. */
function laterReadings(determination: Determination, signedLater: readonly Determination[]): Later[] {
  if (determination.sex !== 'female' && determination.sex !== 'male') return [];
  return signedLater.flatMap((other): Later[] => {
    const { id, exuviaId, sex, level, checklist } = other;
    const proved = answeredIn(checklist).flatMap((finding) => provedBy({ finding }) ?? []);
    const told = [...(sex === 'unsexed' || level === 'leaning' ? [] : [sex]), ...proved];
    return told.length === 0 ? [] : [{ id, exuviaId, agrees: told.every((one) => one === determination.sex) }];
  });
}

function laterSigns(determination: Determination, liveSigns: readonly LiveSign[]): Later[] {
  if (determination.sex !== 'female' && determination.sex !== 'male') return [];
  return standingLiveSigns(liveSigns).flatMap((sign) => {
    const claim = claimOf(sign);
    if (claim === null || claim.level === 'leaning') return [];
    const agrees = claim.sex === determination.sex;
    const counts = agrees ? sign.seenOn > determination.readOn : isProof(sign) || sign.seenOn >= determination.readOn;
    return counts ? [{ id: sign.id, exuviaId: null, agrees }] : [];
  });
}
