import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { viewsOf } from '../../../domain/photo/view.ts';
import { cameraTimeInWords } from '../../../words/dates.ts';
import { choicesOf, VIEW_LABELS } from '../../../words/labels.ts';
import { useChange } from '../../client/queries.ts';
import { FormDialog } from '../../forms/FormDialog.tsx';
import { textOrNull } from '../../forms/reading.ts';
import { WholeRow } from '../../forms/WholeRow.tsx';
import { CheckField } from '../../parts/CheckField.tsx';
import { DayField } from '../../parts/DayField.tsx';
import { Select } from '../../parts/Select.tsx';
import { TextField } from '../../parts/TextField.tsx';

/** Sets right what a photo shows: its view, its day, its notes; or takes it away from its skin, back to Intake. */
export function PhotoDialog({ photo, onClose }: { photo: Photo; onClose: () => void }): ReactElement {
  const [view, setView] = useState(photo.view);
  const [takenOn, setTakenOn] = useState(photo.takenOn ?? '');
  const [notes, setNotes] = useState(photo.notes);
  const [release, setRelease] = useState(false);
  const changed = release || view !== photo.view || takenOn !== (photo.takenOn ?? '') || notes !== photo.notes;
  const change = useChange('PUT /api/photos/{photoId}');
  const save = () =>
    change.mutate(
      {
        path: { photoId: photo.id },
        version: photo.version,
        body: { subject: release ? { kind: 'none' } : photo.subject, view, takenOn: textOrNull(takenOn), notes },
      },
      { onSuccess: onClose },
    );
  return (
    <FormDialog
      title={photo.originalName}
      saveLabel="Save"
      busy={change.isPending}
      changed={changed}
      error={change.error}
      onSave={save}
      onClose={onClose}
    >
      <Select
        label="View"
        value={view}
        options={choicesOf(VIEW_LABELS).filter((choice) => choice.value === view || viewsOf(photo.subject.kind).includes(choice.value))}
        onChange={setView}
      />
      <DayField
        label="Taken on"
        hint={photo.facts.takenAt ? `The camera wrote ${cameraTimeInWords(photo.facts.takenAt)}` : 'The camera wrote no date'}
        value={takenOn}
        onChange={setTakenOn}
      />
      <WholeRow>
        <TextField label="Notes" kind="lines" value={notes} maxLength={20_000} onChange={setNotes} />
      </WholeRow>
      <WholeRow>
        <CheckField checked={release} onChange={setRelease}>
          It belongs elsewhere: put it back among the photos waiting in Intake
        </CheckField>
      </WholeRow>
    </FormDialog>
  );
}
