import { memo, type ReactElement } from 'react';
import { Link } from 'wouter';
import { rungMark, rungName } from '../../../../words/ladder.ts';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { useLit } from '../lit.tsx';
import { CutImage } from './CutImage.tsx';
import { type RowRoom, scaled } from './commonScale.ts';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';

/** One skin, flat and upright at the common scale; leads to the Bench. */
export const PlateFigure = memo(function PlateFigure({ entry, room }: { entry: PlateEntry; room: RowRoom }): ReactElement {
  const { rung, photo, plate } = entry;
  const name = rungName(rung).toLowerCase();
  const { isLit, handlers } = useLit(rung.moltId);
  return (
    <li
      className={`${style['figure']} ${isLit ? style['lit'] : ''}`}
      style={{ width: `max(var(--narrowest), ${scaled(plate.widthMm)})` }}
      data-molt={rung.moltId}
      {...handlers}
    >
      <div
        className={style['stand']}
        style={{ height: scaled(room.heightMm), paddingTop: scaled(room.carapaceLineMm - plate.carapaceAtMm) }}
      >
        <Link to={`/bench/${photo.id}`} className={style['mount'] ?? ''}>
          <span className="spoken-only">Open on the Bench:</span>
          <span className={style['plate']} style={{ width: scaled(plate.widthMm), height: scaled(plate.heightMm) }}>
            <CutImage entry={entry} alt={`Skin of ${name}, at the common scale`} />
          </span>
        </Link>
      </div>
      <p className={style['caption']}>
        <strong>
          <span className={style['whole']}>{rungName(rung)}</span>
          <span className={style['mark']} aria-hidden="true">
            {rungMark(rung)}
          </span>
        </strong>
        <span className={style['fact']}>
          shed <DayText day={rung.happenedFrom} to={rung.happenedTo} />
        </span>
        {rung.carapaceLengthMm && (
          <span className={style['fact']}>
            <EstimateText estimate={rung.carapaceLengthMm} />
          </span>
        )}
        {!plate.turned && <span className={style['fact']}>not turned: carapace not marked</span>}
      </p>
    </li>
  );
});
