import { type Failure, Refusal } from '../domain/failure.ts';
import { assertNever } from '../domain/result.ts';
import type { FailureWords } from './failureWords.ts';
import { wordsForFile } from './fileFailures.ts';
import { wordsForRecord } from './recordFailures.ts';
import { wordsForScale } from './scaleFailures.ts';
import { wordsForSex } from './sexFailures.ts';
import { wordsForObservation } from './watchFailures.ts';

/** For anything a question or a change threw: a refusal in its own words, all else as a defect of ours. */
export function wordsForError(error: unknown): FailureWords {
  if (error instanceof Refusal) return wordsFor(error.failure);
  return {
    happened: 'Something in Exuviary itself went wrong.',
    advice: 'What was saved is safe. Reload the window; if it happens again, report what you did just before.',
  };
}

/** Every failure in words; those of one subject stand in a file of their own. */
export function wordsFor(failure: Failure): FailureWords {
  switch (failure.code) {
    case 'input-invalid':
      return {
        happened: `Not saved: ${failure.issues.map((issue) => (issue.field ? `${issue.field}: ${issue.problem}` : issue.problem)).join('; ') || 'something is not filled in as it must be'}.`,
        advice: 'Correct it and save again.',
      };
    case 'not-found':
      return {
        happened: `This ${failure.what} is no longer here.`,
        advice: 'It may have been removed in another window. Go back to the Cabinet.',
      };
    case 'changed-meanwhile':
      return {
        happened: `Not saved: this ${failure.what} was changed somewhere else meanwhile.`,
        advice: 'The newer state has been loaded. Look at it, then make your change again.',
      };
    case 'version-missing':
      return {
        happened: `Not saved: the change did not say which state of the ${failure.what} it is based on.`,
        advice: 'Reload the window and try again.',
      };
    case 'body-too-large':
      return {
        happened: `Not saved: more than ${Math.round(failure.limitBytes / 1_000_000)} MB in one piece.`,
        advice: 'Send less at once, or shorten the text.',
      };
    case 'no-such-route':
      return {
        happened: `Exuviary knows no ${failure.method} ${failure.path}.`,
        advice: 'The window may be older than the program: reload it.',
      };
    case 'refused-by-guard':
      return {
        happened: 'This window is not allowed to reach the archive.',
        advice: 'Close it and open Exuviary again from its start command.',
      };
    case 'task-not-found':
      return {
        happened: 'This piece of work is no longer known.',
        advice: 'It ended before the program was last started. What it added is in the archive.',
      };
    case 'sample-already-here':
      return {
        happened: 'The sample cabinet is already here.',
        advice: 'Look round in the Cabinet, or remove it first to begin it afresh.',
      };
    case 'removal-gone':
      return { happened: 'This can no longer be put back.', advice: 'What was removed can be restored until the archive is next closed.' };
    case 'removal-out-of-order':
      return { happened: 'This cannot be put back yet.', advice: 'Something it belongs to was removed later: put that back first.' };
    case 'unreachable':
      return {
        happened: 'Exuviary does not answer.',
        advice: 'It may have been closed. Start it again; what was confirmed as saved is safe.',
      };
    case 'defect':
      return {
        happened: `Something in Exuviary itself went wrong (reference ${failure.reference}).`,
        advice: 'Nothing was saved by this step. Try again; if it stays, report the reference.',
      };
    case 'code-taken':
    case 'dates-reversed':
    case 'hatched-after-acquired':
    case 'read-before-shed':
    case 'date-in-future':
    case 'date-too-early':
    case 'date-before-hatching':
    case 'molts-out-of-order':
    case 'instars-out-of-order':
    case 'instar-too-low':
    case 'instar-too-high':
    case 'gap-misplaced':
    case 'gap-uncounted':
    case 'gap-absent':
    case 'acquired-instar-contradicted':
    case 'outcomes-contradict':
    case 'skin-recovered-or-not':
    case 'skin-photographed':
    case 'skin-already-recorded':
    case 'view-not-of-animal':
    case 'animal-not-kept':
    case 'animal-mature-male':
    case 'male-contradicted':
    case 'molt-not-recorded':
    case 'photo-in-use':
      return wordsForRecord(failure);
    case 'skin-not-recovered':
    case 'level-not-supported':
    case 'level-without-sex':
    case 'sex-without-level':
    case 'strip-not-readable':
    case 'correction-misplaced':
    case 'evidence-of-another-animal':
    case 'pin-misplaced':
    case 'bulbs-before-molt':
    case 'photo-not-of-animal':
    case 'number-out-of-range':
    case 'already-withdrawn':
      return wordsForSex(failure);
    case 'scale-points-coincide':
    case 'corners-not-convex':
    case 'corners-mirrored':
    case 'corners-collinear':
    case 'rim-not-elliptic':
    case 'rim-not-found':
    case 'rim-cut-off':
    case 'points-on-a-line':
    case 'sides-not-found':
    case 'three-sides-implausible':
    case 'ticks-not-found':
    case 'points-outside-picture':
    case 'finding-stopped':
    case 'not-at-scale':
    case 'nothing-at-scale':
      return wordsForScale(failure);
    case 'file-empty':
    case 'file-truncated':
    case 'file-not-an-image':
    case 'file-kind-not-kept':
    case 'picture-too-large':
    case 'file-unreadable':
    case 'file-not-arrived':
    case 'intake-gone':
    case 'disk-full':
    case 'archive-in-use':
    case 'archive-not-ours':
    case 'archive-from-newer-version':
    case 'archive-damaged':
    case 'archive-folder-unusable':
    case 'original-missing':
    case 'original-damaged':
      return wordsForFile(failure);
    case 'seen-in-future':
    case 'seen-before-hatching':
    case 'molt-under-way':
    case 'molt-already-ended':
    case 'molt-ends-before-start':
    case 'molts-too-close':
    case 'stages-out-of-order':
    case 'fangs-black-too-soon':
    case 'fangs-out-of-order':
    case 'fangs-light-before-molt':
    case 'not-while-molting':
      return wordsForObservation(failure);
    default:
      return assertNever(failure);
  }
}
