import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { type Photo, RENDITION_LONGEST_PX } from '../../../../domain/photo/photo.ts';
import { rungName } from '../../../../words/ladder.ts';
import { addressOf } from '../../../client/ask.ts';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { NARROWEST_FIGURE_PX, type RowRoom } from './commonScale.ts';
import style from './Gallery.module.css';
import { cssTransform, type Plate } from './plate.ts';

interface Props {
  rung: Rung;
  photo: Photo;
  plate: Plate;
  pxPerMm: number;
  room: RowRoom;
}

/** One skin, flat and upright at the common scale; leads to the Bench. */
export function PlateFigure({ rung, photo, plate, pxPerMm, room }: Props): ReactElement {
  const copyPerPhoto = Math.min(1, RENDITION_LONGEST_PX.screen / Math.max(photo.widthPx, photo.heightPx));
  const widthPx = plate.widthMm * pxPerMm;
  const [state, setState] = useState<'loading' | 'shown' | 'broken'>('loading');
  return (
    <li className={style['figure']} style={{ width: Math.max(NARROWEST_FIGURE_PX, widthPx) }}>
      <div className={style['stand']} style={{ height: room.heightPx, paddingTop: room.carapaceLinePx - plate.carapaceAtMm * pxPerMm }}>
        <Link to={`/bench/${photo.id}`} className={style['mount'] ?? ''}>
          <span className={style['plate']} style={{ width: widthPx, height: plate.heightMm * pxPerMm }}>
            <span className={style['waiting']} aria-hidden={state !== 'broken'}>
              {state === 'broken' ? 'The photo cannot be read.' : 'Laying the photo flat …'}
            </span>
            <img
              className={state === 'shown' ? style['shown'] : style['coming']}
              onLoad={() => setState('shown')}
              onError={() => setState('broken')}
              src={addressOf('GET /api/photos/{photoId}/renditions/{kind}', { photoId: photo.id, kind: 'screen' })}
              alt={`Skin of ${rungName(rung).toLowerCase()}, at the common scale. Open on the Bench`}
              decoding="async"
              style={{
                width: photo.widthPx * copyPerPhoto,
                height: photo.heightPx * copyPerPhoto,
                transform: cssTransform(plate.toPlateMm, pxPerMm, copyPerPhoto),
              }}
            />
          </span>
        </Link>
      </div>
      <p className={style['caption']}>
        <strong>{rungName(rung)}</strong>
        <span>
          shed <DayText day={rung.happenedFrom} to={rung.happenedTo} />
        </span>
        {rung.carapaceLengthMm && <EstimateText estimate={rung.carapaceLengthMm} />}
        {!plate.turned && <span>not turned: carapace not marked</span>}
      </p>
    </li>
  );
}
