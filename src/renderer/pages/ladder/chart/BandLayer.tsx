import { area, line } from 'd3-shape';
import { type ReactElement, useId } from 'react';
import type { BandAtStep, Bands } from '../../../../domain/growth/trend/bands.ts';
import style from './Chart.module.css';
import { FRAME } from './scales.ts';

interface Props {
  bands: Bands;
  x: (step: number) => number;
  y: (sizeMm: number) => number;
  widthPx: number;
}

/** Growth as the skins tell it with both its bands, up to the next rung; what reaches beyond the chart is cut off. */
export function BandLayer({ bands, x, y, widthPx }: Props): ReactElement {
  const clip = useId();
  const between = (low: keyof BandAtStep, high: keyof BandAtStep) =>
    area<BandAtStep>()
      .x(({ step }) => x(step))
      .y0((band) => y(band[low]))
      .y1((band) => y(band[high]))([...bands.at]) ?? '';
  const middle = line<BandAtStep>()
    .x(({ step }) => x(step))
    .y(({ middleMm }) => y(middleMm))([...bands.at]);
  return (
    <g clipPath={`url(#${clip})`}>
      <clipPath id={clip}>
        <rect
          x={FRAME.leftPx}
          y={FRAME.topPx}
          width={Math.max(0, widthPx - FRAME.leftPx - FRAME.rightPx)}
          height={FRAME.heightPx - FRAME.topPx - FRAME.bottomPx}
        />
      </clipPath>
      <path d={between('oneLow95Mm', 'oneHigh95Mm')} className={style['bandOfOne']} />
      <path d={between('meanLow95Mm', 'meanHigh95Mm')} className={style['bandOfMean']} />
      <path d={middle ?? ''} className={style['fit']} />
    </g>
  );
}
