import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../domain/photo/photo.ts';
import { counted, listed } from '../../../words/counts.ts';
import { dayInWords } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import type { Made } from './assigning.ts';
import style from './PlacedList.module.css';

/** Photos given away together: whose they are now, and whether they show a skin. */
export interface Placed {
  readonly photos: readonly Photo[];
  readonly specimenId: string;
  readonly code: string;
  readonly skin: boolean;
  /** The molt or skin that was made for them. */
  readonly made: Made | null;
}

interface Props {
  placed: readonly Placed[];
  onTakeBack: (placed: Placed) => void;
}

/** "dorsal.jpg (8 Feb 2025)" */
function fileInWords({ originalName, takenOn }: Photo): string {
  return takenOn === null ? originalName : `${originalName} (${dayInWords(takenOn)})`;
}

/** What has just been given to somebody, newest first, each with the way on, to the Bench or to the animal, and the way back. */
export function PlacedList({ placed, onTakeBack }: Props): ReactElement {
  return (
    <section className={style['placed']} aria-labelledby="placed">
      <h2 id="placed">Just put away</h2>
      <ul className={style['list']}>
        {placed.map((one, place) => (
          <li key={one.photos[0]?.id} className={style['item']}>
            <Thumb photoId={one.photos[0]?.id ?? null} alt="" className={style['thumb']} />
            <span className={style['words']}>
              {counted(one.photos.length, 'photo')} {one.skin ? 'of a skin of' : 'of'}{' '}
              <Link to={`/specimens/${one.specimenId}`}>{one.code}</Link>
              <span className={style['files']}>{one.photos.map(fileInWords).join(', ')}</span>
            </span>
            {one.skin && one.photos[0] && (
              <ButtonLink to={`/bench/${one.photos[0].id}`} kind={place === 0 ? 'primary' : 'plain'} icon="measure">
                Measure it on the Bench
              </ButtonLink>
            )}
            <Button
              kind="quiet"
              icon="undo"
              aria-label={`Take back ${listed(one.photos.map(({ originalName }) => originalName))} from ${one.code}`}
              onClick={() => onTakeBack(one)}
            >
              Take back
            </Button>
          </li>
        ))}
      </ul>
    </section>
  );
}
