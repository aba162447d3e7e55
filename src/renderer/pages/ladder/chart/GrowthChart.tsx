import { type ReactElement, useState } from 'react';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import { rungName } from '../../../../words/ladder.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import { DayText } from '../../../parts/DayText.tsx';
import { EstimateText } from '../../../parts/EstimateText.tsx';
import { useElementWidth } from '../useElementWidth.ts';
import style from './Chart.module.css';
import { Choice } from './Choice.tsx';
import { DatePlot } from './DatePlot.tsx';
import { InstarPlot } from './InstarPlot.tsx';
import { fitOf, type Measure, pointsOf } from './measures.ts';
import type { PlacedPoint } from './placedPoint.ts';

const AXES = [
  { value: 'instar', label: 'By instar' },
  { value: 'date', label: 'By date' },
] as const;

interface Props {
  ladder: Ladder;
  /** Those that can be chosen. */
  measures: readonly Measure[];
  measure: Measure;
  onMeasure: (measure: Measure) => void;
}

/** The sizes of one animal on a logarithmic axis. Everything in it also stands in the table below. */
export function GrowthChart({ ladder, measures, measure, onMeasure }: Props): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const [axis, setAxis] = useState<(typeof AXES)[number]['value']>('instar');
  const [attended, setAttended] = useState<PlacedPoint | null>(null);
  const measureLabel = SIZE_LABELS[measure];
  const fit = axis === 'instar' ? fitOf(ladder, measure) : null;
  const shared = { rungs: ladder.rungs, points: pointsOf(ladder, measure), widthPx, measureLabel, onAttend: setAttended };
  return (
    <figure className={style['chart']}>
      <div className={style['choices']}>
        <Choice
          legend="Size"
          value={measure}
          options={measures.map((value) => ({ value, label: SIZE_LABELS[value] }))}
          onChange={onMeasure}
        />
        <Choice legend="Along" value={axis} options={AXES} onChange={setAxis} />
      </div>
      <div ref={ref} className={style['canvas']}>
        {widthPx > 0 && (axis === 'instar' ? <InstarPlot {...shared} fit={fit} /> : <DatePlot {...shared} />)}
        {attended && <PointNote placed={attended} widthPx={widthPx} />}
      </div>
      <figcaption className={style['legend']}>
        {legendInWords(axis, {
          fitted: fit !== null,
          unmeasured: ladder.rungs.some((rung) => rung[measure] === null),
          skipped: ladder.rungs.slice(1).some(({ skippedInstars }) => skippedInstars > 0),
          counted: ladder.rungs.some(({ instar }) => instar?.certainty === 'inferred'),
        })}
      </figcaption>
    </figure>
  );
}

/** What a point says while it is pointed at or has the focus. Its link carries the same words for screen readers. */
function PointNote({ placed, widthPx }: { placed: PlacedPoint; widthPx: number }): ReactElement {
  const { rung, estimate } = placed.point;
  const toTheLeft = placed.xPx > widthPx - 220;
  return (
    <div
      className={`${style['note']} ${toTheLeft ? style['toTheLeft'] : ''}`}
      style={{ left: placed.xPx, top: placed.yPx }}
      aria-hidden="true"
    >
      <strong>{rungName(rung)}</strong>
      <EstimateText estimate={estimate} />
      <span className={style['noteDate']}>
        shed <DayText day={rung.happenedFrom} to={rung.happenedTo} />
      </span>
      {rung.ratio && placed.point.estimate === rung.carapaceLengthMm && (
        <span>
          ratio <EstimateText estimate={rung.ratio} unit="1" />
        </span>
      )}
    </div>
  );
}

/** What the signs in the drawing mean: those that are there. */
function legendInWords(axis: 'instar' | 'date', has: { fitted: boolean; unmeasured: boolean; skipped: boolean; counted: boolean }): string {
  if (axis === 'instar') {
    return [
      'Each point is one skin and stands at the instar that ended; its bar is ± U (95 %). Equal steps upwards are equal ratios.',
      has.fitted && 'The dashed line is the fitted growth; it fills no gap.',
      (has.unmeasured || has.skipped) && 'A shaded column has no such size on record.',
      has.counted && 'A number with a question mark holds if no molt was missed.',
    ]
      .filter(Boolean)
      .join(' ');
  }
  return [
    'Each point stands on the day of the molt; the line before it is the life of the instar that ended then, at the size its skin shows.',
    'A dotted line: when that instar began is not on record.',
    has.unmeasured && 'A dashed upright is a molt without this size.',
    'What came after the last molt is larger and not measured yet.',
  ]
    .filter(Boolean)
    .join(' ');
}
