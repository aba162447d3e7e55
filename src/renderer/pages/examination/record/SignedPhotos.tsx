import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import { QUESTIONS } from '../../../../words/checklist.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { EvidencePicture } from '../evidence/EvidencePicture.tsx';
import { markingOf } from '../evidence/marking.ts';
import { photoWords } from '../evidence/photoWords.ts';
import { Fingerprint, PhotoGone } from './PhotoGone.tsx';
import style from './SignedPhotos.module.css';

interface Props {
  determination: Pick<Determination, 'evidencePhotoIds' | 'pins'>;
  /** Of the animal and all its skins. */
  photos: readonly Photo[];
}

/** The photos a determination was signed with; each opens large, with its marks and what they were pinned to. */
export function SignedPhotos({ determination: { evidencePhotoIds, pins }, photos }: Props): ReactElement | null {
  const [opened, setOpened] = useState<Photo | null>(null);
  if (evidencePhotoIds.length === 0) return null;
  const onOpened = pins.filter(({ photoId }) => photoId === opened?.id);
  return (
    <>
      <ul className={style['evidence']} aria-label="Evidence">
        {evidencePhotoIds.map((photoId, place) => {
          const photo = photos.find(({ id }) => id === photoId);
          return (
            <li key={photoId}>
              {photo ? (
                <button type="button" className={style['open']} aria-label={`Open ${photoWords(photo)}`} onClick={() => setOpened(photo)}>
                  <Thumb photoId={photoId} alt="" />
                </button>
              ) : (
                <PhotoGone photoId={photoId} place={place + 1} />
              )}
            </li>
          );
        })}
      </ul>
      {opened && (
        <Dialog
          title="Signed as evidence"
          wide
          onClose={() => setOpened(null)}
          foot={
            <>
              <ButtonLink to={`/bench/${opened.id}`} icon="measure">
                To the Bench
              </ButtonLink>
              <Button onClick={() => setOpened(null)}>Close</Button>
            </>
          }
        >
          <EvidencePicture photo={opened} alt={photoWords(opened)} marks={onOpened.map(({ mark }) => markingOf(mark))} />
          <p>{photoWords(opened)}</p>
          <Fingerprint sha256={opened.sha256} />
          {onOpened.length > 0 && (
            <ul>
              {onOpened.map(({ question, mark }) => (
                <li key={question}>
                  {QUESTIONS[question].question}{' '}
                  {mark === null ? '(the photo as a whole)' : mark.kind === 'point' ? '(a point)' : '(an outline)'}
                </li>
              ))}
            </ul>
          )}
        </Dialog>
      )}
    </>
  );
}
