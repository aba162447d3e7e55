import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { sexInWords } from '../../../../words/sex.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { conflictSides } from './conflictSides.ts';
import style from './SexConflict.module.css';

interface Props {
  specimenId: string;
  /** Of all skins of the animal. */
  determinations: readonly Determination[];
  /** Those noted while watching it included. */
  liveSigns: readonly LiveSign[];
  nameOfSkin: (exuviaId: string) => string;
}

/** Says that what is on record of this animal contradicts itself, names everything on either side, and what to do next. */
export function SexConflict({ specimenId, determinations, liveSigns, nameOfSkin }: Props): ReactElement {
  const { sides, bulbsSeen } = conflictSides(determinations, liveSigns);
  return (
    <div className={style['conflict']}>
      <Notice tone="warning" title="The record of this animal contradicts itself.">
        <p>It counts as unsexed until one side is corrected or withdrawn. Nothing is averaged.</p>
        {sides.map(({ sex, readings, signs }) => (
          <div key={sex} className={style['side']}>
            <p>For a {sex}:</p>
            <ul aria-label={`For a ${sex}`}>
              {readings.map(({ id, exuviaId, level, reader, readOn }) => (
                <li key={id}>
                  <Link to={`/examination/${exuviaId}`}>
                    {sexInWords({ sex, level, conflict: false })}, from the skin: {nameOfSkin(exuviaId)}
                  </Link>
                  , read by {reader}, {dayInWords(readOn)}
                </li>
              ))}
              {signs.map(({ id, finding, seenOn, observer }) => (
                <li key={id}>
                  <Link to={`/specimens/${specimenId}`}>On the animal: {findingInWords(finding)}</Link>, {dayInWords(seenOn)}
                  {observer !== '' && `, by ${observer}`}
                </li>
              ))}
            </ul>
          </div>
        ))}
        <p className={style['side']}>What to do next:</p>
        <ol>
          <li>Make sure that each skin named here is this animal’s: its label, and the day it was found.</li>
          <li>
            {bulbsSeen
              ? 'Look at the palps of the animal again, and photograph them: swollen palps of a male before his last molt can be taken for bulbs. A grown male may leave no further skin, so do not wait for one to decide.'
              : 'Look at the skins again, side by side, wet and dry; have somebody read them who does not know the answer.'}
          </li>
          <li>Correct or withdraw what proves wrong: a reading below its skin, a sign on the page of the animal.</li>
          {!bulbsSeen && <li>If both sides hold, leave it unsexed: the next skin can decide.</li>}
        </ol>
      </Notice>
    </div>
  );
}
