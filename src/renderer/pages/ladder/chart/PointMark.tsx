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
      {mark.shape === 'lozenge' ? (
        <path d={`M${xPx} ${yPx - 7}l6 7l-6 7l-6 -7z`} className={style['dot']} />
      ) : (
        <circle cx={xPx} cy={yPx} r="4.5" className={style['dot']} />
      )}
    </Link>
  );
}
