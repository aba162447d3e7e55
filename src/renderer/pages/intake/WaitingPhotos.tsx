import { type ReactElement, useState } from 'react';
import type { Photo } from '../../../domain/photo/photo.ts';
import { cameraTimeInWords, dayInWords } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import { RemovePhotosDialog } from './RemovePhotosDialog.tsx';
import style from './WaitingPhotos.module.css';

interface Props {
  photos: readonly Photo[];
  chosen: ReadonlySet<string>;
  onChoose: (chosen: ReadonlySet<string>) => void;
}

/** Photos that belong to nothing yet. One or several are chosen, to be given to a skin together. */
export function WaitingPhotos({ photos, chosen, onChoose }: Props): ReactElement {
  const [removing, setRemoving] = useState<readonly Photo[] | null>(null);
  const toggle = (id: string, on: boolean) =>
    onChoose(new Set(photos.map((photo) => photo.id).filter((one) => (one === id ? on : chosen.has(one)))));
  const ready = photos.filter((photo) => chosen.has(photo.id));
  return (
    <section className={style['waiting']} aria-labelledby="waiting">
      <header className={style['head']}>
        <h2 id="waiting">Whose skin?</h2>
        <span className="figures">
          {photos.length} waiting, {chosen.size} chosen
        </span>
      </header>
      <div className={style['deeds']}>
        <Button kind="quiet" onClick={() => onChoose(new Set(chosen.size === photos.length ? [] : photos.map((photo) => photo.id)))}>
          {chosen.size === photos.length ? 'Choose none' : 'Choose all'}
        </Button>
        {ready.length === 1 && ready[0] && (
          <ButtonLink kind="quiet" icon="measure" to={`/bench/${ready[0].id}`}>
            Measure it first
          </ButtonLink>
        )}
        {ready.length > 0 && (
          <Button kind="quiet" icon="remove" onClick={() => setRemoving(ready)}>
            {ready.length === 1 ? 'Remove' : `Remove ${ready.length}`}
          </Button>
        )}
      </div>
      <ul className={style['grid']}>
        {photos.map((photo) => (
          <li key={photo.id}>
            <label className={style['photo']}>
              <input type="checkbox" checked={chosen.has(photo.id)} onChange={(event) => toggle(photo.id, event.target.checked)} />
              <Thumb photoId={photo.id} alt="" className={style['thumb']} />
              <span className={style['name']}>{photo.originalName}</span>
              <span className={style['when']}>{whenTaken(photo)}</span>
            </label>
          </li>
        ))}
      </ul>
      {removing?.length === 1 && removing[0] && (
        <RemoveDialog kind="photo" id={removing[0].id} what={`the photo ${removing[0].originalName}`} onClose={() => setRemoving(null)} />
      )}
      {removing && removing.length > 1 && <RemovePhotosDialog photos={removing} onClose={() => setRemoving(null)} />}
    </section>
  );
}

function whenTaken(photo: Photo): string {
  if (photo.facts.takenAt) return cameraTimeInWords(photo.facts.takenAt);
  return photo.takenOn ? dayInWords(photo.takenOn) : 'no date from the camera';
}
