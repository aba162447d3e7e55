import type { ReactElement } from 'react';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { counted } from '../../../../words/counts.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { EvidencePicture } from './EvidencePicture.tsx';
import { markingOf } from './marking.ts';
import style from './PhotoTable.module.css';
import { photoWords } from './photoWords.ts';
import { choosing, type Evidence, keeping } from './pinning.ts';

interface Props {
  skinPhotos: readonly Photo[];
  animalPhotos: readonly Photo[];
  shown: Photo | undefined;
  evidence: Evidence;
  onShow: (photoId: string) => void;
  /** Null where the reading is signed: then it is only told which photos it was signed with. */
  onEvidence: ((evidence: Evidence) => void) | null;
}

/** The photos of the skin and of its animal: one large, all as a strip in which evidence is ticked, or told where it is signed. */
export function PhotoTable({ skinPhotos, animalPhotos, shown, evidence, onShow, onEvidence }: Props): ReactElement {
  const all = [...skinPhotos, ...animalPhotos];
  const chosen = evidence.evidencePhotoIds.length;
  if (!shown) {
    return (
      <div className={style['none']}>
        <p>No photo of this skin yet. What is read from a skin should stay to be seen: photograph the opened abdomen, inner side up.</p>
        <ButtonLink to="/intake" icon="photo">
          Bring photos in
        </ButtonLink>
        {onEvidence && <Strays photos={all} evidence={evidence} onEvidence={onEvidence} />}
      </div>
    );
  }
  const marks = evidence.pins.filter(({ photoId }) => photoId === shown.id).map(({ mark }) => markingOf(mark));
  const strip = { shownId: shown.id, evidence, onShow, onEvidence };
  return (
    <section className={style['table']} aria-label="Photos">
      <EvidencePicture key={shown.id} photo={shown} alt={photoWords(shown)} marks={marks} />
      <p className={style['caption']}>
        <span>{photoWords(shown)}</span>
        <ButtonLink to={`/bench/${shown.id}`} kind="quiet" icon="measure">
          To the Bench
        </ButtonLink>
      </p>
      <Strip title="Of this skin" photos={skinPhotos} {...strip} />
      <Strip title="Of the animal" photos={animalPhotos} {...strip} />
      <p className={style['count']} aria-live="polite">
        {onEvidence === null
          ? chosen === 0
            ? 'Signed without a photo as evidence.'
            : `Signed with ${counted(chosen, 'photo')} as evidence.`
          : chosen === 0
            ? 'No photo chosen as evidence.'
            : `${counted(chosen, 'photo')} chosen as evidence.`}
      </p>
      {onEvidence && <Strays photos={all} evidence={evidence} onEvidence={onEvidence} />}
    </section>
  );
}

/** Evidence that was chosen and has gone from this table since, to another skin or altogether: it has no box to untick. */
function Strays({
  photos,
  evidence,
  onEvidence,
}: {
  photos: readonly Photo[];
  evidence: Evidence;
  onEvidence: (evidence: Evidence) => void;
}): ReactElement | null {
  const here = photos.map(({ id }) => id);
  const strays = evidence.evidencePhotoIds.filter((id) => !here.includes(id)).length;
  if (strays === 0) return null;
  return (
    <Notice
      tone="warning"
      title={`${counted(strays, 'photo')} chosen as evidence ${strays === 1 ? 'is' : 'are'} no longer with this skin.`}
    >
      <p>Removed photos can be brought back until the archive is closed. Without them, leave them out to sign.</p>
      <Button kind="quiet" onClick={() => onEvidence(keeping(here, evidence))}>
        Leave {strays === 1 ? 'it' : 'them'} out
      </Button>
    </Notice>
  );
}

interface StripProps extends Pick<Props, 'evidence' | 'onShow' | 'onEvidence'> {
  title: string;
  photos: readonly Photo[];
  shownId: string;
}

function Strip({ title, photos, shownId, evidence, onShow, onEvidence }: StripProps): ReactElement | null {
  if (photos.length === 0) return null;
  return (
    <div className={style['strip']}>
      <p className={style['stripTitle']}>{title}</p>
      <ul className={style['thumbs']}>
        {photos.map((photo) => (
          <li key={photo.id} className={style['item']}>
            <button
              type="button"
              className={style['show']}
              aria-pressed={photo.id === shownId}
              aria-label={`Show: ${photoWords(photo)}`}
              onClick={() => onShow(photo.id)}
            >
              <Thumb photoId={photo.id} alt="" />
            </button>
            {onEvidence ? (
              <label className={style['evidence']}>
                <input
                  type="checkbox"
                  checked={evidence.evidencePhotoIds.includes(photo.id)}
                  onChange={(event) => onEvidence(choosing(photo.id, event.target.checked, evidence))}
                />
                Evidence<span className="spoken-only">: {photoWords(photo)}</span>
              </label>
            ) : (
              evidence.evidencePhotoIds.includes(photo.id) && <p className={style['signed']}>Evidence</p>
            )}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The inner side of the abdomen is what is read; without such a photo, the first one. */
export function firstToRead(photos: readonly Photo[]): Photo | undefined {
  return photos.find((photo) => photo.view === 'abdomen-inside') ?? photos[0];
}
