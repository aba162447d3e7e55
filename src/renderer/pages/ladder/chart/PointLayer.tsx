import type { ReactElement } from 'react';
import style from './Chart.module.css';
import { PointMark } from './PointMark.tsx';
import type { PlacedPoint } from './placedPoint.ts';
import { FRAME } from './scales.ts';

interface Props {
  placed: readonly PlacedPoint[];
  widthPx: number;
  measureLabel: string;
  onAttend: (placed: PlacedPoint | null) => void;
}

/** The measured skins over the drawing of axes and lines; the only part of the chart that is spoken and reached by keys. */
export function PointLayer({ placed, widthPx, measureLabel, onAttend }: Props): ReactElement {
  return (
    <svg width={widthPx} height={FRAME.heightPx} className={style['points']} aria-label={`${measureLabel}, oldest first`}>
      {placed.map((mark) => (
        <PointMark key={mark.point.rung.moltId} placed={mark} measureLabel={measureLabel} onAttend={onAttend} />
      ))}
    </svg>
  );
}
