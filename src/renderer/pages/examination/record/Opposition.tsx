import type { ReactElement } from 'react';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { oppositionInWords, sexInWords } from '../../../../words/sex.ts';
import style from './Opposition.module.css';

interface Props {
  determination: Determination;
  /** Standing ones that name the other sex. */
  opposed: readonly Determination[];
  /** Ids of the determinations that the rule calls contradicting; a leaning against a firm one is not among them. */
  contradicting: ReadonlySet<string>;
  /** Signs of the animal itself that contradict it. */
  signs: readonly LiveSign[];
  nameOfSkin: (exuviaId: string) => string;
  onShow: (determinationId: string) => void;
}

/** What this reading stands against: other readings, each a way to it, and signs of the animal itself; leanings apart from the rest. */
export function Opposition({ determination, opposed, contradicting, signs, nameOfSkin, onShow }: Props): ReactElement | null {
  const contradicts = contradicting.has(determination.id);
  const against = contradicts ? opposed.filter(({ id }) => contradicting.has(id)) : [];
  const leaning = opposed.filter((other) => !against.includes(other));
  const listOf = (readings: readonly Determination[]) => (
    <ul className={style['readings']}>
      {readings.map((other) => (
        <li key={other.id}>
          <button type="button" className={style['link']} onClick={() => onShow(other.id)}>
            {sexInWords({ sex: other.sex, level: other.level, conflict: false })}, read by {other.reader}, {dayInWords(other.readOn)}
          </button>{' '}
          ({other.exuviaId === determination.exuviaId ? 'of the same skin' : nameOfSkin(other.exuviaId)})
        </li>
      ))}
    </ul>
  );
  return (
    <>
      {against.length > 0 && (
        <div className={style['contradicts']}>
          <p>{oppositionInWords(determination, true)}</p>
          {listOf(against)}
        </div>
      )}
      {signs.length > 0 && (
        <div className={style['contradicts']}>
          <p>Stands against what the animal itself showed:</p>
          <ul className={style['readings']}>
            {signs.map(({ id, finding, seenOn, observer }) => (
              <li key={id}>
                {findingInWords(finding)}, {dayInWords(seenOn)}
                {observer !== '' && `, by ${observer}`}
              </li>
            ))}
          </ul>
        </div>
      )}
      {leaning.length > 0 && (
        <div className={style['differs']}>
          <p>{oppositionInWords(determination, false)}</p>
          {listOf(leaning)}
        </div>
      )}
    </>
  );
}
