import type { ReactElement } from 'react';
import type { Molt } from '../../../../domain/molting/molt.ts';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { spanInWords } from '../../../../words/dates.ts';
import { choicesOf } from '../../../../words/labels.ts';
import { LIVE_KIND_LABELS } from '../../../../words/liveSigns.ts';
import { useAnswer, useChange } from '../../../client/queries.ts';
import { FormDialog } from '../../../forms/FormDialog.tsx';
import { useForm } from '../../../forms/useForm.ts';
import { WholeRow } from '../../../forms/WholeRow.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import { CautionPanel } from '../../../parts/cautions/CautionPanel.tsx';
import { DayField } from '../../../parts/DayField.tsx';
import { FieldGroup } from '../../../parts/FieldGroup.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import { useToast } from '../../../parts/Toast.tsx';
import { photoWords } from '../../examination/evidence/photoWords.ts';
import { blankSign, readSign } from './liveSignForm.ts';

interface Props {
  specimenId: string;
  molts: readonly Molt[];
  animalPhotos: readonly Photo[];
  today: string;
  onClose: () => void;
}

const SEEN = [
  { value: 'yes', label: 'Seen' },
  { value: 'no', label: 'Looked, none' },
] as const;
const FERTILE = [
  { value: 'not-known', label: 'Not known' },
  { value: 'yes', label: 'Fertile' },
  { value: 'no', label: 'Not fertile' },
] as const;
const FROM = [
  { value: 'ventral', label: 'A look from below, without detail' },
  { value: 'color', label: 'Color' },
  { value: 'build', label: 'Build' },
  { value: 'seller', label: 'A seller’s word' },
] as const;
const SEXES = [
  { value: 'female', label: 'Female' },
  { value: 'male', label: 'Male' },
] as const;

/** Records something seen of the animal itself. */
export function LiveSignDialog({ specimenId, molts, animalPhotos, today, onClose }: Props): ReactElement {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const { form, errors, changed, put, draft } = useForm(preferences?.observer ?? '', (observer) => blankSign(today, observer), readSign);
  const record = useChange('POST /api/specimens/{specimenId}/live-signs');
  const toast = useToast();
  const save = () => {
    const body = draft();
    if (body === null) return;
    record.mutate(
      { path: { specimenId }, body },
      {
        onSuccess: () => {
          toast({ message: `${LIVE_KIND_LABELS[form.kind]}: on record.` });
          onClose();
        },
      },
    );
  };
  const looked = form.kind === 'palpal-bulbs' || form.kind === 'tibial-hooks' || form.kind === 'ventral-fusillae';
  return (
    <FormDialog
      title="Record a sign of the animal"
      saveLabel="Record"
      busy={record.isPending}
      changed={changed}
      error={record.error}
      onSave={save}
      onClose={onClose}
    >
      <Select label="What" value={form.kind} options={choicesOf(LIVE_KIND_LABELS)} onChange={(kind) => put({ kind })} />
      {looked && <Select label="Seen?" value={form.seen} options={SEEN} onChange={(seen) => put({ seen })} />}
      {form.kind === 'egg-sac' && (
        <Select label="The sac" value={form.fertile} options={FERTILE} onChange={(fertile) => put({ fertile })} />
      )}
      {form.kind === 'palpal-bulbs' && form.seen === 'yes' && (
        <Select
          label="Ultimate molt"
          hint="The molt with which the bulbs came. Its skin shows the instar before, without bulbs."
          value={form.ultimateMoltId}
          options={[
            { value: '', label: 'Not on record' },
            ...molts.map((molt) => ({ value: molt.id, label: spanInWords(molt.happenedFrom, molt.happenedTo) })).toReversed(),
          ]}
          onChange={(ultimateMoltId) => put({ ultimateMoltId })}
        />
      )}
      {form.kind === 'tibial-hooks' && form.seen === 'no' && (
        <WholeRow>
          <Notice>Males of many genera have no hooks: that none were seen never speaks for a female.</Notice>
        </WholeRow>
      )}
      {form.kind === 'ventral-fusillae' && (
        <TextField
          label="Leg span that day, mm"
          hint="Fusillae say little on a small animal. Without a photo it counts as small."
          error={errors['legSpan']}
          value={form.legSpan}
          onChange={(legSpan) => put({ legSpan })}
        />
      )}
      {form.kind === 'impression' && (
        <>
          <Select label="By" value={form.from} options={FROM} onChange={(from) => put({ from })} />
          <Select label="Points to" value={form.towards} options={SEXES} onChange={(towards) => put({ towards })} />
        </>
      )}
      <DayField label="Seen on" error={errors['seenOn']} latest={today} value={form.seenOn} onChange={(seenOn) => put({ seenOn })} />
      <TextField
        label="Seen by"
        maxLength={200}
        error={errors['observer']}
        value={form.observer}
        onChange={(observer) => put({ observer })}
      />
      <WholeRow>
        {animalPhotos.length === 0 ? (
          <Notice>No photo of the animal itself is on record. Bulbs with a photo weigh more than bulbs that are told of.</Notice>
        ) : (
          <FieldGroup label="Photos of the animal that show it">
            {animalPhotos.map((photo) => (
              <CheckField
                key={photo.id}
                checked={form.photoIds.includes(photo.id)}
                onChange={(checked) =>
                  put({ photoIds: checked ? [...form.photoIds, photo.id] : form.photoIds.filter((id) => id !== photo.id) })
                }
              >
                {photoWords(photo)}
              </CheckField>
            ))}
          </FieldGroup>
        )}
      </WholeRow>
      <WholeRow>
        <TextField label="Notes" kind="lines" maxLength={20_000} value={form.notes} onChange={(notes) => put({ notes })} />
      </WholeRow>
      <WholeRow>
        <CautionPanel topics={['animal', 'bites']} />
      </WholeRow>
    </FormDialog>
  );
}
