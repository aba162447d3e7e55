import type { Failure } from '../domain/failure.ts';
import { listed } from './counts.ts';
import { dayInWords } from './dates.ts';
import type { FailureWords } from './failureWords.ts';
import { numberInWords } from './modelNumbers.ts';
import { needsInWords, STRIP_WORDS } from './sexing.ts';

export type SexFailure = Extract<
  Failure,
  {
    code:
      | 'skin-not-recovered'
      | 'level-not-supported'
      | 'level-without-sex'
      | 'sex-without-level'
      | 'strip-not-readable'
      | 'correction-misplaced'
      | 'evidence-of-another-animal'
      | 'pin-misplaced'
      | 'bulbs-before-molt'
      | 'photo-not-of-animal'
      | 'number-out-of-range'
      | 'already-withdrawn';
  }
>;

/** What keeps a reading or a determination of sex from being signed, corrected or withdrawn. */
export function wordsForSex(failure: SexFailure): FailureWords {
  switch (failure.code) {
    case 'skin-not-recovered':
      return {
        happened: 'This skin was not recovered, so there is nothing to read.',
        advice: 'If it was found after all, say so in its record first.',
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
    case 'bulbs-before-molt':
      return {
        happened: `The bulbs cannot have been seen on ${dayInWords(failure.seenOn)}: the ultimate molt that brought them was on ${dayInWords(failure.moltedFrom)} or later.`,
        advice: 'Correct the day they were seen, or name another molt as the ultimate one.',
      };
    case 'photo-not-of-animal':
      return {
        happened: 'A photo that was named does not show this animal itself.',
        advice: 'What the animal shows is proved by a photo of that animal: a skin is of the instar before.',
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
  }
}
