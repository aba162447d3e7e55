import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { EvidencePin, PinnedQuestion } from '../../../../domain/sexing/determination.ts';
import { QUESTIONS } from '../../../../words/checklist.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Select } from '../../../parts/Select.tsx';
import { RadioRow } from '../steps/RadioRow.tsx';
import { EvidencePicture } from './EvidencePicture.tsx';
import { asKind, markFrom, markingGap, markingOf, NO_MARKING, placed, withoutLast } from './marking.ts';
import style from './PinDialog.module.css';
import { photoWords } from './photoWords.ts';

interface Props {
  question: PinnedQuestion;
  photos: readonly Photo[];
  /** Pins of this question, one for each photo. */
  pins: readonly EvidencePin[];
  firstPhoto: Photo;
  onPin: (pin: EvidencePin) => void;
  onUnpin: (photoId: string) => void;
  onClose: () => void;
}

const KINDS = [
  { value: 'none', label: 'The photo as a whole' },
  { value: 'point', label: 'A point' },
  { value: 'outline', label: 'An outline' },
] as const;

const HOW = {
  none: 'No mark: whoever looks finds the place without one.',
  point: 'Click or tap the place. With the keyboard: the arrow keys move a cross over the photo, Enter places it.',
  outline: 'Click or tap corner after corner. With the keyboard: arrow keys and Enter; Backspace takes the last corner back.',
} as const;

/** Pins a photo to an answer, with a mark that shows where on it. */
export function PinDialog({ question, photos, pins, firstPhoto, onPin, onUnpin, onClose }: Props): ReactElement {
  const [photo, setPhoto] = useState(firstPhoto);
  const pinned = pins.find(({ photoId }) => photoId === photo.id);
  const [marking, setMarking] = useState(markingOf(pinned?.mark ?? null));
  const [tried, setTried] = useState(false);
  const gap = markingGap(marking);
  const choose = (photoId: string) => {
    const chosen = photos.find(({ id }) => id === photoId);
    if (!chosen) return;
    setPhoto(chosen);
    setMarking(markingOf(pins.find((pin) => pin.photoId === photoId)?.mark ?? null));
    setTried(false);
  };
  const save = () => {
    setTried(true);
    if (gap !== null) return;
    onPin({ question, photoId: photo.id, mark: markFrom(marking) });
    onClose();
  };
  return (
    <Dialog
      title={QUESTIONS[question].question}
      wide
      onClose={onClose}
      foot={
        <>
          {pinned && (
            <Button
              kind="danger"
              onClick={() => {
                onUnpin(photo.id);
                onClose();
              }}
            >
              Unpin this photo
            </Button>
          )}
          <Button onClick={onClose}>Cancel</Button>
          <Button kind="primary" onClick={save}>
            {pinned ? 'Keep the pin' : 'Pin this photo'}
          </Button>
        </>
      }
    >
      <div className={style['pin']}>
        <div className={style['which']}>
          <Select
            label="Which photo shows it?"
            value={photo.id}
            options={photos.map((one) => ({ value: one.id, label: photoWords(one) }))}
            onChange={choose}
          />
          <ButtonLink to={`/bench/${photo.id}`} kind="quiet" icon="measure">
            Measure on it on the Bench
          </ButtonLink>
        </div>
        <RadioRow
          beside
          legend="Where on it?"
          value={marking.kind}
          options={KINDS}
          onChange={(kind) => setMarking(asKind(marking, kind))}
          error={tried && gap !== null ? gap : undefined}
        />
        <p className={style['how']}>{HOW[marking.kind]}</p>
        <EvidencePicture
          key={photo.id}
          photo={photo}
          alt={photoWords(photo)}
          marks={[marking]}
          onPlace={marking.kind === 'none' ? undefined : (at) => setMarking(placed(marking, at))}
          onTakeBack={() => setMarking(withoutLast(marking))}
          below={
            marking.kind !== 'none' && (
              <>
                <output>{marking.kind === 'point' ? pointWords(marking.points.length) : `${marking.points.length} corners placed.`}</output>
                <Button kind="quiet" disabled={marking.points.length === 0} onClick={() => setMarking(withoutLast(marking))}>
                  Take back the last one
                </Button>
                <Button
                  kind="quiet"
                  disabled={marking.points.length === 0}
                  onClick={() => setMarking({ ...NO_MARKING, kind: marking.kind })}
                >
                  Begin the mark anew
                </Button>
              </>
            )
          }
        />
      </div>
    </Dialog>
  );
}

function pointWords(count: number): string {
  return count === 0 ? 'No point placed.' : 'The point is placed.';
}
