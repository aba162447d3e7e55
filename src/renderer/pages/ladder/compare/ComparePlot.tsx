import { scaleLinear, scaleLog, scaleUtc } from 'd3-scale';
import type { ReactElement } from 'react';
import { type AlignedAnimal, type Alignment, dayAt } from '../../../../domain/growth/compare/aligned.ts';
import type { GroupBand } from '../../../../domain/growth/compare/group.ts';
import { dayOnAxis, spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { rungName } from '../../../../words/ladder.ts';
import chart from '../chart/Chart.module.css';
import { type Mark, markOf } from '../chart/mark.ts';
import { PointLayer } from '../chart/PointLayer.tsx';
import { ShapeAt } from '../chart/PointMark.tsx';
import { FRAME, logTicks, lowerEnd } from '../chart/scales.ts';
import { ValueAxis } from '../chart/ValueAxis.tsx';
import style from './Compare.module.css';
import { animalPath, bandPath } from './comparePaths.ts';
import { lookOf } from './lineLooks.ts';
import { namePlaces } from './namePlaces.ts';

/** Room at the right for the names of the lines, no line below them. */
const NAMES_PX = 130;
const LETTERS = 15;
const MS_PER_DAY = 86_400_000;

interface Props {
  /** With at least one size among them. */
  animals: readonly AlignedAnimal[];
  /** Drawn to stand out. */
  ownId: string;
  alignment: Alignment;
  band: readonly GroupBand[];
  widthPx: number;
}

type ToPx = (value: number) => number;

/** Several animals on one chart, each with its own dashes and signs and its name at the right. */
export function ComparePlot({ animals, ownId, alignment, band, widthPx }: Props): ReactElement {
  const sizes = animals.flatMap((animal) => animal.sizes);
  const places = sizes.flatMap(({ at, from }) => (from === null ? [at] : [from, at]));
  const air = alignment === 'instar' ? 0.4 : Math.max(10, 0.04 * (Math.max(...places) - Math.min(...places)));
  const ends: [number, number] = [Math.min(...places) - air, Math.max(...places) + air];
  const rightPx = Math.max(FRAME.leftPx + 1, widthPx - NAMES_PX);
  const x = scaleLinear().domain(ends).range([FRAME.leftPx, rightPx]);
  const domain: [number, number] = [
    Math.min(...sizes.map(({ size }) => lowerEnd(size))) / 1.08,
    Math.max(...sizes.map(({ size }) => size.value + size.expandedUncertainty)) * 1.08,
  ];
  const y = scaleLog()
    .domain(domain)
    .range([FRAME.heightPx - FRAME.bottomPx, FRAME.topPx])
    .clamp(true);
  const shown = lookedAt(animals, ownId);
  const nameYs = namePlaces(
    shown.flatMap(({ specimenId, sizes: own }) => {
      const last = own.at(-1);
      return last ? [{ specimenId, yPx: y(last.size.value) }] : [];
    }),
    FRAME.heightPx - FRAME.bottomPx,
  );
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} aria-hidden="true">
        <ValueAxis scale={y} ticks={logTicks(...domain)} unit="mm" axis="logarithmic" widthPx={rightPx + FRAME.rightPx} />
        <PlaceAxis x={x} ticks={ticksOf(alignment, ends, rightPx)} alignment={alignment} rightPx={rightPx} />
        <path d={bandPath(band, alignment, x, y)} className={chart['bandOfOne']} />
        {shown.map((animal) => {
          const last = animal.sizes.at(-1);
          const nameY = nameYs.get(animal.specimenId) ?? 0;
          if (!last) return null;
          return (
            <g key={animal.specimenId}>
              <path
                d={animalPath(animal.sizes, alignment, x, y)}
                className={animal.isOwn ? style['own'] : style['other']}
                strokeDasharray={animal.look.dash}
              />
              <path d={`M${x(last.at) + 8} ${y(last.size.value)}L${rightPx + 4} ${nameY}`} className={style['leader']} />
              <g className={chart[animal.look.shape]}>
                <ShapeAt shape={animal.look.shape} xPx={rightPx + 11} yPx={nameY} />
              </g>
              <text x={rightPx + 21} y={nameY} dy="0.32em" className={animal.isOwn ? style['ownName'] : chart['axis']}>
                {animal.called.length > LETTERS ? `${animal.called.slice(0, LETTERS - 1)}…` : animal.called}
              </text>
            </g>
          );
        })}
      </svg>
      <PointLayer marks={shown.flatMap((animal) => marksOf(animal, x, y))} widthPx={widthPx} label="Carapace length of several animals" />
    </>
  );
}

