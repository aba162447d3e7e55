import type { Failure } from '../failure.ts';
import { fail, type Result, succeed } from '../result.ts';
import { type Checklist, type DeterminationDraft, StripAnswer } from './determination.ts';
import type { Examined } from './facts.ts';
import { assessLevel, missingFor } from './levels.ts';
import { isOnPhoto, type PhotoSize, photosOf } from './pins.ts';
import { rankOf } from './rank.ts';
import { correctedIds, standingOf } from './standing.ts';

/** What the archive knows about the animal whose skin is being signed for. */
export interface SigningContext extends Pick<Examined, 'genus' | 'model' | 'exuviaId' | 'skinsInOrder' | 'determinations' | 'liveSigns'> {
  readonly today: string;
  /** The first day on which the skin can have been shed. */
  readonly shedFrom: string;
  /** Photos that may serve as evidence: of the animal's skins and of the animal itself. */
  readonly skinPhotoIds: ReadonlySet<string>;
  readonly animalPhotoIds: ReadonlySet<string>;
  /** Of those photos; a mark must lie on its own. */
  readonly photoSizes: ReadonlyMap<string, PhotoSize>;
}

/**
 * Decides whether a determination may be signed. Failures: `date-in-future`, `read-before-shed`, `sex-without-level`, `level-without-sex`,
 * `strip-not-readable`, `evidence-of-another-animal`, `pin-misplaced`, `not-found` and `correction-misplaced` (of the one it corrects),
 * `level-not-supported`.
 */
export function checkDetermination(draft: DeterminationDraft, context: SigningContext): Result<DeterminationDraft> {
  const failure =
    dateFailure(draft, context) ??
    stripFailure(draft.checklist) ??
    evidenceFailure(draft, context) ??
    pinFailure(draft, context) ??
    correctionFailure(draft, context) ??
    levelFailure(draft, context);
  return failure ? fail(failure) : succeed(draft);
}

/** Strip answers that grade D forbids. */
function answersWithoutStrip(checklist: Checklist): StripAnswer[] {
  if (checklist.grade !== 'D') return [];
  return StripAnswer.options.filter((answer) => checklist[answer] === 'yes' || checklist[answer] === 'no');
}

function dateFailure({ readOn }: DeterminationDraft, { today, shedFrom }: SigningContext): Failure | null {
  if (readOn > today) return { code: 'date-in-future', field: 'readOn', date: readOn };
  return readOn < shedFrom ? { code: 'read-before-shed', readOn, shedFrom } : null;
}

function stripFailure(checklist: Checklist): Failure | null {
  const answered = answersWithoutStrip(checklist);
  return answered.length > 0 ? { code: 'strip-not-readable', answered } : null;
}

function evidenceFailure(draft: DeterminationDraft, { skinPhotoIds, animalPhotoIds }: SigningContext): Failure | null {
  const foreign = draft.evidencePhotoIds.find((id) => !skinPhotoIds.has(id) && !animalPhotoIds.has(id));
  return foreign === undefined ? null : { code: 'evidence-of-another-animal', photoId: foreign };
}

/** A pin is on one of the evidence photos, and its mark on the picture. */
function pinFailure({ pins, evidencePhotoIds }: DeterminationDraft, { photoSizes }: SigningContext): Failure | null {
  for (const { photoId, mark } of pins) {
    if (!evidencePhotoIds.includes(photoId)) return { code: 'pin-misplaced', photoId, reason: 'not-evidence' };
    const size = photoSizes.get(photoId);
    if (mark !== null && size !== undefined && !isOnPhoto(mark, size)) return { code: 'pin-misplaced', photoId, reason: 'outside-photo' };
  }
  return null;
}

function correctionFailure({ supersedes }: DeterminationDraft, context: SigningContext): Failure | null {
  if (supersedes === null) return null;
  const corrected = context.determinations.find((determination) => determination.id === supersedes);
  if (!corrected) return { code: 'not-found', what: 'determination', id: supersedes };
  if (corrected.exuviaId !== context.exuviaId) return { code: 'correction-misplaced', id: supersedes, reason: 'other-skin' };
  if (corrected.withdrawn !== null) return { code: 'correction-misplaced', id: supersedes, reason: 'withdrawn' };
  if (correctedIds(context.determinations).has(supersedes)) {
    return { code: 'correction-misplaced', id: supersedes, reason: 'already-corrected' };
  }
  return null;
}

function levelFailure(draft: DeterminationDraft, context: SigningContext): Failure | null {
  const { sex, level } = draft;
  if (sex === 'unsexed' || sex === 'anomalous') return level === null ? null : { code: 'level-without-sex' };
  if (level === null) return { code: 'sex-without-level' };
  const examined = examinedBy(draft, context);
  const { highest } = assessLevel(sex, examined);
  if (highest !== null && rankOf(level) <= rankOf(highest)) return null;
  return { code: 'level-not-supported', sex, wanted: level, highest, missing: missingFor(sex, level, examined) };
}

/** What a draft lets be assessed. A reading that is being corrected no longer speaks for or against its correction. */
export function examinedBy(
  draft: Pick<DeterminationDraft, 'checklist' | 'reader' | 'readOn' | 'evidencePhotoIds' | 'pins' | 'supersedes'>,
  context: Omit<SigningContext, 'today' | 'shedFrom' | 'skinPhotoIds' | 'photoSizes'>,
): Examined {
  return {
    checklist: draft.checklist,
    reader: draft.reader,
    readOn: draft.readOn,
    genus: context.genus,
    model: context.model,
    liveSigns: context.liveSigns,
    exuviaId: context.exuviaId,
    skinsInOrder: context.skinsInOrder,
    determinations: standingOf(context.determinations).filter((determination) => determination.id !== draft.supersedes),
    animalPhotoIds: context.animalPhotoIds,
    animalPhotoCount: new Set(photosOf('palpalBulbsOnAnimal', draft).filter((id) => context.animalPhotoIds.has(id))).size,
  };
}
