import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { LiveSize } from '../../../domain/growth/liveSizes.ts';
import { liveName, liveWhenInWords, unplacedInWords } from '../../../words/liveSizes.ts';
import { Thumb } from '../../parts/Thumb.tsx';
import { useLit } from './lit.tsx';
import style from './RungTable.module.css';
import { SizeCell } from './SizeCell.tsx';

/** Sizes of the living animal from one photo: not a skin, so without ratio and interval. */
export function LiveRow({ live }: { live: LiveSize }): ReactElement {
  const { isLit, handlers } = useLit(live.photoId);
  const name = liveName(live);
  const unplaced = unplacedInWords(live);
  return (
    <tr className={isLit ? style['lit'] : style['live']} {...handlers}>
      <td className={style['thumb']}>
        <Thumb photoId={live.photoId} alt="" />
      </td>
      <th scope="row" className={style['rung']}>
        <span className={style['name']}>{name}</span>
        <span className={style['small']}>{liveWhenInWords(live)}</span>
        {unplaced && <span className={style['small']}>{unplaced}</span>}
      </th>
      <SizeCell estimate={live.carapaceLengthMm} unit="mm" isDoubted={live.doubted.includes('carapaceLengthMm')} />
      <SizeCell estimate={live.carapaceWidthMm} unit="mm" isDoubted={live.doubted.includes('carapaceWidthMm')} />
      <SizeCell estimate={live.legFirstMm} unit="mm" isDoubted={live.doubted.includes('legFirstMm')} />
      <SizeCell estimate={live.legFourthMm} unit="mm" isDoubted={live.doubted.includes('legFourthMm')} />
      <td colSpan={2} className={style['small']}>
        measured on the living animal, in no ratio
      </td>
      <td>
        <ul className={style['links']}>
          <li>
            <Link to={`/bench/${live.photoId}`} aria-label={`Bench, ${name}`}>
              Bench
            </Link>
          </li>
        </ul>
      </td>
    </tr>
  );
}
