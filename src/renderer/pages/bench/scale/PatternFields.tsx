import type { ReactElement } from 'react';
import { PLAIN_MARKER_CARD } from '../../../../domain/finding/markers/markerCard.ts';
import type { PointsScale } from '../../../../domain/measuring/calibration.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';
import { changeScale } from '../../../bench/deeds/scale.ts';
import { NumberField } from '../NumberField.tsx';
import { PlusMinusField } from '../PlusMinusField.tsx';
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
        {marks.object === 'markers' && (
          <>
            <NumberField
              label="Corner to corner, mm"
              value={spanMm}
              most={5000}
              aboveZero
              onChange={(typedMm) => changeScale(bench, measuredAs(marks, typedMm, spanMm))}
            />
            <PlusMinusField
              label="Known to ± mm"
              standardUncertainty={marks.print.relativeStandardUncertainty * spanMm}
              most={0.4 * spanMm}
              onChange={(uncertaintyMm) => changeScale(bench, knownTo(marks, uncertaintyMm / spanMm))}
            />
          </>
        )}
        <NumberField
          label="Face above the table, mm"
          value={marks.thicknessMm}
          most={100}
          onChange={(thicknessMm) => changeScale(bench, { ...marks, thicknessMm })}
        />
      </div>
      {marks.object === 'markers' && (
        <p className={style['soft']}>
          Corner to corner: the longest way between outer corners of its markers, from one to the one diagonally opposite. On the common
          kind, printed as {PLAIN_MARKER_CARD.sideMm} × {PLAIN_MARKER_CARD.sideMm} mm, it is {COMMON_SPAN_MM.toFixed(1)} mm, which printers
          keep more or less. A length typed in is taken to be known to ± {COVERAGE_FACTOR * TYPED_STANDARD_UNCERTAINTY_MM} mm until you say
          otherwise.
        </p>
      )}
      {marks.object === 'scale-card' && <PrintedCard marks={marks} onChange={(changed) => changeScale(bench, changed)} />}
    </>
  );
}

/** The markers' outer corners keep their margin from the edges of the card. */
const COMMON_SPAN_MM = Math.SQRT2 * (PLAIN_MARKER_CARD.sideMm - 2 * PLAIN_MARKER_CARD.marginMm);

function longestSpanMm({ points }: PointsScale): number {
  return Math.max(...points.flatMap((one) => points.map((other) => Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm))));
}

/** Of a length read with a rule or a caliper from corner to corner of printed markers. Own judgment. */
const TYPED_STANDARD_UNCERTAINTY_MM = 0.15;

/** Whoever types a length has measured it: what was assumed of the size no longer counts. */
function measuredAs(marks: PointsScale, typedMm: number, spanMm: number): PointsScale {
  const share = Math.min(marks.print.relativeStandardUncertainty, TYPED_STANDARD_UNCERTAINTY_MM / typedMm);
  return knownTo(enlarged(marks, typedMm / spanMm), share);
}

function knownTo(marks: PointsScale, relativeStandardUncertainty: number): PointsScale {
  return { ...marks, print: { ...marks.print, relativeStandardUncertainty } };
}

function enlarged(marks: PointsScale, factor: number): PointsScale {
  return { ...marks, points: marks.points.map((point) => ({ ...point, xMm: factor * point.xMm, yMm: factor * point.yMm })) };
}
