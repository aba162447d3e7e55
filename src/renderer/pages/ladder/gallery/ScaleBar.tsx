import type { ReactElement } from 'react';
import { barLengthMm } from './commonScale.ts';
import style from './Gallery.module.css';

/** Beside the zoom it has room in half of a narrow window too. */
const LONGEST_BAR_PX = 150;

export function ScaleBar({ pxPerMm }: { pxPerMm: number }): ReactElement {
  const lengthMm = barLengthMm(pxPerMm, LONGEST_BAR_PX);
  const lengthPx = lengthMm * pxPerMm;
  return (
    <p className={style['scaleBar']}>
      <svg width={lengthPx + 2} height="12" aria-hidden="true">
        <path d={`M1 1v10M${lengthPx + 1} 1v10M1 6h${lengthPx}`} fill="none" stroke="currentColor" strokeWidth="1.5" />
      </svg>
      <span className="figures">{lengthMm} mm</span>
    </p>
  );
}
