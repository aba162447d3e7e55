import type { CalendarDay } from '../../dates.ts';
import type { Checklist, Determination } from '../determination.ts';
import { photosOf } from '../pins.ts';
import { standingOf } from '../standing.ts';
import { isProof, type LiveClaim } from './claim.ts';
import { type LiveFinding, type LiveSign, standingLiveSigns } from './liveSign.ts';

/** One thing that the animal itself showed, wherever it was said. */
export interface Shown {
  readonly finding: LiveFinding;
  /** The day it was seen; of an answer, the day of its reading. */
  readonly on: CalendarDay;
  /** Who saw it: the observer of a sign, the reader of a reading. */
  readonly by: string;
  /** Of the animal itself, chosen as evidence. */
  readonly photoIds: readonly string[];
  /** The reading in whose answers it was said; null for a sign of its own. */
  readonly determinationId: string | null;
}

export interface SaidOfSex {
  readonly determinations: readonly Pick<
    Determination,
    'id' | 'supersedes' | 'withdrawn' | 'checklist' | 'reader' | 'readOn' | 'evidencePhotoIds' | 'pins'
  >[];
  readonly liveSigns: readonly LiveSign[];
}

/**
 * Everything on record that the animal itself showed and that still stands: answers of readings that were neither corrected nor
 * withdrawn, then signs, each in the order given.
 *
 * @param animalPhotoIds photos of the animal itself: of a reading's evidence only those show what it says of the animal, and of them
 * only those that are pinned to it or to nothing.
 */
export function shownBy({ determinations, liveSigns }: SaidOfSex, animalPhotoIds: ReadonlySet<string>): Shown[] {
  const answered = standingOf(determinations).flatMap(({ id, checklist, reader, readOn, evidencePhotoIds, pins }) =>
    answeredIn(checklist).map((finding): Shown => {
      const question = finding.kind === 'egg-sac' ? 'eggSacLaid' : 'palpalBulbsOnAnimal';
      const photoIds = photosOf(question, { evidencePhotoIds, pins }).filter((photoId) => animalPhotoIds.has(photoId));
      return { finding, on: readOn, by: reader, photoIds, determinationId: id };
    }),
  );
  const signed = standingLiveSigns(liveSigns).map(
    ({ finding, seenOn, observer, photoIds }): Shown => ({ finding, on: seenOn, by: observer, photoIds, determinationId: null }),
  );
  return [...answered, ...signed];
}

/** What the answers of one reading say of the animal itself. */
export function answeredIn({
  palpalBulbsOnAnimal: bulbs,
  eggSacLaid,
}: Pick<Checklist, 'palpalBulbsOnAnimal' | 'eggSacLaid'>): LiveFinding[] {
  const told: LiveFinding[] = [];
  if (bulbs === 'yes' || bulbs === 'no') told.push({ kind: 'palpal-bulbs', seen: bulbs === 'yes', ultimateMoltId: null });
  if (eggSacLaid === 'yes') told.push({ kind: 'egg-sac', fertile: 'not-known' });
  return told;
}

/** The sex that a finding proves for good; null for one that proves none. */
export function provedBy({ finding }: Pick<Shown, 'finding'>): LiveClaim['sex'] | null {
  if (!isProof({ finding })) return null;
  return finding.kind === 'egg-sac' ? 'female' : 'male';
}
