import type { ReactElement } from 'react';
import type { Exuvia } from '../../../domain/molting/exuvia.ts';
import { RECOVER_HOW } from '../../../words/cautions.ts';
import { COMPLETENESS_LABELS, choicesOf, GRADE_LABELS, GRADE_MEANINGS } from '../../../words/labels.ts';
import { useChange } from '../../client/queries.ts';
import { FormDialog } from '../../forms/FormDialog.tsx';
import { useForm } from '../../forms/useForm.ts';
import { WholeRow } from '../../forms/WholeRow.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { CautionPanel } from '../../parts/cautions/CautionPanel.tsx';
import { Select } from '../../parts/Select.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { readSkinForm, skinFormOf } from './skinForm.ts';

interface Props {
  moltId: string;
  /** null where nothing is recorded yet. */
  exuvia: Exuvia | null;
  onClose: () => void;
}

const NOT_SAID = { value: '' as const, label: 'Not said' };

/** The skin of one molt: whether it was recovered, how well it can be read, where it lies. */
export function SkinDialog({ moltId, exuvia, onClose }: Props): ReactElement {
  const { form, errors, changed, basedOn, put, draft } = useForm(exuvia, skinFormOf, readSkinForm);
  const add = useChange('POST /api/molts/{moltId}/exuvia');
  const change = useChange('PUT /api/exuviae/{exuviaId}');

  const save = () => {
    const body = draft();
    if (!body) return;
    if (basedOn) change.mutate({ path: { exuviaId: basedOn.id }, version: basedOn.version, body }, { onSuccess: onClose });
    else add.mutate({ path: { moltId }, body }, { onSuccess: onClose });
  };

  return (
    <FormDialog
      title={exuvia ? 'Change the skin' : 'Record the skin'}
      saveLabel={exuvia ? 'Save' : 'Record'}
      busy={add.isPending || change.isPending}
      changed={changed}
      error={add.error ?? change.error}
      onSave={save}
      onClose={onClose}
    >
      {!exuvia && (
        <WholeRow>
          <p>{RECOVER_HOW}</p>
        </WholeRow>
      )}
      <WholeRow>
        <CheckField checked={form.recovered} onChange={(recovered) => put({ recovered })}>
          The skin was recovered
        </CheckField>
      </WholeRow>
      {form.recovered && (
        <>
          <Select
            label="Grade"
            hint={form.grade === '' ? 'How well the strip between the front book lungs can be read.' : GRADE_MEANINGS[form.grade]}
            value={form.grade}
            options={[NOT_SAID, ...choicesOf(GRADE_LABELS)]}
            onChange={(grade) => put({ grade })}
          />
          <Select
            label="Completeness"
            value={form.completeness}
            options={[NOT_SAID, ...choicesOf(COMPLETENESS_LABELS)]}
            onChange={(completeness) => put({ completeness })}
          />
          <TextField
            label="Storage place"
            hint="Box, vial or mount, as on its label."
            error={errors['storagePlace']}
            value={form.storagePlace}
            maxLength={200}
            onChange={(storagePlace) => put({ storagePlace })}
          />
        </>
      )}
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
      <WholeRow>
        <CautionPanel
          topics={['setae', 'eyes', 'asthma', 'solvents', 'animal']}
          folded={exuvia ? ['eyes', 'asthma', 'solvents', 'animal'] : ['solvents']}
        />
      </WholeRow>
    </FormDialog>
  );
}
