import type { ReactElement } from 'react';
import style from './Chart.module.css';
import { FRAME } from './scales.ts';

interface Props {
  scale: (value: number) => number;
  ticks: readonly number[];
  unit: string;
  axis: Axis;
  widthPx: number;
}

/** On a logarithmic one equal steps are equal ratios, which it says itself: a line that bends there would be straight here. */
export type Axis = 'even' | 'logarithmic';

/** The axis at the left, with a hairline across at each figure. */
export function ValueAxis({ scale, ticks, unit, axis, widthPx }: Props): ReactElement {
  return (
    <g>
      {ticks.map((tick) => (
        <g key={tick} transform={`translate(0 ${scale(tick)})`}>
          <line x1={FRAME.leftPx} x2={widthPx - FRAME.rightPx} className={style['grid']} />
          <text x={FRAME.leftPx - 10} dy="0.32em" textAnchor="end" className={style['tick']}>
            {tick}
          </text>
        </g>
      ))}
      <text y={FRAME.topPx - 6} className={style['axis']}>
        {axis === 'logarithmic' ? `${unit}, logarithmic` : unit}
      </text>
    </g>
  );
}
