import type { ReactElement } from 'react';
import { type Molt, MoltOutcome } from '../../../domain/molting/molt.ts';
import { withOutcome } from '../../../domain/molting/outcomes.ts';
import { capitalized, choicesOf, OUTCOME_LABELS, POSITION_LABELS } from '../../../words/labels.ts';
import { useChange } from '../../client/queries.ts';
import { FormDialog } from '../../forms/FormDialog.tsx';
import { refusedFields } from '../../forms/refusedFields.ts';
import { useForm } from '../../forms/useForm.ts';
import { WholeRow } from '../../forms/WholeRow.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { FieldGroup } from '../../parts/FieldGroup.tsx';
import { Select } from '../../parts/Select.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { moltFormOf, newMoltForm, readMoltForm } from './moltForm.ts';

const FIELDS = ['happenedFrom', 'happenedTo', 'instarShed', 'outcomes'];

interface Props {
  specimenId: string;
  /** null for a new one. */
  molt: Molt | null;
  today: string;
  /** Of a new one: the first day on which it can have been, where that is not the last. */
  notBefore?: string;
  lastShed: number | null;
  onClose: () => void;
}

/** A molt: its day or the span in which it must have happened, the instar that ended, and how it went. */
export function MoltDialog({ specimenId, molt, today, notBefore = today, lastShed, onClose }: Props): ReactElement {
  const { form, errors, changed, basedOn, put, draft } = useForm(
    molt,
    (opened) => (opened ? moltFormOf(opened) : newMoltForm({ from: notBefore, to: today }, lastShed)),
    readMoltForm,
  );
  const add = useChange('POST /api/specimens/{specimenId}/molts');
  const change = useChange('PUT /api/molts/{moltId}');

  const refusal = add.error ?? change.error;
  const refused = refusedFields(refusal, FIELDS);
  const save = () => {
    // What was refused before says nothing of what stands in the fields now.
    add.reset();
    change.reset();
    const body = draft();
    if (!body) return;
    if (basedOn) change.mutate({ path: { moltId: basedOn.id }, version: basedOn.version, body }, { onSuccess: onClose });
    else add.mutate({ path: { specimenId }, body }, { onSuccess: onClose });
  };

  return (
    <FormDialog
      title={molt ? 'Change this molt' : 'Add a molt'}
      saveLabel={molt ? 'Save' : 'Add'}
      busy={add.isPending || change.isPending}
      changed={changed}
      error={refusal}
      errorAtField={Object.keys(refused).length > 0}
      onSave={save}
      onClose={onClose}
    >
      <WholeRow>
        <CheckField checked={form.dayKnown} onChange={(dayKnown) => put({ dayKnown })}>
          The day is known
        </CheckField>
      </WholeRow>
      {form.dayKnown ? (
        <DayField
          label="Molted on"
          error={errors['happenedFrom'] ?? refused['happenedFrom'] ?? refused['happenedTo']}
          value={form.happenedOn}
          latest={today}
          required
          onChange={(happenedOn) => put({ happenedOn })}
        />
      ) : (
        <>
          <DayField
            label="Last seen unmolted"
            hint="If nobody knows, the first day it can have been."
            error={errors['happenedFrom'] ?? refused['happenedFrom']}
            value={form.happenedFrom}
            latest={today}
            required
            onChange={(happenedFrom) => put({ happenedFrom })}
          />
          <DayField
            label="Found molted"
            hint="If nobody knows, the last day it can have been."
            error={errors['happenedTo'] ?? refused['happenedTo']}
            value={form.happenedTo}
            latest={today}
            required
            onChange={(happenedTo) => put({ happenedTo })}
          />
        </>
      )}
      <TextField
        label="Instar shed"
        hint="The instar that ended with this molt: the one its skin shows. Leave empty if only the order is known."
        error={errors['instarShed'] ?? refused['instarShed']}
        kind="whole"
        value={form.instarShed}
        onChange={(instarShed) => put({ instarShed })}
      />
      <Select label="Position" value={form.position} options={choicesOf(POSITION_LABELS)} onChange={(position) => put({ position })} />
      <WholeRow>
        <FieldGroup label="How it went" error={refused['outcomes']}>
          {MoltOutcome.options.map((outcome) => (
            <CheckField
              key={outcome}
              checked={form.outcomes.includes(outcome)}
              onChange={(checked) => put({ outcomes: withOutcome(form.outcomes, outcome, checked) })}
            >
              {capitalized(OUTCOME_LABELS[outcome])}
            </CheckField>
          ))}
        </FieldGroup>
      </WholeRow>
      <WholeRow>
        <TextField
          label="Notes"
          kind="lines"
          hint={partsAsked(form.outcomes)}
          error={errors['notes']}
          value={form.notes}
          maxLength={20_000}
          onChange={(notes) => put({ notes })}
        />
      </WholeRow>
    </FormDialog>
  );
}

/** What an outcome leaves open, asked where it can be answered. */
function partsAsked(outcomes: readonly MoltOutcome[]): string | undefined {
  const asked = outcomes.flatMap((outcome) => PARTS_ASKED[outcome] ?? []);
  return asked.length === 0 ? undefined : asked.join(' ');
}

const PARTS_ASKED: Partial<Record<MoltOutcome, string>> = {
  stuck: 'Which part was stuck?',
  'limb-lost': 'Which limb was lost?',
  'limb-regenerated': 'Which limb came back?',
  deformed: 'Which part is deformed?',
};
