import { isFangColor, type ObservationKind } from '../domain/care/observation.ts';
import type { Failure } from '../domain/failure.ts';
import { counted } from './counts.ts';
import { dayInWords, momentInWords } from './dates.ts';
import type { FailureWords } from './failureWords.ts';
import { fangColorInWords, SEEN_LABELS, stageInWords } from './observations.ts';

export type ObservationFailure = Extract<
  Failure,
  {
    code:
      | 'seen-in-future'
      | 'seen-before-hatching'
      | 'molt-under-way'
      | 'molt-already-ended'
      | 'molt-ends-before-start'
      | 'molts-too-close'
      | 'stages-out-of-order'
      | 'fangs-black-too-soon'
      | 'fangs-out-of-order'
      | 'fangs-light-before-molt'
      | 'not-while-molting';
  }
>;

/** What keeps an observation from being noted. */
export function wordsForObservation(failure: ObservationFailure): FailureWords {
  switch (failure.code) {
    case 'seen-in-future':
      return {
        happened: `Not noted: ${momentInWords(failure.moment)} has not come yet by this machine's clock.`,
        advice: 'Give an earlier time. If the clock of this machine is wrong, set it first; nothing noted before is changed by that.',
      };
    case 'seen-before-hatching':
      return {
        happened: `Not noted: ${momentInWords(failure.moment)} lies before the animal hatched, on ${dayInWords(failure.hatchedOn)}.`,
        advice: 'Give a later time, or correct the day it hatched.',
      };
    case 'molt-under-way':
      return {
        happened: `A molt of this animal is under way since ${momentInWords(failure.startedAt)}; a second one cannot begin.`,
        advice:
          'Note first that it is free of its skin, with the time if that was earlier. If it never molted, remove the note that it turned over.',
      };
    case 'molt-already-ended':
      return {
        happened: `Not noted: ${momentInWords(failure.again)} would be a second end of the molt that ended at ${momentInWords(failure.endedAt)}. No animal molts twice within two days.`,
        advice: 'If the time that is noted is wrong, remove that note first, then note the right one.',
      };
    case 'molt-ends-before-start':
      return {
        happened: `Not noted: this molt would end at ${momentInWords(failure.endedAt)}, before it begins at ${momentInWords(failure.startedAt)}.`,
        advice: 'Check both times, and the clock of this machine or the camera. Remove the note that is wrong.',
      };
    case 'molts-too-close':
      return {
        happened: `A molt on ${dayInWords(failure.date)} and one on ${dayInWords(failure.neighbourDate)} cannot both be: no animal molts twice within ${counted(failure.apartDays, 'day')}.`,
        advice: 'If both are the same molt, correct the one that is noted already. Else check both days.',
      };
    case 'stages-out-of-order':
      return {
        happened: `Not noted: "${stageInWords(failure.later)}" at ${momentInWords(failure.laterAt)} comes after "${stageInWords(failure.earlier)}" at ${momentInWords(failure.earlierAt)}, but belongs before it.`,
        advice: 'Check both times, and remove the note that is wrong.',
      };
    case 'fangs-black-too-soon':
      return {
        happened: `Not noted: at ${momentInWords(failure.moment)} the animal had been free of its skin for less than a day, since ${momentInWords(failure.endedAt)}. Its new fangs cannot be black yet.`,
        advice:
          'Offer no prey. Look again tomorrow: first white, then red-brown, then black. If the end of the molt has a wrong time, remove that note.',
      };
    case 'fangs-out-of-order':
      return {
        happened: `Not noted: fangs ${fangColorInWords(failure.earlier)} at ${momentInWords(failure.earlierAt)} and ${fangColorInWords(failure.later)} at ${momentInWords(failure.laterAt)} cannot both be of one molt. They turn from white to red-brown to black.`,
        advice: 'Check the times, and remove the note that is wrong. Until then offer no prey.',
      };
    case 'fangs-light-before-molt':
      return {
        happened: `Fangs ${fangColorInWords(failure.color)} at ${momentInWords(failure.moment)} do not fit a molt that began at ${momentInWords(failure.startedAt)}: fangs are light only after a molt.`,
        advice: 'Check both times, and remove the note that is wrong.',
      };
    case 'not-while-molting':
      return {
        happened: `Not noted: at ${momentInWords(failure.moment)} the animal was molting, since ${momentInWords(failure.startedAt)}. ${whyNotWhileMolting(failure.kind)}`,
        advice: `If it is free already, note that first, with the time if that was earlier. If it never molted, remove the note "${SEEN_LABELS['turned-over']}".`,
      };
  }
}

function whyNotWhileMolting(kind: ObservationKind): string {
  if (kind === 'ate') return 'No animal eats then.';
  if (isFangColor(kind)) return 'Its old fangs go with the skin; the new ones are looked at once it is free.';
  if (kind === 'span-measured') return 'It is left alone then, and its old span is over.';
  return 'This is noted once it is free of its skin.';
}
