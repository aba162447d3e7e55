import { type Molt, MoltDraft } from '../../../domain/molting/molt.ts';
import { fieldErrors } from '../../forms/fieldErrors.ts';
import type { ReadForm } from '../../forms/readForm.ts';
import { wholeOrNull } from '../../forms/reading.ts';

/** The fields of a molt as they stand in the form: one day where it is known, else two. Neither is taken for the other. */
export interface MoltForm {
  dayKnown: boolean;
  happenedOn: string;
  happenedFrom: string;
  happenedTo: string;
  instarShed: string;
  position: MoltDraft['position'];
  outcomes: MoltDraft['outcomes'];
  notes: string;
}

/** A new molt starts on the day or days on which it can have been, one instar after the last one shed where that is known. */
export function newMoltForm({ from, to }: { from: string; to: string }, lastShed: number | null): MoltForm {
  const dayKnown = from === to;
  return {
    dayKnown,
    happenedOn: dayKnown ? to : '',
    happenedFrom: dayKnown ? '' : from,
    happenedTo: dayKnown ? '' : to,
    instarShed: lastShed === null ? '' : String(lastShed + 1),
    position: 'not-seen',
    outcomes: [],
    notes: '',
  };
}

export function moltFormOf(molt: Molt): MoltForm {
  const dayKnown = molt.happenedFrom === molt.happenedTo;
  return {
    dayKnown,
    happenedOn: dayKnown ? molt.happenedTo : '',
    happenedFrom: dayKnown ? '' : molt.happenedFrom,
    happenedTo: dayKnown ? '' : molt.happenedTo,
    instarShed: molt.instarShed?.toString() ?? '',
    position: molt.position,
    outcomes: molt.outcomes,
    notes: molt.notes,
  };
}

export function readMoltForm(form: MoltForm): ReadForm<MoltDraft> {
  const parsed = MoltDraft.safeParse({
    happenedFrom: form.dayKnown ? form.happenedOn : form.happenedFrom,
    happenedTo: form.dayKnown ? form.happenedOn : form.happenedTo,
    instarShed: wholeOrNull(form.instarShed),
    position: form.position,
    outcomes: form.outcomes,
    notes: form.notes,
  });
  return parsed.success ? { draft: parsed.data, errors: null } : { draft: null, errors: fieldErrors(parsed.error.issues) };
}
