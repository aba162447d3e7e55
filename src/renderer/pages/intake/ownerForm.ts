import type { MoltEntry, SpecimenPage } from '../../../api/contract/specimens.ts';
import { type CalendarDay, daysBetween } from '../../../domain/dates.ts';
import type { Failure } from '../../../domain/failure.ts';
import { MoltDraft } from '../../../domain/molting/molt.ts';
import type { Photo } from '../../../domain/photo/photo.ts';
import { checkNotTooEarly } from '../../../domain/specimen/dates.ts';
import { daysInWords, spanInWords } from '../../../words/dates.ts';
import { wordsFor } from '../../../words/failures.ts';
import { moltName } from '../../../words/instars.ts';
import { wholeOrNull } from '../../forms/reading.ts';
import type { Owner } from './assigning.ts';
import { suggestMolt } from './suggesting.ts';

/** The choice "new molt" among the molts. */
export const NEW_MOLT = 'new';

export interface OwnerChoice {
  readonly shows: 'skin' | 'animal';
  /** Id of a molt, or NEW_MOLT. */
  readonly molt: string;
  /** Else the molt happened between two days. */
  readonly dayKnown: boolean;
  readonly newMoltOn: string;
  readonly newMoltFrom: string;
  readonly newMoltTo: string;
  readonly newInstarShed: string;
}

/**
 * What the form starts with: the molt the keeper came from, else the one the photo's day speaks for, else a new one, whose day
 * only the keeper can tell: a skin may be found and photographed long after.
 */
export function firstChoice(photos: readonly Photo[], page: SpecimenPage, likelyMoltId: string | null): OwnerChoice {
  const takenOn = photos[0]?.takenOn ?? null;
  const molts = page.molts.map((entry) => entry.molt);
  const likely = molts.find((molt) => molt.id === likelyMoltId)?.id ?? null;
  const lastShed = molts.at(-1)?.instarShed ?? null;
  return {
    shows: 'skin',
    molt: likely ?? suggestMolt(takenOn, molts) ?? NEW_MOLT,
    dayKnown: true,
    newMoltOn: '',
    newMoltFrom: '',
    newMoltTo: '',
    newInstarShed: lastShed === null ? '' : String(lastShed + 1),
  };
}

/** The molts to choose from, newest first after "a new molt", each with how long before the photo it was. */
export function moltChoices(molts: readonly MoltEntry[], takenOn: CalendarDay | null): { value: string; label: string }[] {
  const known = molts.map((entry, index) => {
    const { molt } = entry;
    const days = takenOn === null ? null : daysBetween(molt.happenedTo, takenOn);
    const before = days === null || days < 0 ? '' : `, ${days === 0 ? 'the day of the photo' : `${daysInWords(days)} before the photo`}`;
    return { value: molt.id, label: `${spanInWords(molt.happenedFrom, molt.happenedTo)} · ${moltName(entry.instar, index + 1)}${before}` };
  });
  return [{ value: NEW_MOLT, label: 'A new molt' }, ...known.toReversed()];
}

/** The days that the form asks for. */
export type DayField = 'newMoltOn' | 'newMoltFrom' | 'newMoltTo' | 'takenOn';

/**
 * What does not fit about the days, each in a sentence for its field: the archive would refuse the same, but only after the photos
 * were on their way. Empty fields are not a fault here.
 */
export function dayFaults(choice: OwnerChoice, takenOn: string, today: CalendarDay): Partial<Record<DayField, string>> {
  const asked = choice.shows === 'skin' && choice.molt === NEW_MOLT;
  const { newMoltOn, newMoltFrom, newMoltTo } = choice;
  const days: Partial<Record<DayField, string>> = { takenOn, ...(asked && (choice.dayKnown ? { newMoltOn } : { newMoltFrom, newMoltTo })) };
  const faults: Partial<Record<DayField, string>> = {};
  for (const field of ['newMoltOn', 'newMoltFrom', 'newMoltTo', 'takenOn'] as const) {
    const day = days[field];
    if (day === undefined || day === '') continue;
    const early = field === 'takenOn' ? null : checkNotTooEarly(field, day);
    if (day > today) faults[field] = sentenceFor({ code: 'date-in-future', field, date: day });
    else if (early && !early.ok) faults[field] = sentenceFor(early.failure);
  }
  if (asked && !choice.dayKnown && newMoltFrom !== '' && newMoltTo !== '' && newMoltFrom > newMoltTo)
    faults.newMoltTo ??= sentenceFor({ code: 'dates-reversed', from: newMoltFrom, to: newMoltTo });
  return faults;
}

function sentenceFor(failure: Failure): string {
  const { happened, advice } = wordsFor(failure);
  return `${happened} ${advice}`;
}

/** Whom the photos go to; null while something for it is missing or does not fit. */
export function ownerOf(choice: OwnerChoice, page: SpecimenPage): Owner | null {
  const specimenId = page.summary.specimen.id;
  if (choice.shows === 'animal') return { kind: 'animal', specimenId };
  if (choice.molt !== NEW_MOLT) {
    const entry = page.molts.find((one) => one.molt.id === choice.molt);
    return entry ? { kind: 'skin', entry } : null;
  }
  const molt = MoltDraft.safeParse({
    happenedFrom: choice.dayKnown ? choice.newMoltOn : choice.newMoltFrom,
    happenedTo: choice.dayKnown ? choice.newMoltOn : choice.newMoltTo,
    instarShed: wholeOrNull(choice.newInstarShed),
    position: 'not-seen',
    outcomes: [],
    notes: '',
  });
  return molt.success ? { kind: 'skin-of-new-molt', specimenId, molt: molt.data } : null;
}
