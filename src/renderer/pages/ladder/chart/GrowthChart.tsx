import { type ReactElement, useRef, useState } from 'react';
import type { CalendarDay } from '../../../../domain/dates.ts';
import type { GrowthReport } from '../../../../domain/growth/growthReport.ts';
import type { Ladder } from '../../../../domain/growth/rung.ts';
import { SIZE_LABELS } from '../../../../words/quantities.ts';
import { useElementWidth } from '../useElementWidth.ts';
import style from './Chart.module.css';
import { ChartExport } from './ChartExport.tsx';
import { Choice } from './Choice.tsx';
import { DRAWINGS, type Drawing, drawingOf } from './drawing.tsx';
import { ladderRows, type Subject } from './ladderCsv.ts';
import type { LivingNow } from './livingNow.ts';
import type { Measure } from './measures.ts';

interface Props {
  ladder: Ladder;
  growth: GrowthReport;
  /** Named in the files that leave. */
  subject: Subject;
  /** Null where the animal is not kept any more. */
  today: CalendarDay | null;
  living: LivingNow | null;
  /** Those that can be chosen; without any, the intervals are all there is to draw. */
  measures: readonly Measure[];
  measure: Measure;
  onMeasure: (measure: Measure) => void;
}

/** The growth of one animal, drawn one of four ways. Everything in it also stands in the table below. */
export function GrowthChart({ ladder, growth, subject, today, living, measures, measure, onMeasure }: Props): ReactElement {
  const { ref, widthPx } = useElementWidth<HTMLDivElement>();
  const [drawing, setDrawing] = useState<Drawing>(measures.length > 0 ? 'instar' : 'interval');
  const canvas = useRef<HTMLDivElement>(null);
  const { plot, legend, title } = drawingOf(drawing, { ladder, growth, measure, widthPx, today, living });
  return (
    <figure className={style['chart']}>
      <div className={style['choices']}>
        {measures.length > 0 && <Choice legend="Show" value={drawing} options={DRAWINGS} onChange={setDrawing} />}
        {measures.length > 1 && drawing !== 'interval' && (
          <Choice
            legend="Of"
            value={measure}
            options={measures.map((value) => ({ value, label: SIZE_LABELS[value] }))}
            onChange={onMeasure}
          />
        )}
      </div>
      <div ref={ref}>
        <div ref={canvas} className={style['canvas']}>
          {widthPx > 0 && (plot ?? <p className={style['nothing']}>{legend}</p>)}
        </div>
      </div>
      {plot && <figcaption className={style['legend']}>{legend}</figcaption>}
      <ChartExport
        canvas={plot === null ? null : canvas}
        subject={subject}
        title={title}
        legend={legend}
        figuresName="figures"
        rows={() => ladderRows(subject, ladder, { live: growth.live, measures })}
      />
    </figure>
  );
}
