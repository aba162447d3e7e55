import { scaleLinear } from 'd3-scale';
import { line } from 'd3-shape';
import type { ReactElement } from 'react';
import type { GrowthFit, Rung } from '../../../../domain/growth/rung.ts';
import { instarMark } from '../../../../words/instars.ts';
import { missingSizeInWords, rungMark } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import type { SizePoint } from './measures.ts';
import { PointLayer } from './PointLayer.tsx';
import { type PlacedPoint, placePoint } from './placedPoint.ts';
import { SizeAxis } from './SizeAxis.tsx';
import { FRAME, sizeScale } from './scales.ts';

interface Props {
  rungs: readonly Rung[];
  points: readonly SizePoint[];
  /** Of the measure shown; null where there are too few skins. */
  fit: GrowthFit | null;
  widthPx: number;
  measureLabel: string;
  onAttend: (placed: PlacedPoint | null) => void;
}

/** Size against the instar that the skin shows. Instars without a skin keep their place and stay empty. */
export function InstarPlot({ rungs, points, fit, widthPx, measureLabel, onAttend }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const y = sizeScale(points);
  const x = scaleLinear()
    .domain([-0.5, lastStep + 0.5])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const placed = points.map((point) => placePoint(point, y, { fromPx: x(point.rung.step), toPx: x(point.rung.step) }));
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} aria-hidden="true">
        {gapsOf(rungs, points, lastStep).map((step) => (
          <g key={step}>
            <rect x={x(step - 0.5)} width={x(1) - x(0)} y={FRAME.topPx} height={bottomPx - FRAME.topPx} className={style['gap']} />
            <text x={x(step)} y={bottomPx - 10} textAnchor="middle" className={style['gapWords']}>
              {fitting(
                missingSizeInWords(
                  rungs.find((rung) => rung.step === step),
                  measureLabel,
                ),
                x(1) - x(0),
              )}
            </text>
          </g>
        ))}
        <SizeAxis scale={y} widthPx={widthPx} />
        {ticksOf(rungs, lastStep).map(({ step, words }) => (
          <text key={step} x={x(step)} y={bottomPx + 20} textAnchor="middle" className={style['tick']}>
            {words}
          </text>
        ))}
        <text x={(FRAME.leftPx + widthPx - FRAME.rightPx) / 2} y={FRAME.heightPx - 6} textAnchor="middle" className={style['axis']}>
          instar that ended, as its skin shows it
        </text>
        {fit && <FitLine fit={fit} points={points} x={x} y={y} />}
      </svg>
      <PointLayer placed={placed} widthPx={widthPx} measureLabel={measureLabel} onAttend={onAttend} />
    </>
  );
}

/** Room that a letter of the words takes at most, px. */
const LETTER_PX = 6.6;

function fitting(words: string, columnPx: number): string {
  return words.length * LETTER_PX < columnPx ? words : 'no size';
}

type ToPx = (value: number) => number;

function FitLine({ fit, points, x, y }: { fit: GrowthFit; points: readonly SizePoint[]; x: ToPx; y: ToPx }): ReactElement {
  const steps = points.map(({ rung }) => rung.step);
  const ends = [Math.min(...steps), Math.max(...steps)];
  const path = line<number>()
    .x((step) => x(step))
    .y((step) => y(Math.exp(fit.intercept + fit.slope * step)))(ends);
  return <path d={path ?? ''} className={style['fit']} />;
}

/** Steps between the first and the last at which nothing was measured. */
function gapsOf(rungs: readonly Rung[], points: readonly SizePoint[], lastStep: number): number[] {
  const measured = new Set(points.map(({ rung }) => rung.step));
  const first = rungs[0]?.step ?? 0;
  return Array.from({ length: lastStep - first + 1 }, (_, index) => first + index).filter((step) => !measured.has(step));
}

function ticksOf(rungs: readonly Rung[], lastStep: number): { step: number; words: string }[] {
  return Array.from({ length: lastStep + 1 }, (_, step) => {
    const rung = rungs.find((candidate) => candidate.step === step);
    if (rung) return { step, words: rungMark(rung) };
    const after = rungs.find((candidate) => candidate.step > step);
    return {
      step,
      words: after?.instar && after.stepKnown ? instarMark({ ...after.instar, number: after.instar.number - (after.step - step) }) : '?',
    };
  });
}
