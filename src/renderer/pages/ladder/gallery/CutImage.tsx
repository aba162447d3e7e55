import { type ReactElement, useState } from 'react';
import { addressOf } from '../../../client/ask.ts';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { useCutState } from './useCuts.tsx';

/** The prepared cut of one skin, filling its plate; says so while it is made or when it cannot be. */
export function CutImage({ entry: { photo, item }, alt }: { entry: PlateEntry; alt: string }): ReactElement {
  const made = useCutState(item);
  const [loaded, setLoaded] = useState<'loading' | 'shown' | 'broken'>('loading');
  const broken = made === 'refused' || loaded === 'broken';
  return (
    <>
      {loaded !== 'shown' && (
        <span className={style['waiting']}>
          <span className="spoken-only">{alt}: </span>
          {broken ? 'The photo cannot be read.' : made === 'stopped' ? 'Stopped before this photo.' : 'Laying the photo flat …'}
        </span>
      )}
      {made === 'ready' && (
        <img
          key={item.cutKey}
          className={loaded === 'shown' ? style['shown'] : style['coming']}
          onLoad={() => setLoaded('shown')}
          onError={() => setLoaded('broken')}
          src={addressOf('GET /api/photos/{photoId}/cuts/{cutKey}', { photoId: photo.id, cutKey: item.cutKey })}
          alt={alt}
          decoding="async"
        />
      )}
    </>
  );
}
