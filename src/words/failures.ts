import { type Failure, Refusal } from '../domain/failure.ts';
import { assertNever } from '../domain/result.ts';
import { counted, listed } from './counts.ts';
import { dayInWords } from './dates.ts';
import { capitalized, OUTCOME_LABELS, VIEW_LABELS } from './labels.ts';
import { numberInWords } from './modelNumbers.ts';
import { needsInWords, STRIP_WORDS } from './sexing.ts';
import { wordsForObservation } from './watchFailures.ts';

export interface FailureWords {
  /** What happened. */
  happened: string;
  /** What can be done about it. */
  advice: string;
}

/** Of a rectangle, by the numbers of its corners. */
const SIDES_IN_WORDS = [
  'the side from corner 1 to 2',
  'the side from corner 2 to 3',
  'the side from corner 3 to 4',
  'the side from corner 4 to 1',
];

/** For anything a question or a change threw: a refusal in its own words, all else as a defect of ours. */
export function wordsForError(error: unknown): FailureWords {
  if (error instanceof Refusal) return wordsFor(error.failure);
  return {
    happened: 'Something in Exuviary itself went wrong.',
    advice: 'What was saved is safe. Reload the window; if it happens again, report what you did just before.',
  };
}

/** Every failure in words: the one place for them. */
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
    case 'code-taken':
      return {
        happened: `Another specimen already has the code ${failure.specimenCode}.`,
        advice: 'Each code is used once: give one of the two animals another.',
      };
    case 'dates-reversed':
      return {
        happened: `The later date, ${dayInWords(failure.to)}, lies before the earlier one, ${dayInWords(failure.from)}.`,
        advice: 'Swap them: first the day it was last seen unmolted, then the day it was found molted.',
      };
    case 'hatched-after-acquired':
      return {
        happened: `It was acquired on ${dayInWords(failure.acquiredOn)}, before it hatched on ${dayInWords(failure.hatchedOn)}.`,
        advice: 'Correct one of the two days, or leave it open.',
      };
    case 'read-before-shed':
      return {
        happened: `This skin was shed on ${dayInWords(failure.shedFrom)}, so nobody can have read it on ${dayInWords(failure.readOn)}.`,
        advice: 'Correct the day of the reading, or the day of the molt.',
      };
    case 'date-in-future':
      return { happened: `${dayInWords(failure.date)} has not come yet.`, advice: 'Give a day up to today.' };
    case 'molts-out-of-order':
      return {
        happened: `A molt on ${dayInWords(failure.date)} does not fit beside the one on ${dayInWords(failure.neighbourDate)}.`,
        advice: 'Two molts of one animal cannot overlap. Check both dates.',
      };
    case 'instars-out-of-order':
      return {
        happened: `Instar ${failure.instar} does not fit: the molt on ${dayInWords(failure.neighbourDate)} shed instar ${failure.neighbourInstar}${
          failure.recordedBetween > 0 ? `, and ${counted(failure.recordedBetween, 'recorded molt')} came between` : ''
        }.`,
        advice: 'Instar numbers rise with every molt. Check both, or leave the number open if only the order is known.',
      };
    case 'instar-too-low':
      return {
        happened: `Instar ${failure.instar} is too low: ${counted(failure.earlierMolts, 'molt')} of this animal came before.`,
        advice: `Give ${failure.earlierMolts + 1} or more, or leave the number open if only the order is known.`,
      };
    case 'instar-too-high':
      return {
        happened: `Instar ${failure.instar} is higher than any animal reaches.`,
        advice: 'Check the instar numbers of the molts before it.',
      };
    case 'gap-misplaced':
      return {
        happened: `The molt on ${dayInWords(failure.moltDate)} is the first on record, so no gap can stand before it.`,
        advice: 'Give it a higher instar number instead.',
      };
    case 'gap-uncounted':
      return {
        happened: `The gap before the molt on ${dayInWords(failure.moltDate)} cannot be kept: no molt of this animal has an instar number to count from.`,
        advice: 'Give one of its molts an instar number, even a supposed one, then accept the gap again.',
      };
    case 'acquired-instar-contradicted':
      return {
        happened: `Acquired on ${dayInWords(failure.acquiredOn)} in instar ${failure.acquiredInstar} does not fit the molt on ${dayInWords(failure.moltDate)}, which shed instar ${failure.instarShed}.`,
        advice:
          'A molt before that day shed a lower instar, each one after it that instar or a higher one. Correct one of them, or leave it open.',
      };
    case 'outcomes-contradict':
      return {
        happened: `"${capitalized(OUTCOME_LABELS[failure.one])}" and "${OUTCOME_LABELS[failure.other]}" cannot both be true of one molt.`,
        advice: 'Keep the one that happened.',
      };
    case 'skin-recovered-or-not':
      return {
        happened: 'The molt says that its skin was not recovered, but the skin is on record as recovered.',
        advice: 'Untick "Skin not recovered" at the molt, or say in the record of the skin that it was not.',
      };
    case 'skin-photographed':
      return {
        happened: `This skin has ${counted(failure.photos, 'photo')}, so it was recovered.`,
        advice: 'If they show another skin, give them to that one first.',
      };
    case 'view-not-of-animal':
      return {
        happened: `A photo of the animal itself cannot show "${VIEW_LABELS[failure.view]}".`,
        advice: 'Choose another view, or say that it shows a shed skin.',
      };
    case 'skin-not-recovered':
      return {
        happened: 'This skin was not recovered, so there is nothing to read.',
        advice: 'If it was found after all, say so in its record first.',
      };
    case 'animal-not-kept':
      return {
        happened: `${failure.specimenCode} is no longer kept, so nothing is forecast for it.`,
        advice: 'If it is still with you, or out on loan, say so in its record first.',
      };
    case 'animal-mature-male':
      return {
        happened: `${failure.specimenCode} is a mature male, who seldom molts again, so nothing is forecast for him.`,
        advice: 'If that is a mistake, withdraw the sign or the note that says so first.',
      };
    case 'photo-in-use':
      return {
        happened: `This photo is evidence of ${listed(usesOf(failure))}.`,
        advice:
          'Evidence stays with what it proves, also when that was withdrawn. If it shows another animal, say so on the photo instead.',
      };
    case 'level-not-supported':
      return {
        happened:
          failure.highest === null
            ? `What was observed does not support ${failure.sex} at any level.`
            : `What was observed supports ${failure.sex} no further than "${failure.highest}", not "${failure.wanted}".`,
        advice:
          failure.missing.length > 0
            ? `Still needed: ${needsInWords(failure.missing)}.`
            : 'Choose the lower level, or examine the skin further.',
      };
    case 'level-without-sex':
      return { happened: 'A level was given for an unsexed animal.', advice: 'Leave the level out, or say which sex it is for.' };
    case 'sex-without-level':
      return { happened: 'A sex was given without saying how sure it is.', advice: 'Choose a level.' };
    case 'strip-not-readable':
      return {
        happened: `The skin has grade D, so nothing can be said about ${listed(failure.answered.map((answer) => STRIP_WORDS[answer]))}.`,
        advice: 'Answer "cannot tell" there, or grade the skin anew if its strip can be read after all.',
      };
    case 'correction-misplaced':
      return {
        happened: {
          'other-skin': 'The determination to be corrected was made on another skin.',
          'already-corrected': 'The determination to be corrected has been corrected already.',
          withdrawn: 'The determination to be corrected has been withdrawn.',
        }[failure.reason],
        advice: 'Sign this one as a determination of its own, or correct the one that stands.',
      };
    case 'evidence-of-another-animal':
      return { happened: 'One of the evidence photos shows another animal.', advice: 'Choose photos of this animal and its skins.' };
    case 'pin-misplaced':
      return failure.reason === 'not-evidence'
        ? {
            happened: 'An answer points to a photo that is not among the evidence.',
            advice: 'Choose that photo as evidence, or take the pin away.',
          }
        : { happened: 'A mark lies outside its photo.', advice: 'Place the mark on the picture again.' };
    case 'photo-not-of-animal':
      return {
        happened: 'One of these photos does not show the animal itself.',
        advice: 'What the animal shows is proved by a photo of the animal: a skin is of the instar before.',
      };
    case 'number-out-of-range':
      return {
        happened: `A number of the evidence model does not fit: ${numberInWords(failure.number)}.`,
        advice: `Choose one from ${failure.lowest} to ${failure.highest}, above the number it has to follow.`,
      };
    case 'already-withdrawn':
      return {
        happened: 'This determination is already withdrawn.',
        advice: 'Nothing more to do; sign a new one if you have read the skin again.',
      };
    case 'seen-in-future':
    case 'seen-before-hatching':
    case 'molt-under-way':
    case 'molt-ends-before-start':
    case 'stages-out-of-order':
    case 'fangs-out-of-order':
      return wordsForObservation(failure);
    case 'scale-points-coincide':
      return {
        happened: 'The two ends of the scale lie on the same spot.',
        advice: 'Drag one end to the other mark, as far away as you can read.',
      };
    case 'corners-not-convex':
      return {
        happened: 'The four corners do not run round the outside of the object.',
        advice: 'Drag each handle to its own corner, without crossing.',
      };
    case 'corners-mirrored':
      return { happened: 'The four corners run the wrong way round.', advice: 'Drag them so that 1 to 4 run clockwise.' };
    case 'corners-collinear':
      return { happened: 'Three of the four corners lie on one line.', advice: 'Drag each handle to its own corner.' };
    case 'rim-not-elliptic':
      return {
        happened: 'This outline is not one that a coin can have in a photo.',
        advice: 'Click the middle of the coin again, or three points well apart on its rim.',
      };
    case 'rim-not-found':
      return {
        happened: 'No rim was found there: too little of it stands out from the ground.',
        advice: 'Click three points well apart on the rim, or drag the outline to it by hand.',
      };
    case 'points-on-a-line':
      return {
        happened: 'The points of the pattern lie on one line, which says nothing about the plane.',
        advice: 'Show more of the card and let it be found again.',
      };
    case 'sides-not-found':
      return {
        happened: `No straight edge was found at ${listed(failure.sides.map((side) => SIDES_IN_WORDS[side] ?? 'a side'))}.`,
        advice: 'Drag the handles nearer to the corners, or keep them where you put them and skip the fit.',
      };
    case 'ticks-not-found':
      return {
        happened: `Only ${counted(failure.found, 'tick')} could be found along this line; at least ${failure.needed} are needed.`,
        advice: 'Click two ticks far apart on the row of shortest ticks, and check the graduation.',
      };
    case 'points-outside-picture':
      return {
        happened: `${failure.points.length === 1 ? 'Point' : 'Points'} ${listed(failure.points.map((point) => `${point + 1}`))} ${failure.points.length === 1 ? 'lies' : 'lie'} outside of the picture (${failure.widthPx} x ${failure.heightPx} pixels).`,
        advice: 'Bring all points back into the picture.',
      };
    case 'finding-stopped':
      return {
        happened: 'Looking for a scale in this photo was stopped.',
        advice: 'Open the photo again to look once more, or mark the scale by hand.',
      };
    case 'file-empty':
      return { happened: `${failure.file} is empty.`, advice: 'Copy it from the camera again.' };
    case 'file-truncated':
      return { happened: `${failure.file} breaks off before its end.`, advice: 'Copy it from the camera again.' };
    case 'file-not-an-image':
      return {
        happened: `${failure.file} is not a picture${failure.kind === null ? '' : ` (${failure.kind})`}.`,
        advice: 'JPEG, PNG, WebP, TIFF and HEIC files are kept.',
      };
    case 'file-kind-not-kept':
      return {
        happened: `${failure.file} is a picture of a kind that is not kept (${failure.kind}).`,
        advice: 'Save it as JPEG, PNG, WebP, TIFF or HEIC.',
      };
    case 'picture-too-large':
      return {
        happened: `${failure.file} has ${Math.round(failure.megapixels)} megapixels; up to ${failure.limitMegapixels} are kept.`,
        advice: 'Bring it in at a smaller size.',
      };
    case 'file-unreadable':
      return {
        happened: `${failure.file} could not be read (${failure.reason}).`,
        advice: 'Open it in another program; if that fails too, copy it from the camera again.',
      };
    case 'file-not-arrived':
      return { happened: `${failure.file} did not arrive whole.`, advice: 'Drop it here again.' };
    case 'intake-gone':
      return { happened: 'What was dropped here is no longer waiting.', advice: 'Drop the files again.' };
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
    case 'disk-full':
      return { happened: 'The disk is full. Nothing half-written was kept.', advice: 'Make room, then try again.' };
    case 'archive-in-use':
      return { happened: `The archive in ${failure.folder} is open in another Exuviary.`, advice: 'Close the other one first.' };
    case 'archive-not-ours':
      return {
        happened: `The folder ${failure.folder} holds something else, not an archive of Exuviary.`,
        advice: 'Choose another folder.',
      };
    case 'archive-from-newer-version':
      return {
        happened: `This archive was written by a newer Exuviary (format ${failure.found}; this one knows ${failure.known}).`,
        advice: 'Update Exuviary. The archive was not touched.',
      };
    case 'archive-damaged':
      return {
        happened: `The catalogue of the archive is damaged: ${failure.detail}.`,
        advice: 'Close Exuviary, copy the whole folder as it is, then go back to a backup.',
      };
    case 'archive-folder-unusable':
      return {
        happened: `The folder ${failure.folder} cannot be used: ${failure.reason}.`,
        advice: 'Choose a folder that you may write to, on a disk that is there.',
      };
    case 'not-at-scale':
      return {
        happened: 'This photo cannot be laid flat: it has no sound scale.',
        advice: 'Mark something of known size in it on the Bench.',
      };
    case 'nothing-at-scale':
      return {
        happened: 'None of the skins is at scale, so there is nothing to line up.',
        advice: 'Mark something of known size in a photo of each skin on the Bench.',
      };
    case 'original-missing':
      return {
        happened: 'The original of this photo is missing from the archive folder.',
        advice: 'Put it back from a backup, or bring the same file in again.',
      };
    case 'original-damaged':
      return {
        happened: 'The original of this photo is damaged: its bytes have changed.',
        advice: 'Put it back from a backup, or bring the same file in again.',
      };
    case 'removal-gone':
      return { happened: 'This can no longer be put back.', advice: 'What was removed can be restored until the archive is next closed.' };
    case 'skin-already-recorded':
      return { happened: 'The skin of this molt is already on record.', advice: 'Change its record instead of adding a second one.' };
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
    default:
      return assertNever(failure);
  }
}

function usesOf({ determinations, liveSigns }: Extract<Failure, { code: 'photo-in-use' }>): string[] {
  return [
    ...(determinations > 0 ? [counted(determinations, 'determination')] : []),
    ...(liveSigns > 0 ? [counted(liveSigns, 'sign of the animal', 'signs of the animal')] : []),
  ];
}
