import { scaleUtc } from 'd3-scale';
import type { ReactElement } from 'react';
import type { CalendarDay } from '../../../../domain/dates.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { dayOnAxis } from '../../../../words/dates.ts';
import { missingSizeInWords } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import type { LivePoint } from './livePoints.ts';
import { liveMark, sizeMark } from './mark.ts';
import type { Measure, SizePoint } from './measures.ts';
import { PointLayer } from './PointLayer.tsx';
import { placePoint } from './placedPoint.ts';
import { FRAME, logTicks, sizeScale } from './scales.ts';
import { treadsOf } from './treads.ts';
import { ValueAxis } from './ValueAxis.tsx';

interface Props {
  rungs: readonly Rung[];
  points: readonly SizePoint[];
  /** Those with a date. */
  live: readonly LivePoint[];
  widthPx: number;
  measure: Measure;
  measureLabel: string;
}

/** Size against the calendar: constant within an instar, a step up at each molt. */
export function DatePlot({ rungs, points, live, widthPx, measure, measureLabel }: Props): ReactElement {
  const y = sizeScale([...points, ...live].map(({ estimate }) => estimate));
  const [low = 1, high = 10] = y.domain();
  const liveDays = live.map((point) => ({ point, time: timeOf(point.live.takenOn ?? '') })).filter(({ time }) => Number.isFinite(time));
  const days = [
    ...rungs.flatMap(({ happenedFrom, happenedTo }) => [timeOf(happenedFrom), timeOf(happenedTo)]),
    ...liveDays.map(({ time }) => time),
  ];
  const airMs = Math.max(20 * MS_PER_DAY, (Math.max(...days) - Math.min(...days)) * 0.06);
  const x = scaleUtc()
    .domain([Math.min(...days) - airMs, Math.max(...days) + airMs])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const spanOf = (rung: Rung) => ({ fromPx: x(timeOf(rung.happenedFrom)), toPx: x(timeOf(rung.happenedTo)) });
  const placed = points.map((point) => placePoint(point, y, spanOf(point.rung)));
  const moltPlaces = new Map(rungs.map((rung) => [rung.moltId, (spanOf(rung).fromPx + spanOf(rung).toPx) / 2]));
  const measured = new Set(points.map(({ rung }) => rung.moltId));
  const treads = treadsOf(placed, (moltId) => moltPlaces.get(moltId) ?? FRAME.leftPx);
  const marks = [
    ...placed.map((point) => sizeMark(point, measureLabel)),
    ...liveDays.map(({ point, time }) => liveMark(point, y, x(time), measureLabel)),
  ];
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} aria-hidden="true">
        <ValueAxis scale={y} ticks={logTicks(low, high)} unit="mm" widthPx={widthPx} />
        {x.ticks(Math.max(3, Math.floor(widthPx / 130))).map((day) => (
          <g key={day.getTime()} transform={`translate(${x(day)} 0)`}>
            <line y1={bottomPx} y2={bottomPx + 5} className={style['grid']} />
            <text y={bottomPx + 20} textAnchor="middle" className={style['tick']}>
              {dayOnAxis(day.toISOString().slice(0, 10))}
            </text>
          </g>
        ))}
        {rungs
          .filter(({ moltId }) => !measured.has(moltId))
          .map((rung) => (
            <g key={rung.moltId} transform={`translate(${moltPlaces.get(rung.moltId)} 0)`}>
              <line y1={FRAME.topPx} y2={bottomPx} className={style['unmeasuredMolt']} />
              <text transform={`translate(0 ${bottomPx - 12}) rotate(-90)`} dy="-0.45em" className={style['gapWords']}>
                {missingSizeInWords(rung, measure)}
              </text>
            </g>
          ))}
        {treads.map(({ moltId, fromPx, toPx, yPx, beginUnknown, riseFromPx }) => (
          <g key={moltId}>
            {riseFromPx !== null && <line x1={fromPx} x2={fromPx} y1={riseFromPx} y2={yPx} className={style['riser']} />}
            <line x1={fromPx} x2={toPx} y1={yPx} y2={yPx} className={beginUnknown ? style['stub'] : style['tread']} />
          </g>
        ))}
      </svg>
      <PointLayer marks={marks} widthPx={widthPx} label={measureLabel} />
    </>
  );
}

const MS_PER_DAY = 86_400_000;

function timeOf(day: CalendarDay): number {
  return Date.parse(`${day}T00:00:00Z`);
}
