import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Determination } from '../../../domain/sexing/determination.ts';
import { dayHere } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import style from './HistoryEntry.module.css';
import { Opposition } from './Opposition.tsx';
import { SignedAnswers } from './SignedAnswers.tsx';

interface Props {
  determination: Determination;
  onThisSkin: boolean;
  corrected: boolean;
  contradicts: boolean;
  /** Standing determinations that name the other sex. */
  opposed: readonly Determination[];
  nameOfSkin: (exuviaId: string) => string;
  onShow: (determinationId: string) => void;
  onCorrect: () => void;
  onWithdraw: () => void;
}

/** One determination with its evidence, and what can still be done about it. */
export function HistoryEntry(props: Props): ReactElement {
  const { determination, onThisSkin, corrected, contradicts, opposed, nameOfSkin, onShow, onCorrect, onWithdraw } = props;
  const { sex, level, reader, readOn, checklist, notes, evidencePhotoIds, withdrawn } = determination;
  const standing = withdrawn === null && !corrected;
  return (
    <li id={entryId(determination.id)} tabIndex={-1} className={style['entry']}>
      <div className={standing ? undefined : style['over']}>
        <SexMark sign={{ sex, level, conflict: contradicts }} />
      </div>
      <div className={style['words']}>
        <p>
          {onThisSkin ? 'From this skin' : <Link to={`/examination/${determination.exuviaId}`}>{nameOfSkin(determination.exuviaId)}</Link>}.
          Read by {reader}, <DayText day={readOn} />
          {checklist.grade !== null && `, grade ${checklist.grade}`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'yes' && `; ${checklist.secondReader} agrees`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'no' && `; ${checklist.secondReader} disagrees`}.
        </p>
        {notes !== '' && <p className={style['notes']}>{notes}</p>}
        <Opposition {...{ determination, opposed, contradicts, nameOfSkin, onShow }} />
        {corrected && <p className={style['state']}>Corrected by a later one.</p>}
        {withdrawn && (
          <p className={style['state']}>
            Withdrawn <DayText day={dayHere(withdrawn.at)} />: {withdrawn.reason}
          </p>
        )}
        <SignedAnswers checklist={checklist} />
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

/** Where an entry stands on the page, so that another one can lead to it. */
export function entryId(determinationId: string): string {
  return `determination-${determinationId}`;
}
