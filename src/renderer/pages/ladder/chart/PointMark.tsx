import type { ReactElement } from 'react';
import { Link } from 'wouter';
import { spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { rungName } from '../../../../words/ladder.ts';
import style from './Chart.module.css';
import type { PlacedPoint } from './placedPoint.ts';

interface Props {
  placed: PlacedPoint;
  measureLabel: string;
  onAttend: (placed: PlacedPoint | null) => void;
}

/** One measured skin with its bar of ± U; leads to the Bench, and tells its figures when pointed at or focused. */
export function PointMark({ placed, measureLabel, onAttend }: Props): ReactElement {
  const { point, xPx, yPx, highPx, lowPx, fromPx, toPx } = placed;
  const { rung, estimate } = point;
  const words = `${rungName(rung)}, molted ${spanInWords(rung.happenedFrom, rung.happenedTo)}: ${measureLabel.toLowerCase()} ${estimateAsText(estimate, 'mm')}`;
  return (
    <Link
      to={`/bench/${rung.photoId ?? ''}`}
      className={style['point'] ?? ''}
      aria-label={`${words}. Open on the Bench`}
      onMouseEnter={() => onAttend(placed)}
      onMouseLeave={() => onAttend(null)}
      onFocus={() => onAttend(placed)}
      onBlur={() => onAttend(null)}
    >
      <circle cx={xPx} cy={yPx} r="16" className={style['reach']} />
      <path d={`M${xPx} ${highPx}V${lowPx}M${xPx - 4} ${highPx}h8M${xPx - 4} ${lowPx}h8`} className={style['bar']} />
      {toPx > fromPx && <path d={`M${fromPx} ${yPx}H${toPx}M${fromPx} ${yPx - 4}v8M${toPx} ${yPx - 4}v8`} className={style['bar']} />}
      <circle cx={xPx} cy={yPx} r="4.5" className={style['dot']} />
    </Link>
  );
}
