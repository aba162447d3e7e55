import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { PinnedQuestion } from '../../../../domain/sexing/determination.ts';
import { canShow } from '../../../../domain/sexing/pins.ts';
import { QUESTIONS } from '../../../../words/checklist.ts';
import { Button } from '../../../parts/Button.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { PinDialog } from './PinDialog.tsx';
import style from './PinLine.module.css';
import { photoWords } from './photoWords.ts';
import { type Evidence, pinnedTo, withoutPin, withPin } from './pinning.ts';

interface Props {
  question: PinnedQuestion;
  /** Of the skin, or of the animal where the question is about it. */
  photos: readonly Photo[];
  /** The one shown beside, which is the first to be offered. */
  shown: Photo | undefined;
  evidence: Evidence;
  onEvidence: (evidence: Evidence) => void;
}

/** The photos that show why a question was answered as it was; each opens large with its mark. */
export function PinLine({ question, photos, shown, evidence, onEvidence }: Props): ReactElement | null {
  const [opened, setOpened] = useState<Photo | null>(null);
  const pins = pinnedTo(question, evidence);
  const first = photos.find(({ id }) => id === shown?.id) ?? photos[0];
  if (!first) return null;
  const misses = (photoId: string) => {
    const photo = photos.find(({ id }) => id === photoId);
    return photo !== undefined && !canShow(question, photo.view);
  };
  return (
    <div className={style['line']}>
      {pins.map(({ photoId, mark }) => {
        const photo = photos.find(({ id }) => id === photoId);
        if (!photo) return null;
        return (
          <button key={photoId} type="button" className={style['pinned']} onClick={() => setOpened(photo)}>
            <Thumb photoId={photoId} alt="" className={style['thumb']} />
            <span>
              <span className="spoken-only">Pinned: </span>
              {photoWords(photo)}
              {mark !== null && (mark.kind === 'point' ? ', with a point' : ', with an outline')}
            </span>
          </button>
        );
      })}
      {pins.some(({ photoId }) => misses(photoId)) && (
        <p role="note">Pinned here is a photo whose view cannot show this. Correct the view of the photo, or pin another one.</p>
      )}
      <Button kind="quiet" icon="photo" onClick={() => setOpened(first)}>
        Pin a photo<span className="spoken-only"> to: {QUESTIONS[question].question}</span>
      </Button>
      {opened && (
        <PinDialog
          question={question}
          photos={photos}
          pins={pins}
          firstPhoto={opened}
          onPin={(pin) => onEvidence(withPin(pin, evidence))}
          onUnpin={(photoId) => onEvidence(withoutPin(question, photoId, evidence))}
          onClose={() => setOpened(null)}
        />
      )}
    </div>
  );
}
