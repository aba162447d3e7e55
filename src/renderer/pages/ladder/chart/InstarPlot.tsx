import { scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Rung } from '../../../../domain/growth/rung.ts';
import type { Bands } from '../../../../domain/growth/trend/bands.ts';
import { missingSizeInWords } from '../../../../words/ladder.ts';
import { BandLayer } from './BandLayer.tsx';
import style from './Chart.module.css';
import { ForetoldBar } from './ForetoldBar.tsx';
import { InstarAxis } from './InstarAxis.tsx';
import type { LivePoint } from './livePoints.ts';
import { foretoldIn, type LivingNow, livingTick } from './livingNow.ts';
import { liveMark, sizeMark } from './mark.ts';
import type { Measure, SizePoint } from './measures.ts';
import { PointLayer } from './PointLayer.tsx';
import { placePoint } from './placedPoint.ts';
import { bandRoom, FRAME, logTicks, sizeScale } from './scales.ts';
import { ValueAxis } from './ValueAxis.tsx';

interface Props {
  rungs: readonly Rung[];
  points: readonly SizePoint[];
  /** Whose place in the row is known. */
  live: readonly LivePoint[];
  /** Of the measure shown, up to the last rung; null where there are too few skins. */
  bands: Bands | null;
  /** Null where the animal is not kept any more. */
  living: LivingNow | null;
  widthPx: number;
  measure: Measure;
  measureLabel: string;
}

/** Size against the instar that the skin shows. Instars without a skin keep their place and stay empty. */
export function InstarPlot({ rungs, points, live, bands, living, widthPx, measure, measureLabel }: Props): ReactElement {
  const lastStep = rungs.at(-1)?.step ?? 0;
  const foretold = foretoldIn(living, measure);
  const next = foretold !== null || live.some(({ live: { step } }) => step === lastStep + 1);
  const sizes = [...points, ...live].map(({ estimate }) => estimate);
  const drawnMm = sizes.map(({ value }) => value);
  const foretoldMm = foretold ? [foretold.low90Mm, foretold.high90Mm] : [];
  const y = sizeScale(sizes, [...(bands ? bandRoom(bands, drawnMm).mm : []), ...foretoldMm]);
  const [low = 1, high = 10] = y.domain();
  const x = scaleLinear()
    .domain([-0.5, lastStep + (next ? 1.5 : 0.5)])
    .range([FRAME.leftPx, widthPx - FRAME.rightPx]);
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const marks = [
    ...points.map((point) => sizeMark(placePoint(point, y, { fromPx: x(point.rung.step), toPx: x(point.rung.step) }), measureLabel)),
    ...live.map((point) => liveMark(point, y, x(point.live.step ?? 0) + LIVE_ASIDE_PX, measureLabel)),
  ];
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
                  measure,
                ),
                x(1) - x(0),
              )}
            </text>
          </g>
        ))}
        <ValueAxis scale={y} ticks={logTicks(low, high)} unit="mm" axis="logarithmic" widthPx={widthPx} />
        <InstarAxis rungs={rungs} after={next ? (living ? livingTick(living) : ['alive']) : null} x={x} widthPx={widthPx} />
        {bands && <BandLayer bands={bands} x={x} y={y} widthPx={widthPx} />}
        {foretold && (
          <ForetoldBar
            xPx={x(lastStep + 1)}
            ends={{
              low90: y(foretold.low90Mm),
              low50: y(foretold.low50Mm),
              middle: y(foretold.middleMm),
              high50: y(foretold.high50Mm),
              high90: y(foretold.high90Mm),
            }}
          />
        )}
      </svg>
      <PointLayer marks={marks} widthPx={widthPx} label={measureLabel} />
    </>
  );
}

/** Beside the skin of the same instar, so that neither hides the other. */
const LIVE_ASIDE_PX = 12;

/** Room that a letter of the words takes at most, px. */
const LETTER_PX = 6.6;

function fitting(words: string, columnPx: number): string {
  const shorter = [words, 'no size', '–'].find((candidate) => candidate.length * LETTER_PX < columnPx);
  return shorter ?? '';
}

/** Steps between the first and the last at which nothing was measured. */
function gapsOf(rungs: readonly Rung[], points: readonly SizePoint[], lastStep: number): number[] {
  const measured = new Set(points.map(({ rung }) => rung.step));
  const first = rungs[0]?.step ?? 0;
  return Array.from({ length: lastStep - first + 1 }, (_, index) => first + index).filter((step) => !measured.has(step));
}
