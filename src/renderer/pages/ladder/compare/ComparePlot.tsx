import { type ScaleContinuousNumeric, scaleLinear, scaleLog } from 'd3-scale';
import { area, line } from 'd3-shape';
import type { ReactElement } from 'react';
import { type AlignedAnimal, type Alignment, dayAt } from '../../../../domain/growth/compare/aligned.ts';
import type { GroupBand } from '../../../../domain/growth/compare/group.ts';
import { dayInWords, spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { rungName } from '../../../../words/ladder.ts';
import chart from '../chart/Chart.module.css';
import { type Mark, markOf } from '../chart/mark.ts';
import { PointLayer } from '../chart/PointLayer.tsx';
import { FRAME, logTicks, lowerEnd } from '../chart/scales.ts';
import { ValueAxis } from '../chart/ValueAxis.tsx';
import style from './Compare.module.css';

/** Room at the right for the names at the ends of the lines. */
const NAMES_PX = 110;
const LETTERS = 14;
const NAME_LINE_PX = 15;

interface Props {
  /** With at least one size among them. */
  animals: readonly AlignedAnimal[];
  /** Drawn to stand out. */
  ownId: string;
  alignment: Alignment;
  band: readonly GroupBand[];
  widthPx: number;
}

/** Several animals on one chart; each line bears its name, so that no color has to be told from another. */
export function ComparePlot({ animals, ownId, alignment, band, widthPx }: Props): ReactElement {
  const sizes = animals.flatMap((animal) => animal.sizes);
  const places = sizes.map(({ at }) => at);
  const air = alignment === 'instar' ? 0.4 : Math.max(10, 0.04 * (Math.max(...places) - Math.min(...places)));
  const x = scaleLinear()
    .domain([Math.min(...places) - air, Math.max(...places) + air])
    .range([FRAME.leftPx, Math.max(FRAME.leftPx + 1, widthPx - NAMES_PX)]);
  const domain: [number, number] = [
    Math.min(...sizes.map(({ size }) => lowerEnd(size))) / 1.08,
    Math.max(...sizes.map(({ size }) => size.value + size.expandedUncertainty)) * 1.08,
  ];
  const y = scaleLog()
    .domain(domain)
    .range([FRAME.heightPx - FRAME.bottomPx, FRAME.topPx])
    .clamp(true);
  const nameYs = apart(
    animals.flatMap(({ specimenId, sizes: own }) => {
      const last = own.at(-1);
      return last ? [{ specimenId, xPx: x(last.at), yPx: y(last.size.value) }] : [];
    }),
  );
  return (
    <>
      <svg width={widthPx} height={FRAME.heightPx} aria-hidden="true">
        <ValueAxis scale={y} ticks={logTicks(...domain)} unit="mm" widthPx={widthPx - NAMES_PX + FRAME.rightPx} />
        <PlaceAxis x={x} alignment={alignment} widthPx={widthPx} />
        <path d={bandPath(band, x, y)} className={chart['bandOfOne']} />
        {animals.map((animal) => (
          <AnimalLine
            key={animal.specimenId}
            animal={animal}
            isOwn={animal.specimenId === ownId}
            x={x}
            y={y}
            nameYPx={nameYs.get(animal.specimenId) ?? 0}
          />
        ))}
      </svg>
      <PointLayer
        marks={animals.flatMap((animal) => marksOf(animal, animal.specimenId === ownId, x, y))}
        widthPx={widthPx}
        label="Carapace length of several animals"
      />
    </>
  );
}

type ToPx = (value: number) => number;

interface NamePlace {
  readonly specimenId: string;
  readonly xPx: number;
  readonly yPx: number;
}

/** Where each name stands so that none lies on another: downwards from its line, as far as names beside it reach. */
function apart(places: readonly NamePlace[]): ReadonlyMap<string, number> {
  const placed: NamePlace[] = [];
  for (const place of places.toSorted((a, b) => a.yPx - b.yPx)) {
    let { yPx } = place;
    // From the top down, so that what is passed once stays above.
    for (const other of placed) {
      if (Math.abs(other.xPx - place.xPx) < NAMES_PX && Math.abs(other.yPx - yPx) < NAME_LINE_PX) yPx = other.yPx + NAME_LINE_PX;
    }
    placed.push({ ...place, yPx });
    placed.sort((a, b) => a.yPx - b.yPx);
  }
  return new Map(placed.map(({ specimenId, yPx }) => [specimenId, yPx]));
}

interface LineProps {
  animal: AlignedAnimal;
  isOwn: boolean;
  x: ToPx;
  y: ToPx;
  nameYPx: number;
}

function AnimalLine({ animal, isOwn, x, y, nameYPx }: LineProps): ReactElement | null {
  const last = animal.sizes.at(-1);
  if (!last) return null;
  const path = line<(typeof animal.sizes)[number]>()
    .x(({ at }) => x(at))
    .y(({ size }) => y(size.value))([...animal.sizes]);
  const name = animal.called.length > LETTERS ? `${animal.called.slice(0, LETTERS - 1)}…` : animal.called;
  return (
    <g>
      <path d={path ?? ''} className={isOwn ? style['own'] : style['other']} />
      <text x={x(last.at) + 10} y={nameYPx} dy="0.32em" className={isOwn ? style['ownName'] : chart['axis']}>
        {name}
      </text>
    </g>
  );
}

function PlaceAxis({
  x,
  alignment,
  widthPx,
}: {
  x: ScaleContinuousNumeric<number, number>;
  alignment: Alignment;
  widthPx: number;
}): ReactElement {
  const bottomPx = FRAME.heightPx - FRAME.bottomPx;
  const ticks = x.ticks(Math.max(3, Math.floor(widthPx / 150))).filter((tick) => alignment !== 'instar' || Number.isInteger(tick));
  const titles = { instar: 'instar that ended, as its skin shows it', date: 'day of the molt', 'since-molt': 'days since that molt' };
  return (
    <g>
      {ticks.map((tick) => (
        <text key={tick} x={x(tick)} y={bottomPx + 20} textAnchor="middle" className={chart['tick']}>
          {alignment === 'date' ? dayInWords(dayAt(tick)) : tick}
        </text>
      ))}
      <text x={(FRAME.leftPx + widthPx - NAMES_PX) / 2} y={FRAME.heightPx - 6} textAnchor="middle" className={chart['axis']}>
        {titles[alignment]}
      </text>
    </g>
  );
}

function bandPath(band: readonly GroupBand[], x: ToPx, y: ToPx): string {
  return (
    area<GroupBand>()
      .x(({ at }) => x(at))
      .y0(({ lowMm }) => y(lowMm))
      .y1(({ highMm }) => y(highMm))([...band]) ?? ''
  );
}

function marksOf(animal: AlignedAnimal, isOwn: boolean, x: ToPx, y: ToPx): Mark[] {
  return animal.sizes.map(({ rung, at, size }) => {
    const words = estimateAsText(size, 'mm');
    const shed = spanInWords(rung.happenedFrom, rung.happenedTo);
    return {
      ...markOf(rung),
      xPx: x(at),
      yPx: y(size.value),
      highPx: y(size.value + size.expandedUncertainty),
      lowPx: y(lowerEnd(size)),
      fromPx: x(at),
      toPx: x(at),
      shape: isOwn ? 'dot' : 'hollow',
      lines: [words, animal.called, `shed ${shed}`],
      spoken: `${animal.called}, ${rungName(rung).toLowerCase()}, molted ${shed}: ${words}`,
    };
  });
}
