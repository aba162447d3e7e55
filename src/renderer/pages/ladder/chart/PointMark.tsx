import type { ReactElement } from 'react';
import { Link, useParams } from 'wouter';
import { useLit } from '../lit.tsx';
import style from './Chart.module.css';
import type { Mark } from './mark.ts';

/** One figure with its bar; leads to the Bench, and tells more when pointed at or focused. */
export function PointMark({ mark }: { mark: Mark }): ReactElement {
  const { specimenId = '' } = useParams<{ specimenId?: string }>();
  const { xPx, yPx, highPx, lowPx, fromPx, toPx, photoId } = mark;
  const { isLit, handlers } = useLit(mark.litId);
  const [to, where] = photoId ? [`/bench/${photoId}`, 'Open on the Bench'] : [`/specimens/${specimenId}`, 'Open the life line'];
  const classes = [style['point'], isLit && style['lit'], mark.shape !== 'dot' && style[mark.shape]].filter(Boolean).join(' ');
  return (
    <Link to={to} className={classes} aria-label={`${mark.spoken}. ${where}`} {...handlers}>
      <circle cx={xPx} cy={yPx} r="16" className={style['reach']} />
      {lowPx > highPx && <path d={`M${xPx} ${highPx}V${lowPx}M${xPx - 4} ${highPx}h8M${xPx - 4} ${lowPx}h8`} className={style['bar']} />}
      {toPx > fromPx && <path d={`M${fromPx} ${yPx}H${toPx}M${fromPx} ${yPx - 4}v8M${toPx} ${yPx - 4}v8`} className={style['bar']} />}
      {mark.inDoubt && <circle cx={xPx} cy={yPx} r="10" className={style['doubt']} />}
      <ShapeAt shape={mark.shape} xPx={xPx} yPx={yPx} />
    </Link>
  );
}

/** The sign of a figure, also beside a name. */
export function ShapeAt({ shape, xPx, yPx }: { shape: Mark['shape']; xPx: number; yPx: number }): ReactElement {
  const at = `M${xPx} ${yPx}`;
  switch (shape) {
    case 'lozenge':
    case 'diamond':
      return <path d={`${at}m0 -7l6 7l-6 7l-6 -7z`} className={style['dot']} />;
    case 'square':
      return <path d={`${at}m-4.5 -4.5h9v9h-9z`} className={style['dot']} />;
    case 'triangle':
      return <path d={`${at}m0 -6l5.5 10h-11z`} className={style['dot']} />;
    case 'cross':
      return <path d={`${at}m-5 -2h3v-3h4v3h3v4h-3v3h-4v-3h-3z`} className={style['dot']} />;
    case 'dot':
    case 'hollow':
    case 'ring':
      return <circle cx={xPx} cy={yPx} r="4.5" className={style['dot']} />;
  }
}
