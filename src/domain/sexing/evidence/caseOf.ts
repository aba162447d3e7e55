import type { Checklist, Determination, ReadSex } from '../determination.ts';
import { claimOf } from '../live/claim.ts';
import { type LiveSign, standingLiveSigns } from '../live/liveSign.ts';
import { standingOf } from '../standing.ts';
import type { LiveEvidence } from './liveFindings.ts';
import type { GenusKnown, StripReading } from './skinFindings.ts';
import type { EvidenceCase } from './weigh.ts';

/** What is on record of one animal, and the reading in hand, if there is one. */
export interface OnRecord {
  readonly genus: GenusKnown;
  readonly determinations: readonly Determination[];
  readonly liveSigns: readonly LiveSign[];
  /** `replaces` no longer speaks: the reading in hand corrects it. `photographed`: it has photos of the animal itself. */
  readonly inHand: (StripReading & { readonly replaces: string | null; readonly photographed: boolean }) | null;
}

/** Everything that still stands, the reading in hand last. */
export function caseOf({ genus, determinations, liveSigns, inHand }: OnRecord): EvidenceCase {
  const standing = standingOf(determinations).filter(({ id }) => id !== inHand?.replaces);
  const readings = inHand === null ? standing : [...standing, inHand];
  return {
    genus,
    readings,
    live: [
      ...standing.flatMap(({ checklist }) => toldIn(checklist, false)),
      ...(inHand === null ? [] : toldIn(inHand.checklist, inHand.photographed)),
      ...standingLiveSigns(liveSigns).map(evidenceFrom),
    ],
  };
}

/**
 * What may carry the reading in hand for one sex: the reading itself, other skins that were read as that sex, and what the
 * animal showed for it. A contradiction is kept for the animal's history; it does not change what was seen on this skin.
 */
export function caseFor(sex: ReadSex, onRecord: OnRecord): EvidenceCase {
  const agreeing = onRecord.determinations.filter(
    (determination) => determination.sex === sex && determination.exuviaId !== onRecord.inHand?.exuviaId,
  );
  const liveSigns = onRecord.liveSigns.filter((sign) => (claimOf(sign)?.sex ?? sex) === sex);
  return caseOf({ ...onRecord, determinations: agreeing, liveSigns });
}

function evidenceFrom({ finding, photoIds }: LiveSign): LiveEvidence {
  return { finding, photographed: photoIds.length > 0 };
}

/** What a reading says of the animal itself. */
function toldIn({ palpalBulbsOnAnimal: bulbs, eggSacLaid }: Checklist, photographed: boolean): LiveEvidence[] {
  const told: LiveEvidence[] = [];
  if (bulbs === 'yes' || bulbs === 'no') {
    told.push({ finding: { kind: 'palpal-bulbs', seen: bulbs === 'yes', ultimateMoltId: null }, photographed });
  }
  if (eggSacLaid === 'yes') told.push({ finding: { kind: 'egg-sac', fertile: 'not-known' }, photographed });
  return told;
}
