import type { ReactElement } from 'react';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { NumberField } from '../NumberField.tsx';
import style from '../panel.module.css';
import { useWork } from '../useWork.ts';
import { PrintedCard } from './PrintedCard.tsx';

/** How large a printed pattern is, and how high its face lies. */
export function PatternFields({ marks }: { marks: PointsScale }): ReactElement {
  const { bench } = useWork();
  const spanMm = longestSpanMm(marks);
  return (
    <>
      <div className={style['pair']}>
        <NumberField
          label="Face above the table, mm"
          value={marks.thicknessMm}
          most={100}
          onChange={(thicknessMm) => changeScale(bench, { ...marks, thicknessMm })}
        />
        {marks.object === 'markers' && (
          <NumberField
            label="Between its outermost points, mm"
            value={spanMm}
            most={5000}
            aboveZero
            onChange={(typedMm) => changeScale(bench, enlarged(marks, typedMm / spanMm))}
          />
        )}
      </div>
      {marks.object === 'scale-card' && <PrintedCard marks={marks} onChange={(changed) => changeScale(bench, changed)} />}
    </>
  );
}

function longestSpanMm({ points }: PointsScale): number {
  return Math.max(...points.flatMap((one) => points.map((other) => Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm))));
}

function enlarged(marks: PointsScale, factor: number): PointsScale {
  return { ...marks, points: marks.points.map((point) => ({ ...point, xMm: factor * point.xMm, yMm: factor * point.yMm })) };
}
