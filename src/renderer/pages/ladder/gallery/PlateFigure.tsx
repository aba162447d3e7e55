import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { type Photo, RENDITION_LONGEST_PX } from '../../../../domain/photo/photo.ts';
import { addressOf } from '../../../client/ask.ts';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { rungName } from '../../../words/ladder.ts';
import style from './Gallery.module.css';
import { cssTransform, type Plate } from './plate.ts';

interface Props {
  rung: Rung;
  photo: Photo;
  plate: Plate;
  pxPerMm: number;
  /** Carapace middles of all plates stand this far below the top of the row. */
  carapaceLinePx: number;
}

/** One skin, flat and upright at the common scale; leads to the Bench. */
export function PlateFigure({ rung, photo, plate, pxPerMm, carapaceLinePx }: Props): ReactElement {
  const copyPerPhoto = Math.min(1, RENDITION_LONGEST_PX.screen / Math.max(photo.widthPx, photo.heightPx));
  return (
    <li className={style['figure']}>
      <Link to={`/bench/${photo.id}`} className={style['mount'] ?? ''} style={{ marginTop: carapaceLinePx - plate.carapaceAtMm * pxPerMm }}>
        <span className={style['plate']} style={{ width: plate.widthMm * pxPerMm, height: plate.heightMm * pxPerMm }}>
          <img
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
