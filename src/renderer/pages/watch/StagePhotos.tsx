import { type ReactElement, useState } from 'react';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import { contradictionAmong } from '../../../domain/care/appending.ts';
import { MoltStage } from '../../../domain/care/observation.ts';
import { cameraTimeInWords } from '../../../words/dates.ts';
import { wordsFor } from '../../../words/failures.ts';
import { capitalized } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { Field } from '../../parts/Field.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { AttachButton } from './AttachButton.tsx';
import style from './StagePhotos.module.css';
import { NOTHING_SAID, type StageSaid, stageDrafts, stagePhotos } from './stagePhotos.ts';
import { useAttachedPhotos } from './useAttachedPhotos.ts';

const STAGES = [
  { value: '', label: 'no stage' },
  ...MoltStage.options.map((stage) => ({ value: stage, label: capitalized(SEEN_LABELS[stage]) })),
] as const;

interface Props {
  specimen: WatchedAnimal['specimen'];
  observer: string;
  onClose: () => void;
}

/** Stages of a molt by photos of the animal: by the times that the camera wrote, or by a keeper's word where it wrote none. */
export function StagePhotos({ specimen, observer, onClose }: Props): ReactElement {
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId: specimen.id } });
  const note = useChange('POST /api/specimens/{specimenId}/observations');
  const [said, setSaid] = useState<Readonly<Record<string, StageSaid>>>({});
  const say = (photoId: string, changes: Partial<StageSaid>) =>
    setSaid((before) => ({ ...before, [photoId]: { ...(before[photoId] ?? NOTHING_SAID), ...changes } }));
  const [saving, setSaving] = useState(false);
  const attached = useAttachedPhotos(specimen.id);
  const photos = stagePhotos(page.data?.animalPhotos ?? []);

  const { drafts, untimed } = stageDrafts(photos, said, observer);
  const contradiction = contradictionAmong(
    drafts.map(({ photo, stage, body }) => ({ id: photo, kind: stage, moment: body.moment, span: null })),
  );

  /** One after another in the order of time; what is noted leaves the choice, so a refusal can be mended and the rest go on. */
  const save = async () => {
    if (contradiction) return;
    setSaving(true);
    try {
      for (const { photo, stage, body } of drafts) {
        await note.mutateAsync({ path: { specimenId: specimen.id }, body });
        setSaid((before) => (before[photo]?.stage === stage ? { ...before, [photo]: NOTHING_SAID } : before));
      }
      onClose();
    } catch {
      // The mutation keeps the refusal and the dialog stays open to show it.
    } finally {
      setSaving(false);
    }
  };

  return (
    <Dialog
      wide
      title={`Times from photos of ${specimen.code}`}
      onClose={onClose}
      foot={
        <>
          <AttachButton busy={attached.busy} onFiles={attached.attach} />
          <Button
            kind="primary"
            busy={saving}
            disabled={drafts.length === 0 || untimed.length > 0 || contradiction !== null}
            onClick={save}
          >
            Note these times
          </Button>
        </>
      }
    >
      {page.error && <FailureNotice error={page.error} />}
      {note.error && <FailureNotice error={note.error} />}
      {contradiction && (
        <Notice tone="refusal" title="These times cannot be of one molt.">
          {wordsFor(contradiction).happened} Choose other stages, or check the clock of the camera.
        </Notice>
      )}
      {attached.attaching && (
        <Notice title="Photos are coming in.">
          Keep this open until they stand below: closed before, they come in all the same, but wait in Intake without an animal.
        </Notice>
      )}
      {attached.error !== null && <FailureNotice error={attached.error} />}
      {attached.refused.map(({ name, outcome }) => (
        <Notice key={name} tone="refusal" title={`${name}: ${wordsFor(outcome.failure).happened}`}>
          {wordsFor(outcome.failure).advice}
        </Notice>
      ))}
      {page.data && photos.length === 0 && (
        <p>There is no photo of the animal itself yet. Attach some; originals are copied and never changed.</p>
      )}
      <ul className={style['photos']}>
        {photos.map(({ id, originalName, facts: { takenAt } }) => {
          const { stage, time } = said[id] ?? NOTHING_SAID;
          return (
            <li key={id}>
              <Thumb photoId={id} alt="" className={style['thumb']} />
              <div className={style['said']}>
                <p>
                  {takenAt === null ? 'Its camera wrote no time.' : cameraTimeInWords(takenAt)}
                  {takenAt?.offset === null && ' (time zone of this machine assumed)'}
                </p>
                <Select
                  label={`Stage in ${originalName}`}
                  value={stage}
                  options={STAGES}
                  onChange={(chosen) => say(id, { stage: chosen })}
                />
                {takenAt === null && stage !== '' && (
                  <Field
                    label={`When ${originalName} was taken`}
                    hint={
                      untimed.includes(id)
                        ? 'By the clock of this machine. Needed before the stage can be noted.'
                        : 'By the clock of this machine.'
                    }
                  >
                    {(control) => (
                      <input {...control} type="datetime-local" value={time} onChange={(event) => say(id, { time: event.target.value })} />
                    )}
                  </Field>
                )}
              </div>
            </li>
          );
        })}
      </ul>
    </Dialog>
  );
}
