import { type ReactElement, useState } from 'react';
import type { WatchedAnimal } from '../../../api/contract/watch.ts';
import { contradictionAmong } from '../../../domain/care/appending.ts';
import { MoltStage, type ObservationDraft } from '../../../domain/care/observation.ts';
import type { Photo } from '../../../domain/photo/photo.ts';
import { cameraTimeInWords } from '../../../words/dates.ts';
import { wordsFor } from '../../../words/failures.ts';
import { capitalized } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { Dialog } from '../../parts/Dialog.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { Select } from '../../parts/Select.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { AttachButton } from './AttachButton.tsx';
import style from './StagePhotos.module.css';
import { useAttachedPhotos } from './useAttachedPhotos.ts';
import { momentOfCamera } from './wallClock.ts';

const STAGES = [
  { value: '', label: 'no stage' },
  ...MoltStage.options.map((stage) => ({ value: stage, label: capitalized(SEEN_LABELS[stage]) })),
] as const;

const LATEST_SHOWN = 24;

interface Props {
  specimen: WatchedAnimal['specimen'];
  observer: string;
  onClose: () => void;
}

/** Stages of a molt by the times the camera wrote into photos of the animal. */
export function StagePhotos({ specimen, observer, onClose }: Props): ReactElement {
  const page = useAnswer('GET /api/specimens/{specimenId}', { path: { specimenId: specimen.id } });
  const note = useChange('POST /api/specimens/{specimenId}/observations');
  const [chosen, setChosen] = useState<Readonly<Record<string, MoltStage | ''>>>({});
  const [saving, setSaving] = useState(false);
  const attached = useAttachedPhotos(specimen.id);
  const photos = (page.data?.animalPhotos ?? [])
    .filter(({ facts }) => facts.takenAt !== null)
    .toReversed()
    .slice(0, LATEST_SHOWN);

  const drafts = draftsOf(photos, chosen, observer);
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
        setChosen((before) => (before[photo] === stage ? { ...before, [photo]: '' } : before));
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
          <Button kind="primary" busy={saving} disabled={drafts.length === 0 || contradiction !== null} onClick={save}>
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
        <p>No photo of the animal itself has a time that its camera wrote. Attach some; originals are copied and never changed.</p>
      )}
      <ul className={style['photos']}>
        {photos.map((photo) => (
          <li key={photo.id}>
            <Thumb photoId={photo.id} alt="" className={style['thumb']} />
            <div>
              <p>
                {photo.facts.takenAt && cameraTimeInWords(photo.facts.takenAt)}
                {photo.facts.takenAt?.offset === null && ' (time zone of this machine assumed)'}
              </p>
              <Select
                label={`Stage in ${photo.originalName}`}
                value={chosen[photo.id] ?? ''}
                options={STAGES}
                onChange={(stage) => setChosen((before) => ({ ...before, [photo.id]: stage }))}
              />
            </div>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}

interface PhotoDraft {
  readonly photo: string;
  readonly stage: MoltStage;
  readonly body: ObservationDraft;
}

function draftsOf(photos: readonly Photo[], chosen: Readonly<Record<string, MoltStage | ''>>, observer: string): PhotoDraft[] {
  return photos
    .flatMap(({ id, facts: { takenAt } }): PhotoDraft[] => {
      const stage = chosen[id];
      const time = takenAt && momentOfCamera(takenAt);
      if (!stage || !time) return [];
      const source = { kind: 'photo', photoId: id, offsetAssumed: time.offsetAssumed } as const;
      return [{ photo: id, stage, body: { kind: stage, moment: time.moment, observer, note: '', source, span: null } }];
    })
    .toSorted((a, b) => Date.parse(a.body.moment.at) - Date.parse(b.body.moment.at) || rank(a.stage) - rank(b.stage));
}

/** Two stages in one picture, or in one second, come in their order. */
function rank(stage: MoltStage): number {
  return MoltStage.options.indexOf(stage);
}