type LookedAt = AlignedAnimal & { readonly isOwn: boolean; readonly look: ReturnType<typeof lookOf> };

/** Each animal with how it looks; the animal itself comes last, so that it lies on top. */
export function lookedAt(animals: readonly AlignedAnimal[], ownId: string): LookedAt[] {
  const others = animals.filter(({ specimenId }) => specimenId !== ownId);
  const own = animals.filter(({ specimenId }) => specimenId === ownId);
  return [
    ...others.map((animal, place) => ({ ...animal, isOwn: false, look: lookOf(place) })),
    ...own.map((animal) => ({ ...animal, isOwn: true, look: lookOf(null) })),
  ];
}

interface Tick {
  readonly at: number;
  readonly words: string;
}

function ticksOf(alignment: Alignment, ends: readonly [number, number], widthPx: number): Tick[] {
  const wanted = Math.max(3, Math.floor(widthPx / 130));
  if (alignment === 'date') {
    const days = scaleUtc().domain(ends.map((day) => day * MS_PER_DAY));
    return days.ticks(wanted).map((day) => ({ at: day.getTime() / MS_PER_DAY, words: dayOnAxis(dayAt(day.getTime() / MS_PER_DAY)) }));
  }
  const ticks = scaleLinear().domain(ends).ticks(wanted);
  return ticks.filter((at) => alignment !== 'instar' || Number.isInteger(at)).map((at) => ({ at, words: String(at) }));
}

const AXIS_TITLES = { instar: 'instar that ended, as its skin shows it', date: 'day', 'since-molt': 'days since that molt' };

interface AxisProps {
  x: ToPx;
  ticks: readonly Tick[];
  alignment: Alignment;
  rightPx: number;
}

function PlaceAxis({ x, ticks, alignment, rightPx }: AxisProps): ReactElement {
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  return (
    <g>
      {ticks.map(({ at, words }) => (
        <g key={at} transform={`translate(${x(at)} 0)`}>
          <line y1={bottomPx} y2={bottomPx + 5} className={chart['grid']} />
          <text y={bottomPx + 20} textAnchor="middle" className={chart['tick']}>
            {words}
          </text>
        </g>
      ))}
      <text x={(FRAME.leftPx + rightPx) / 2} y={FRAME.heightPx - 6} textAnchor="middle" className={chart['axis']}>
        {AXIS_TITLES[alignment]}
      </text>
    </g>
  );
}

function marksOf({ called, sizes, look }: LookedAt, x: ToPx, y: ToPx): Mark[] {
  return sizes.map(({ rung, at, size }) => {
    const words = estimateAsText(size, 'mm');
    const shed = spanInWords(rung.happenedFrom, rung.happenedTo);
    return {
      ...markOf(rung),
      ...{ xPx: x(at), yPx: y(size.value), highPx: y(size.value + size.expandedUncertainty), lowPx: y(lowerEnd(size)) },
      ...{ fromPx: x(at), toPx: x(at), shape: look.shape },
      lines: [words, called, `shed ${shed}`],
      spoken: `${called}, ${rungName(rung).toLowerCase()}, molted ${shed}: ${words}`,
    };
  });
}
