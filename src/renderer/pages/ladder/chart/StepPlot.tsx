import { scaleLinear, scaleLog } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Rung } from '../../../../domain/growth/rung.ts';
import style from './Chart.module.css';
import { InstarAxis } from './InstarAxis.tsx';
import { type Mark, markOf } from './mark.ts';
import { PointLayer } from './PointLayer.tsx';
import { FRAME, logTicks } from './scales.ts';
import type { StepValue } from './stepValues.ts';
import { ValueAxis } from './ValueAxis.tsx';

/** A value that runs across the chart for comparison. */
export interface Yardstick {
  readonly value: number;
  readonly words: string;
  readonly kind: 'own' | 'published';
}

interface Props {
  rungs: readonly Rung[];
  /** At least one. */
  values: readonly StepValue[];
  yardsticks: readonly Yardstick[];
  unit: string;
  /** Ratios stand on an even axis, days on a logarithmic one. */
  axis: 'even' | 'logarithmic';
  label: string;
  widthPx: number;
}

/** Figures that belong to steps, against the instar at whose skin they stand. */
export function StepPlot({ rungs, values, yardsticks, unit, axis, label, widthPx }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const x = scaleLinear()
    .domain([-0.5, lastStep + 0.5])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const lines = yardsticks.map(({ value }) => value);
  // Each label lies outside the space between the lines, so that it is at its own however near they are; at the left, where the
  // first rung has no ratio.
  const highest = Math.max(...lines);
  const lows = [...values.map(({ low }) => low), ...lines];
  const highs = [...values.map(({ high }) => high), ...lines];
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
        <ValueAxis scale={y.at} ticks={y.ticks} unit={unit} widthPx={widthPx} />
        <InstarAxis rungs={rungs} next={false} x={x} widthPx={widthPx} />
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

function yScale(axis: Props['axis'], low: number, high: number): { at: (value: number) => number; ticks: number[] } {
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
