import type { ReactElement } from 'react';
import { instarOfAnimalPhoto } from '../../../domain/molting/instars.ts';
import type { Molt } from '../../../domain/molting/molt.ts';
import type { Photo } from '../../../domain/photo/photo.ts';
import type { Specimen } from '../../../domain/specimen/specimen.ts';
import { instarSpanInWords } from '../../../words/instars.ts';
import { PhotoStrip } from './PhotoStrip.tsx';
import style from './SpecimenPage.module.css';

interface Props {
  photos: readonly Photo[];
  specimen: Specimen;
  molts: readonly Molt[];
}

/** Photos of the animal itself, under the instar it was in on the day: after a molt that is the next one, unlike the skin. */
export function AnimalPhotos({ photos, specimen, molts }: Props): ReactElement | null {
  if (photos.length === 0) return null;
  const groups = Map.groupBy(photos, (photo) => instarWords(photo, specimen, molts));
  return (
    <section aria-labelledby="animal-photos">
      <h2 id="animal-photos" className={style['heading']}>
        The animal itself
      </h2>
      {[...groups].map(([words, group]) => (
        <div key={words} className={style['group']}>
          <h3>{words}</h3>
          <PhotoStrip photos={group} intakePath={`/intake/${specimen.id}`} />
        </div>
      ))}
    </section>
  );
}

function instarWords(photo: Photo, specimen: Specimen, molts: readonly Molt[]): string {
  const span = photo.takenOn === null ? null : instarOfAnimalPhoto(photo.takenOn, molts, specimen);
  return span ? `In ${instarSpanInWords(span)}` : 'Instar unknown';
}
