import { type Molt, MoltDraft } from '../../../domain/molting/molt.ts';
import { fieldErrors } from '../../forms/fieldErrors.ts';
import type { ReadForm } from '../../forms/readForm.ts';
import { wholeOrNull } from '../../forms/reading.ts';

/** The fields of a molt as they stand in the form. `dayKnown` hides the second date, which then equals the first. */
export interface MoltForm {
  dayKnown: boolean;
  happenedFrom: string;
  happenedTo: string;
  instarShed: string;
  position: MoltDraft['position'];
  outcomes: MoltDraft['outcomes'];
  notes: string;
}

/** A new molt starts today, one instar after the last one shed where that is known. */
export function newMoltForm(today: string, lastShed: number | null): MoltForm {
  return {
    dayKnown: true,
    happenedFrom: today,
    happenedTo: today,
    instarShed: lastShed === null ? '' : String(lastShed + 1),
    position: 'not-seen',
    outcomes: [],
    notes: '',
  };
}

export function moltFormOf(molt: Molt): MoltForm {
  return {
    dayKnown: molt.happenedFrom === molt.happenedTo,
    happenedFrom: molt.happenedFrom,
    happenedTo: molt.happenedTo,
    instarShed: molt.instarShed?.toString() ?? '',
    position: molt.position,
    outcomes: molt.outcomes,
    notes: molt.notes,
  };
}

export function readMoltForm(form: MoltForm): ReadForm<MoltDraft> {
  const parsed = MoltDraft.safeParse({
    happenedFrom: form.happenedFrom,
    happenedTo: form.dayKnown ? form.happenedFrom : form.happenedTo,
    instarShed: wholeOrNull(form.instarShed),
    position: form.position,
    outcomes: form.outcomes,
    notes: form.notes,
  });
  return parsed.success ? { draft: parsed.data, errors: null } : { draft: null, errors: fieldErrors(parsed.error.issues) };
}
