import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Determination } from '../../../domain/sexing/determination.ts';
import { dayHere } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import style from './HistoryEntry.module.css';

interface Props {
  determination: Determination;
  skin: string;
  onThisSkin: boolean;
  corrected: boolean;
  contradicts: boolean;
  onCorrect: () => void;
  onWithdraw: () => void;
}

/** One determination with its evidence, and what can still be done about it. */
export function HistoryEntry({ determination, skin, onThisSkin, corrected, contradicts, onCorrect, onWithdraw }: Props): ReactElement {
  const { sex, level, reader, readOn, checklist, notes, evidencePhotoIds, withdrawn } = determination;
  const standing = withdrawn === null && !corrected;
  return (
    <li className={style['entry']}>
      <div className={standing ? undefined : style['over']}>
        <SexMark sign={{ sex, level, conflict: contradicts }} />
      </div>
      <div className={style['words']}>
        <p>
          {onThisSkin ? 'From this skin' : <Link to={`/examination/${determination.exuviaId}`}>{skin}</Link>}. Read by {reader},{' '}
          <DayText day={readOn} />
          {checklist.grade !== null && `, grade ${checklist.grade}`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'yes' && `; ${checklist.secondReader} agrees`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'no' && `; ${checklist.secondReader} disagrees`}.
        </p>
        {notes !== '' && <p className={style['notes']}>{notes}</p>}
        {contradicts && <p className={style['contradicts']}>Stands against another reading of this animal.</p>}
        {corrected && <p className={style['state']}>Corrected by a later one.</p>}
        {withdrawn && (
          <p className={style['state']}>
            Withdrawn <DayText day={dayHere(withdrawn.at)} />: {withdrawn.reason}
          </p>
        )}
        {evidencePhotoIds.length > 0 && (
          <ul className={style['evidence']} aria-label="Evidence">
            {evidencePhotoIds.map((photoId, place) => (
              <li key={photoId}>
                <Thumb photoId={photoId} alt={`Evidence photo ${place + 1}`} />
              </li>
            ))}
          </ul>
        )}
      </div>
      {standing && (
        <div className={style['deeds']}>
          {onThisSkin && <Button onClick={onCorrect}>Correct</Button>}
          <Button onClick={onWithdraw}>Withdraw</Button>
        </div>
      )}
    </li>
  );
}
