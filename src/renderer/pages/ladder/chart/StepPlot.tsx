import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Rung } from '../../../../domain/growth/rung.ts';
import style from './Chart.module.css';
import { ForetoldBar } from './ForetoldBar.tsx';
import { InstarAxis } from './InstarAxis.tsx';
import { type LivingNow, livingTick, type RunningInterval } from './livingNow.ts';
import { type Mark, markOf } from './mark.ts';
import { PointLayer } from './PointLayer.tsx';
import { FRAME, logTicks } from './scales.ts';
import type { StepValue } from './stepValues.ts';
import { type Axis, ValueAxis } from './ValueAxis.tsx';

/** A value that runs across the chart for comparison. */
export interface Yardstick {
  readonly value: number;
  readonly words: string;
  readonly kind: 'own' | 'published';
}

interface Props {
  rungs: readonly Rung[];
  /** At least one, unless an interval runs. */
  values: readonly StepValue[];
  yardsticks: readonly Yardstick[];
  unit: string;
  /** Ratios stand on an even axis, days on a logarithmic one. */
  axis: Axis;
  label: string;
  widthPx: number;
  /** The instar that has not ended, after the last rung; left out where its figure is no part of the drawing. */
  running?: { readonly living: LivingNow; readonly interval: RunningInterval } | null;
}

/** Figures that belong to steps, against the instar at whose skin they stand. */
export function StepPlot({ rungs, values, yardsticks, unit, axis, label, widthPx, running = null }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const x = scaleLinear()
    .domain([-0.5, lastStep + (running ? 1.5 : 0.5)])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const lines = yardsticks.map(({ value }) => value);
  // Each label lies outside the space between the lines, so that it is at its own however near they are; at the left, where the
  // first rung has no ratio.
  const highest = Math.max(...lines);
  const open = running ? [Math.max(0.5, running.interval.waited.from), running.interval.waited.to] : [];
  const ahead = running?.interval.foretold ? [running.interval.foretold.low90, running.interval.foretold.high90] : [];
  const lows = [...values.map(({ low }) => low), ...lines, ...open, ...ahead];
  const highs = [...values.map(({ high }) => high), ...lines, ...open, ...ahead];
  const y = yScale(axis, Math.min(...lows), Math.max(...highs));
  const marks = values.map(({ rung, value, low, high, hollow, lines: words, spoken }) => {
    const xPx = x(rung.step);
    const shape = hollow ? 'hollow' : 'dot';
    return {
      ...markOf(rung),
      ...{ xPx, yPx: y.at(value), highPx: y.at(high), lowPx: y.at(low), fromPx: xPx, toPx: xPx, shape, lines: words, spoken },
    } satisfies Mark;
  });
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} aria-hidden="true">
        <ValueAxis scale={y.at} ticks={y.ticks} unit={unit} axis={axis} widthPx={widthPx} />
        <InstarAxis rungs={rungs} after={running ? livingTick(running.living) : null} x={x} widthPx={widthPx} />
        {running && <Running interval={running.interval} xPx={x(lastStep + 1)} y={y.at} />}
        {yardsticks.map(({ value, words, kind }) => (
          <g key={words} transform={`translate(0 ${y.at(value)})`}>
            <line x1={FRAME.leftPx} x2={widthPx - FRAME.rightPx} className={kind === 'own' ? style['fit'] : style['published']} />
            <text x={FRAME.leftPx + 4} y={value === highest ? -6 : 15} className={style['axis']}>
              {words}
            </text>
          </g>
        ))}
      </svg>
      <PointLayer marks={marks} widthPx={widthPx} label={label} />
    </>
  );
}

/** An arrow from the days that have gone by upwards, for they go on, and where the forecast has their end. */
function Running({ interval, xPx, y }: { interval: RunningInterval; xPx: number; y: (days: number) => number }): ReactElement {
  const { waited, foretold } = interval;
  const fromPx = y(Math.max(0.5, (waited.from + waited.to) / 2));
  return (
    <g>
      {foretold && (
        <ForetoldBar
          xPx={xPx}
          ends={{
            low90: y(foretold.low90),
            low50: y(foretold.low50),
            middle: y(foretold.middle),
            high50: y(foretold.high50),
            high90: y(foretold.high90),
          }}
        />
      )}
      <path d={`M${xPx - 9} ${fromPx}h18M${xPx} ${fromPx}v-20m-5 7l5 -7l5 7`} className={style['running']} />
    </g>
  );
}

function yScale(axis: Axis, low: number, high: number): { at: (value: number) => number; ticks: number[] } {
  const range = [FRAME.heightPx - FRAME.bottomPx, FRAME.topPx];
  if (axis === 'logarithmic') {
    const domain: [number, number] = [low / 1.15, high * 1.15];
    const scale = scaleLog().domain(domain).range(range);
    return { at: (value) => scale(value), ticks: logTicks(...domain) };
  }
  const air = Math.max(0.02, 0.1 * (high - low));
  const scale = scaleLinear()
    .domain([low - air, high + air])
    .range(range);
  return { at: (value) => scale(value), ticks: scale.ticks(6) };
}
