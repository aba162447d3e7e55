import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Rung } from '../../../domain/growth/rung.ts';
import { ODD_IN_ROW } from '../../../words/growth.ts';
import { daysSinceInWords, noRatioInWords, rungName, unmeasuredInWords } from '../../../words/ladder.ts';
import { DayText } from '../../parts/DayText.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { useLit } from './lit.tsx';
import style from './RungTable.module.css';
import { SizeCell } from './SizeCell.tsx';
import { TakeOut } from './TakeOut.tsx';

interface Props {
  rung: Rung;
  previous: Rung | undefined;
  /** Whether its carapace length does not fit the skins around it. */
  isOdd: boolean;
  specimenId: string;
}

export function RungRow({ rung, previous, isOdd, specimenId }: Props): ReactElement {
  const name = rungName(rung);
  const { isLit, handlers } = useLit(rung.moltId);
  const days = daysSinceInWords(rung, previous);
  return (
    <tr className={isLit ? style['lit'] : undefined} {...handlers}>
      <td className={style['thumb']}>
        <Thumb photoId={rung.photoId} alt="" />
      </td>
      <th scope="row" className={style['rung']}>
        <span className={style['name']}>{name}</span>
        <span className={style['small']}>
          shed <DayText day={rung.happenedFrom} to={rung.happenedTo} />
        </span>
        {!rung.carapaceLengthMm && <span className={style['small']}>{unmeasuredInWords(rung)}</span>}
        {isOdd && <span className={style['odd']}>{ODD_IN_ROW}</span>}
        {!rung.stepKnown && <span className={style['small']}>place in the row not known</span>}
      </th>
      <SizeCell estimate={rung.carapaceLengthMm} unit="mm" isDoubted={rung.doubted.includes('carapaceLengthMm')} />
      <SizeCell estimate={rung.carapaceWidthMm} unit="mm" isDoubted={rung.doubted.includes('carapaceWidthMm')} />
      <SizeCell estimate={rung.legFirstMm} unit="mm" isDoubted={rung.doubted.includes('legFirstMm')} />
      <SizeCell estimate={rung.legFourthMm} unit="mm" isDoubted={rung.doubted.includes('legFourthMm')} />
      <SizeCell estimate={rung.ratio} unit="1" instead={noRatioInWords(rung, previous)} />
      <td className={days === null ? style['small'] : 'figures'}>{days ?? 'first on record'}</td>
      <td>
        <ul className={style['links']}>
          {rung.photoId && (
            <li>
              <Link to={`/bench/${rung.photoId}`} aria-label={`Bench, ${name}`}>
                Bench
              </Link>
            </li>
          )}
          {rung.exuviaId && (
            <li>
              <Link to={`/examination/${rung.exuviaId}`} aria-label={`Examination, ${name}`}>
                Examination
              </Link>
            </li>
          )}
          {rung.presumed && (
            <li>
              <TakeOut moltId={rung.moltId} />
            </li>
          )}
          {!rung.photoId && (
            <li>
              <Link to={`/specimens/${specimenId}`} aria-label={`Life line, ${name}`}>
                Life line
              </Link>
            </li>
          )}
        </ul>
      </td>
    </tr>
  );
}
