import type { ReactElement } from 'react';
import style from './Chart.module.css';

interface Props {
  xPx: number;
  /** y grows downwards: the higher value is the smaller number. */
  ends: Readonly<Record<'low90' | 'low50' | 'middle' | 'high50' | 'high90', number>>;
}

const HALF_PX = 7;

/** What is foretold, upright: nine chances in ten light, even chances darker, a stroke at the middle. */
export function ForetoldBar({ xPx, ends: { low90, low50, middle, high50, high90 } }: Props): ReactElement {
  const bar = (high: number, low: number) => ({ x: xPx - HALF_PX, width: 2 * HALF_PX, y: high, height: Math.max(1, low - high) });
  return (
    <g>
      <rect {...bar(high90, low90)} className={style['foretold90']} />
      <rect {...bar(high50, low50)} className={style['foretold50']} />
      <line x1={xPx - HALF_PX - 3} x2={xPx + HALF_PX + 3} y1={middle} y2={middle} className={style['foretoldMiddle']} />
    </g>
  );
}
