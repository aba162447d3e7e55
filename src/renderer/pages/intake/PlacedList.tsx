import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../domain/photo/photo.ts';
import { counted, listed } from '../../../words/counts.ts';
import { dayInWords } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { bringIntoView } from '../../parts/bringIntoView.ts';
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

/** What has just been given to somebody: the newest in sight with the way on, to the Bench or to the animal, and the way back; those before it folded. */
export function PlacedList({ placed, onTakeBack }: Props): ReactElement | null {
  const [newest, ...earlier] = placed;
  if (newest === undefined) return null;
  return (
    <section className={style['placed']} aria-labelledby="placed">
      <h2 id="placed">Just put away</h2>
      {/* The key lets each that is new come into sight. */}
      <div key={newest.photos[0]?.id} ref={bringIntoView}>
        <Item one={newest} kind="primary" onTakeBack={onTakeBack} />
      </div>
      {earlier.length > 0 && (
        <details>
          <summary className={style['earlier']}>{earlier.length} put away before</summary>
          <ul>
            {earlier.map((one) => (
              <li key={one.photos[0]?.id}>
                <Item one={one} kind="plain" onTakeBack={onTakeBack} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}

interface ItemProps {
  one: Placed;
  kind: 'primary' | 'plain';
  onTakeBack: (placed: Placed) => void;
}

function Item({ one, kind, onTakeBack }: ItemProps): ReactElement {
  return (
    <div className={style['item']}>
      <Thumb photoId={one.photos[0]?.id ?? null} alt="" className={style['thumb']} />
      <span className={style['words']}>
        {counted(one.photos.length, 'photo')} {one.skin ? 'of a skin of' : 'of'} <Link to={`/specimens/${one.specimenId}`}>{one.code}</Link>
        <span className={style['files']}>{one.photos.map(fileInWords).join(', ')}</span>
      </span>
      {one.skin && one.photos[0] && (
        <ButtonLink to={`/bench/${one.photos[0].id}`} kind={kind} icon="measure">
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
    </div>
  );
}
