import type { ScaleLogarithmic } from 'd3-scale';
import type { ReactElement } from 'react';
import style from './Chart.module.css';
import { FRAME, logTicks } from './scales.ts';

/** Logarithmic axis at the left, with a hairline across at each figure. */
export function SizeAxis({ scale, widthPx }: { scale: ScaleLogarithmic<number, number>; widthPx: number }): ReactElement {
  const [low = 1, high = 10] = scale.domain();
  return (
    <g>
      {logTicks(low, high).map((tick) => (
        <g key={tick} transform={`translate(0 ${scale(tick)})`}>
          <line x1={FRAME.leftPx} x2={widthPx - FRAME.rightPx} className={style['grid']} />
          <text x={FRAME.leftPx - 10} dy="0.32em" textAnchor="end" className={style['tick']}>
            {tick}
          </text>
        </g>
      ))}
      <text x={FRAME.leftPx - 10} y={FRAME.topPx - 6} textAnchor="end" className={style['axis']}>
        mm
      </text>
    </g>
  );
}
