import type { CalendarDay } from '../../dates.ts';
import type { Determination, ReadSex } from '../determination.ts';
import { claimOf } from '../live/claim.ts';
import type { LiveSign } from '../live/liveSign.ts';
import { answeredIn, shownBy } from '../live/shown.ts';
import { type SkinInOrder, shedBy } from '../skinsInOrder.ts';
import { standingOf } from '../standing.ts';
import type { GenusKnown, StripReading } from './skinFindings.ts';
import type { EvidenceCase } from './weigh.ts';

/** What is on record of one animal, and the reading in hand, if there is one. */
export interface OnRecord {
  readonly genus: GenusKnown;
  readonly determinations: readonly Determination[];
  readonly liveSigns: readonly LiveSign[];
  /** Photos of the animal itself. */
  readonly animalPhotoIds: ReadonlySet<string>;
  readonly skinsInOrder: readonly SkinInOrder[];
  /** `replaces` no longer speaks: the reading in hand corrects it. `photographed`: it has photos of the animal itself. */
  readonly inHand:
    | (StripReading & { readonly readOn: CalendarDay; readonly replaces: string | null; readonly photographed: boolean })
    | null;
}

/** Everything that still stands, the reading in hand last. */
export function caseOf({ genus, determinations, liveSigns, animalPhotoIds, skinsInOrder, inHand }: OnRecord): EvidenceCase {
  const standing = standingOf(determinations).filter(({ id }) => id !== inHand?.replaces);
  const readings = inHand === null ? standing : [...standing, inHand];
  const shown = shownBy({ determinations: standing, liveSigns }, animalPhotoIds);
  const carapaceBy = (day: CalendarDay) => largestCarapace(readings, shedBy(day, skinsInOrder));
  const signed = shown.map(({ finding, photoIds, on }) => ({ finding, photographed: photoIds.length > 0, carapaceMm: carapaceBy(on) }));
  const told = inHand === null ? [] : answeredIn(inHand.checklist);
  const answered = told.map((finding) => ({
    finding,
    photographed: inHand?.photographed === true,
    carapaceMm: inHand === null ? null : carapaceBy(inHand.readOn),
  }));
  return { genus, readings, live: [...signed, ...answered] };
}

/** Of skins that are certain to be the animal's; null while none of them is measured. */
function largestCarapace(readings: readonly StripReading[], shed: ReadonlySet<string>): number | null {
  const own = readings.filter(({ exuviaId, checklist }) => checklist.skinMatchesAnimal === 'yes' && shed.has(exuviaId));
  const known = own.map(({ checklist }) => checklist.carapaceLengthMm).filter((lengthMm) => lengthMm !== null);
  return known.length === 0 ? null : Math.max(...known);
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
