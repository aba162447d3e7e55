import type { ReactElement } from 'react';
import { KNOWN_RECTANGLES } from '../../../../domain/measuring/knownRectangles.ts';
import style from './RoundCorners.module.css';

/** Why the handles of a card lie beside its corners: where its straight edges would meet. */
export function RoundCorners(): ReactElement {
  return (
    <figure className={style['figure']}>
      <svg viewBox="0 0 96 72" width="96" height="72" aria-hidden="true">
        <path className={style['card']} d="M92 26H44a18 18 0 0 0-18 18v26" />
        <path className={style['edge']} d="M92 26H6M26 70V6" />
        <circle className={style['corner']} cx="26" cy="26" r="5" />
      </svg>
      <figcaption>
        The corners of a card are round ({KNOWN_RECTANGLES['id-1'].cornerRadiusMm} mm). Put each handle where the straight edges would meet,
        outside the rounding: lay the thin lines along the edges and the dashed outline along the rim.
      </figcaption>
    </figure>
  );
}
