import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { counted } from '../../../words/counts.ts';
import { dayInWords } from '../../../words/dates.ts';
import { VIEW_LABELS } from '../../../words/labels.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { Notice } from '../../parts/Notice.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import style from './PhotoTable.module.css';
import { PhotoViewer } from './PhotoViewer.tsx';

interface Props {
  skinPhotos: readonly Photo[];
  animalPhotos: readonly Photo[];
  evidence: readonly string[];
  onEvidence: (photoIds: string[]) => void;
}

/** The photos of the skin and of its animal: one large, all as a strip in which evidence is ticked. */
export function PhotoTable({ skinPhotos, animalPhotos, evidence, onEvidence }: Props): ReactElement {
  const [chosen, setChosen] = useState<string | null>(null);
  const all = [...skinPhotos, ...animalPhotos];
  const shown = all.find((photo) => photo.id === chosen) ?? firstToRead(skinPhotos) ?? all[0];
  if (!shown) {
    return (
      <div className={style['none']}>
        <p>No photo of this skin yet. What is read from a skin should stay to be seen: photograph the opened abdomen, inner side up.</p>
        <ButtonLink to="/intake" icon="photo">
          Bring photos in
        </ButtonLink>
        <Strays photos={all} evidence={evidence} onEvidence={onEvidence} />
      </div>
    );
  }
  const strip = { shownId: shown.id, evidence, onShow: setChosen, onEvidence };
  return (
    <section className={style['table']} aria-label="Photos">
      <PhotoViewer key={shown.id} photoId={shown.id} alt={photoWords(shown)} />
      <p className={style['caption']}>
        <span>{photoWords(shown)}</span>
        <ButtonLink to={`/bench/${shown.id}`} kind="quiet" icon="measure">
          To the Bench
        </ButtonLink>
      </p>
      <Strip title="Of this skin" photos={skinPhotos} {...strip} />
      <Strip title="Of the animal" photos={animalPhotos} {...strip} />
      <p className={style['count']} aria-live="polite">
        {evidence.length === 0 ? 'No photo chosen as evidence.' : `${counted(evidence.length, 'photo')} chosen as evidence.`}
      </p>
      <Strays photos={all} evidence={evidence} onEvidence={onEvidence} />
    </section>
  );
}

/** Evidence that was chosen and has gone from this table since, to another skin or altogether: it has no box to untick. */
function Strays({
  photos,
  evidence,
  onEvidence,
}: { photos: readonly Photo[] } & Pick<Props, 'evidence' | 'onEvidence'>): ReactElement | null {
  const here = evidence.filter((photoId) => photos.some((photo) => photo.id === photoId));
  const strays = evidence.length - here.length;
  if (strays === 0) return null;
  return (
    <Notice
      tone="warning"
      title={`${counted(strays, 'photo')} chosen as evidence ${strays === 1 ? 'is' : 'are'} no longer with this skin.`}
    >
      <Button kind="quiet" onClick={() => onEvidence(here)}>
        Leave {strays === 1 ? 'it' : 'them'} out
      </Button>
    </Notice>
  );
}

interface StripProps {
  title: string;
  photos: readonly Photo[];
  shownId: string;
  evidence: readonly string[];
  onShow: (photoId: string) => void;
  onEvidence: (photoIds: string[]) => void;
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
            <label className={style['evidence']}>
              <input
                type="checkbox"
                checked={evidence.includes(photo.id)}
                onChange={(event) =>
                  onEvidence(event.target.checked ? [...evidence, photo.id] : evidence.filter((photoId) => photoId !== photo.id))
                }
              />
              Evidence<span className="spoken-only">: {photoWords(photo)}</span>
            </label>
          </li>
        ))}
      </ul>
    </div>
  );
}

/** The inner side of the abdomen is what is read; without such a photo, the first one. */
function firstToRead(photos: readonly Photo[]): Photo | undefined {
  return photos.find((photo) => photo.view === 'abdomen-inside') ?? photos[0];
}

function photoWords(photo: Photo): string {
  const what = photo.subject.kind === 'animal' ? 'The animal' : 'The skin';
  const view = photo.view === 'other' ? what : `${what}, ${VIEW_LABELS[photo.view]}`;
  return photo.takenOn === null ? view : `${view}, ${dayInWords(photo.takenOn)}`;
}
