import type { ReactElement } from 'react';
import type { Specimen } from '../../../domain/specimen/specimen.ts';
import { choicesOf, HABIT_LABELS, STATUS_LABELS } from '../../../words/labels.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { FormDialog } from '../../forms/FormDialog.tsx';
import { refusedFields } from '../../forms/refusedFields.ts';
import { useForm } from '../../forms/useForm.ts';
import { WholeRow } from '../../forms/WholeRow.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { Select } from '../../parts/Select.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { formOf, readSpecimenForm } from './specimenForm.ts';

const FIELDS = ['code', 'acquiredOn', 'acquiredInstar', 'hatchedOn'];

interface Props {
  /** null for a new one. */
  specimen: Specimen | null;
  taxaInUse: readonly string[];
  onClose: () => void;
  onSaved: (specimen: Specimen) => void;
}

/** All that a keeper says about an animal. Its sex is not asked: it follows from determinations. */
export function SpecimenDialog({ specimen, taxaInUse, onClose, onSaved }: Props): ReactElement {
  const { form, errors, changed, basedOn, put, draft } = useForm(specimen, formOf, readSpecimenForm);
  const add = useChange('POST /api/specimens');
  const change = useChange('PUT /api/specimens/{specimenId}');
  const { data: about } = useAnswer('GET /api/about', {});

  const refusal = add.error ?? change.error;
  const refused = refusedFields(refusal, FIELDS);
  const save = () => {
    const body = draft();
    if (!body) return;
    const onSuccess = (saved: Specimen) => {
      onClose();
      onSaved(saved);
    };
    if (basedOn) change.mutate({ path: { specimenId: basedOn.id }, version: basedOn.version, body }, { onSuccess });
    else add.mutate({ body }, { onSuccess });
  };

  return (
    <FormDialog
      title={specimen ? `Change ${specimen.code}` : 'Add a specimen'}
      saveLabel={specimen ? 'Save' : 'Add'}
      busy={add.isPending || change.isPending}
      changed={changed}
      error={refusal}
      errorAtField={Object.keys(refused).length > 0}
      onSave={save}
      onClose={onClose}
    >
      <TextField
        label="Code"
        hint="Your own short code, as on the enclosure. No two animals share one."
        error={errors['code'] ?? refused['code']}
        value={form.code}
        maxLength={40}
        required
        onChange={(code) => put({ code })}
      />
      <TextField
        label="Species"
        hint="Scientific name, as used now. Leave empty if unknown."
        error={errors['taxon']}
        value={form.taxon}
        maxLength={200}
        suggestions={taxaInUse}
        onChange={(taxon) => put({ taxon })}
      />
      <TextField label="Name" error={errors['name']} value={form.name} maxLength={200} onChange={(name) => put({ name })} />
      <Select label="Status" value={form.status} options={choicesOf(STATUS_LABELS)} onChange={(status) => put({ status })} />
      <DayField
        label="Acquired on"
        error={errors['acquiredOn'] ?? refused['acquiredOn']}
        value={form.acquiredOn}
        latest={about?.today}
        onChange={(acquiredOn) => put({ acquiredOn })}
      />
      <TextField
        label="Instar when acquired"
        hint="If known. It anchors the count of instars."
        error={errors['acquiredInstar'] ?? refused['acquiredInstar']}
        kind="whole"
        value={form.acquiredInstar}
        onChange={(acquiredInstar) => put({ acquiredInstar })}
      />
      <DayField
        label="Hatched on"
        error={errors['hatchedOn'] ?? refused['hatchedOn']}
        value={form.hatchedOn}
        latest={about?.today}
        onChange={(hatchedOn) => put({ hatchedOn })}
      />
      <TextField
        label="Egg sac"
        hint="The same words for all siblings of one sac."
        error={errors['eggSacGroup']}
        value={form.eggSacGroup}
        maxLength={100}
        onChange={(eggSacGroup) => put({ eggSacGroup })}
      />
      <TextField
        label="Origin"
        hint="Breeder, trade, place."
        error={errors['origin']}
        value={form.origin}
        maxLength={500}
        onChange={(origin) => put({ origin })}
      />
      <Select
        label="Way of life"
        value={form.habit}
        options={[{ value: '' as const, label: 'Not said' }, ...choicesOf(HABIT_LABELS)]}
        onChange={(habit) => put({ habit })}
      />
      <WholeRow>
        <TextField
          label="Notes"
          kind="lines"
          error={errors['notes']}
          value={form.notes}
          maxLength={20_000}
          onChange={(notes) => put({ notes })}
        />
      </WholeRow>
    </FormDialog>
  );
}
