import type { ReactElement } from 'react';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { oppositionInWords, sexInWords } from '../../../../words/sex.ts';
import style from './Opposition.module.css';

interface Props {
  determination: Determination;
  /** Standing ones that name the other sex. */
  opposed: readonly Determination[];
  /** Whether the rule calls it a contradiction. */
  contradicts: boolean;
  nameOfSkin: (exuviaId: string) => string;
  onShow: (determinationId: string) => void;
}

/** Which other readings this one stands against, each a way to it. */
export function Opposition({ determination, opposed, contradicts, nameOfSkin, onShow }: Props): ReactElement | null {
  if (opposed.length === 0) return null;
  return (
    <div className={contradicts ? style['contradicts'] : style['differs']}>
      <p>{oppositionInWords(determination, contradicts)}</p>
      <ul className={style['readings']}>
        {opposed.map((other) => (
          <li key={other.id}>
            <button type="button" className={style['link']} onClick={() => onShow(other.id)}>
              {sexInWords({ sex: other.sex, level: other.level, conflict: false })}, read by {other.reader}, {dayInWords(other.readOn)}
            </button>{' '}
            ({other.exuviaId === determination.exuviaId ? 'of the same skin' : nameOfSkin(other.exuviaId)})
          </li>
        ))}
      </ul>
    </div>
  );
}
