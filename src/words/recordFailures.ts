import type { Failure } from '../domain/failure.ts';
import { counted, listed } from './counts.ts';
import { dayInWords } from './dates.ts';
import type { FailureWords } from './failureWords.ts';
import { capitalized, OUTCOME_LABELS, VIEW_LABELS } from './labels.ts';

export type RecordFailure = Extract<
  Failure,
  {
    code:
      | 'code-taken'
      | 'dates-reversed'
      | 'hatched-after-acquired'
      | 'read-before-shed'
      | 'date-in-future'
      | 'date-too-early'
      | 'date-before-hatching'
      | 'molts-out-of-order'
      | 'instars-out-of-order'
      | 'instar-too-low'
      | 'instar-too-high'
      | 'gap-misplaced'
      | 'gap-uncounted'
      | 'gap-absent'
      | 'acquired-instar-contradicted'
      | 'outcomes-contradict'
      | 'skin-recovered-or-not'
      | 'skin-photographed'
      | 'skin-already-recorded'
      | 'view-not-of-animal'
      | 'animal-not-kept'
      | 'animal-mature-male'
      | 'male-contradicted'
      | 'molt-not-recorded'
      | 'photo-in-use';
  }
>;

/** What keeps an animal, a molt, a skin or a photo from being recorded so. */
export function wordsForRecord(failure: RecordFailure): FailureWords {
  switch (failure.code) {
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
    case 'date-too-early':
      return {
        happened: `${dayInWords(failure.date)} is too long ago: days from ${dayInWords(failure.earliest)} on are kept.`,
        advice: 'Look at the year.',
      };
    case 'date-before-hatching':
      return {
        happened: `${dayInWords(failure.date)} lies before the animal hatched, on ${dayInWords(failure.hatchedOn)}.`,
        advice: 'Correct this day, or the day it hatched.',
      };
    case 'molts-out-of-order':
      return {
        happened: `A molt on ${dayInWords(failure.date)} does not fit beside the one on ${dayInWords(failure.neighbourDate)}.`,
        advice:
          'Molts of one animal cannot overlap, but two spans may meet on one day. Check both dates. If nobody knows them, let the span of the earlier molt end on the day on which that of the later one begins: only their order is meant by it.',
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
    case 'gap-absent':
      return {
        happened: `No instar is missing before the molt on ${dayInWords(failure.moltDate)}, so there is no gap to take out.`,
        advice: 'Load the page again: the numbers may have been changed in another window.',
      };
    case 'gap-uncounted':
      return {
        happened: `The gap before the molt on ${dayInWords(failure.moltDate)} cannot be kept: no molt of this animal has an instar number to count from, and the days since the molt before leave no room for another.`,
        advice: 'Look at both days, or give one of its molts an instar number, even a supposed one, then accept the gap again.',
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
    case 'skin-already-recorded':
      return { happened: 'The skin of this molt is already on record.', advice: 'Change its record instead of adding a second one.' };
    case 'view-not-of-animal':
      return {
        happened: `A photo of the animal itself cannot show "${VIEW_LABELS[failure.view]}".`,
        advice: 'Choose another view, or say that it shows a shed skin.',
      };
    case 'animal-not-kept':
      return {
        happened: `${failure.specimenCode} is no longer kept, so nothing is forecast for it.`,
        advice: 'If it is still with you, or out on loan, say so in its record first.',
      };
    case 'molt-not-recorded':
      return {
        happened: `A molt of ${failure.specimenCode} was watched and is not on record yet, so no next one is foretold.`,
        advice: 'Put it on record first, in Watch or on its page.',
      };
    case 'animal-mature-male':
      return {
        happened: `${failure.specimenCode} is a mature male, who seldom molts again, so nothing is forecast for him.`,
        advice: 'If that is a mistake, withdraw the sign or the note that says so first.',
      };
    case 'male-contradicted':
      return {
        happened: `Palpal bulbs of ${failure.specimenCode} are on record, and something else says that it is no male: whether it molts again is not known, so nothing is forecast.`,
        advice: 'Correct or withdraw what was wrong first; the page of the animal names both sides.',
      };
    case 'photo-in-use':
      return {
        happened: `This photo is evidence of ${listed(usesOf(failure))}.`,
        advice:
          'Evidence stays with what it proves, also when that was withdrawn. If it shows another animal, say so on the photo instead.',
      };
  }
}

function usesOf({ determinations, liveSigns }: Extract<RecordFailure, { code: 'photo-in-use' }>): string[] {
  return [
    ...(determinations > 0 ? [counted(determinations, 'determination')] : []),
    ...(liveSigns > 0 ? [counted(liveSigns, 'sign of the animal', 'signs of the animal')] : []),
  ];
}
