import { scaleUtc } from 'd3-scale';
import type { ReactElement } from 'react';
import type { CalendarDay } from '../../../../domain/dates.ts';
import type { Rung } from '../../../../domain/growth/rung.ts';
import { dayOnAxis } from '../../../../words/dates.ts';
import { missingSizeInWords } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import type { LivePoint } from './livePoints.ts';
import { foretoldIn, type LivingNow } from './livingNow.ts';
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
  /** Up to which the drawing reaches; null where the animal is not kept any more. */
  today: CalendarDay | null;
  /** Null where it is not known which instar lives now: after a molt that is not on record. */
  living: LivingNow | null;
  widthPx: number;
  measure: Measure;
  measureLabel: string;
}

/** Size against the calendar: constant within an instar, a step up at each molt; the instar that lives now is open. */
export function DatePlot({ rungs, points, live, today, living, widthPx, measure, measureLabel }: Props): ReactElement {
  const foretold = foretoldIn(living, measure);
  const y = sizeScale(
    [...points, ...live].map(({ estimate }) => estimate),
    foretold ? [foretold.low90Mm, foretold.high90Mm] : [],
  );
  const [low = 1, high = 10] = y.domain();
  const liveDays = live.map((point) => ({ point, time: timeOf(point.live.takenOn ?? '') })).filter(({ time }) => Number.isFinite(time));
  const days = [
    ...rungs.flatMap(({ happenedFrom, happenedTo }) => [timeOf(happenedFrom), timeOf(happenedTo)]),
    ...liveDays.map(({ time }) => time),
    ...(today ? [timeOf(today)] : []),
  ];
  const [firstDay, lastDay] = [Math.min(...days), Math.max(...days)];
  const airMs = Math.max(20 * MS_PER_DAY, (lastDay - firstDay) * 0.06);
  // What may come takes at most as much room as what was.
  const dueTo = living?.due ? Math.min(timeOf(living.due.window90.to), lastDay + (lastDay - firstDay) + airMs) : lastDay;
  const x = scaleUtc()
    .domain([firstDay - airMs, Math.max(lastDay, dueTo) + airMs])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const rightPx = widthPx - FRAME.rightPx;
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
        <ValueAxis scale={y} ticks={logTicks(low, high)} unit="mm" axis="logarithmic" widthPx={widthPx} />
        {living?.due && (
          <>
            <Window from={living.due.window90.from} to={living.due.window90.to} look="foretold90" x={x} rightPx={rightPx} />
            <Window from={living.due.window50.from} to={living.due.window50.to} look="foretold50" x={x} rightPx={rightPx} />
          </>
        )}
        {today && (
          <Running
            fromPx={Math.max(...[...moltPlaces.values()])}
            todayPx={x(timeOf(today))}
            size={foretold && { highPx: y(foretold.high90Mm), middlePx: y(foretold.middleMm), lowPx: y(foretold.low90Mm) }}
          />
        )}
        {x.ticks(Math.max(3, Math.floor(widthPx / 90))).map((day) => (
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

interface WindowProps {
  readonly from: CalendarDay;
  readonly to: CalendarDay;
  readonly look: 'foretold90' | 'foretold50';
  readonly x: (time: number) => number;
  readonly rightPx: number;
}

/** Days within which the next molt is foretold, cut off where the drawing ends. */
function Window({ from, to, look, x, rightPx }: WindowProps): ReactElement {
  const fromPx = Math.min(x(timeOf(from)), rightPx);
  const widthPx = Math.max(1, Math.min(x(timeOf(to)), rightPx) - fromPx);
  return <rect x={fromPx} width={widthPx} y={WINDOW_TOP_PX} height={WINDOW_PX} className={style[look]} />;
}

/** A strip along the foot of the drawing: a window of days has no size. */
const WINDOW_PX = 12;
const WINDOW_TOP_PX = FRAME.heightPx - FRAME.bottomPx - WINDOW_PX;

interface RunningProps {
  readonly fromPx: number;
  readonly todayPx: number;
  readonly size: { readonly highPx: number; readonly middlePx: number; readonly lowPx: number } | null;
}

/** From the last molt to today, at the size foretold of the instar that lives now where there is one. */
function Running({ fromPx, todayPx, size }: RunningProps): ReactElement {
  return (
    <g>
      {size && todayPx > fromPx && (
        <>
          <rect x={fromPx} width={todayPx - fromPx} y={size.highPx} height={size.lowPx - size.highPx} className={style['foretold90']} />
          <line x1={fromPx} x2={todayPx} y1={size.middlePx} y2={size.middlePx} className={style['foretoldMiddle']} />
        </>
      )}
      <line x1={todayPx} x2={todayPx} y1={FRAME.topPx} y2={FRAME.heightPx - FRAME.bottomPx} className={style['today']} />
      <text x={todayPx} y={FRAME.topPx - 5} textAnchor="middle" className={style['livingTick']}>
        today
      </text>
    </g>
  );
}

const MS_PER_DAY = 86_400_000;

function timeOf(day: CalendarDay): number {
  return Date.parse(`${day}T00:00:00Z`);
}
