import type { ReactElement } from 'react';
import { Link } from 'wouter';
import type { Photo } from '../../../../domain/photo/photo.ts';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import type { LaterFate } from '../../../../domain/sexing/later.ts';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { signsAgainst } from '../../../../domain/sexing/sign.ts';
import { dayHere } from '../../../../words/dates.ts';
import { assessmentInWords } from '../../../../words/evidence.ts';
import { Button } from '../../../parts/Button.tsx';
import { DayText } from '../../../parts/DayText.tsx';
import { SexMark } from '../../../parts/SexMark.tsx';
import { FateLine } from './FateLine.tsx';
import style from './HistoryEntry.module.css';
import { Opposition } from './Opposition.tsx';
import { SignedAnswers } from './SignedAnswers.tsx';
import { SignedPhotos } from './SignedPhotos.tsx';

interface Props {
  determination: Determination;
  /** All of the animal, and what was seen of it. */
  determinations: readonly Determination[];
  liveSigns: readonly LiveSign[];
  photos: readonly Photo[];
  onThisSkin: boolean;
  fate: LaterFate | null;
  /** Ids of all determinations that contradict each other or the animal. */
  contradicting: ReadonlySet<string>;
  /** Standing determinations that name the other sex. */
  opposed: readonly Determination[];
  nameOfSkin: (exuviaId: string) => string;
  onCorrect: () => void;
  onWithdraw: () => void;
}

/** One determination with its evidence, and what can still be done about it. */
export function HistoryEntry(props: Props): ReactElement {
  const { determination, determinations, liveSigns, photos, onThisSkin, fate, contradicting, opposed, nameOfSkin } = props;
  const { onCorrect, onWithdraw } = props;
  const { sex, level, reader, readOn, checklist, notes, assessment, withdrawn } = determination;
  const standing = withdrawn === null && fate?.fate !== 'superseded';
  return (
    <li id={entryId(determination.id)} tabIndex={-1} className={style['entry']}>
      <div className={standing ? undefined : style['over']}>
        <SexMark sign={{ sex, level, conflict: contradicting.has(determination.id) }} />
      </div>
      <div className={style['words']}>
        <p>
          {onThisSkin ? 'From this skin' : <Link to={`/examination/${determination.exuviaId}`}>{nameOfSkin(determination.exuviaId)}</Link>}.
          Read by {reader}, <DayText day={readOn} />
          {checklist.grade !== null && `, grade ${checklist.grade}`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'yes' && `; ${checklist.secondReader} agrees`}
          {checklist.secondReader !== null && checklist.secondReaderAgrees === 'no' && `; ${checklist.secondReader} disagrees`}.
        </p>
        <p className={style['model']}>{assessmentInWords(assessment)}</p>
        {notes !== '' && <p className={style['notes']}>{notes}</p>}
        <Opposition
          {...{ determination, opposed, contradicting, nameOfSkin }}
          onShow={showEntry}
          signs={signsAgainst(determination, { determinations, liveSigns })}
        />
        <FateLine fate={fate} determinations={determinations} liveSigns={liveSigns} />
        {withdrawn && (
          <p className={style['state']}>
            Withdrawn <DayText day={dayHere(withdrawn.at)} />: {withdrawn.reason}
          </p>
        )}
        <SignedAnswers checklist={checklist} />
        <SignedPhotos determination={determination} photos={photos} />
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

/** Leads to the entry of a determination on the same page. */
export function showEntry(determinationId: string): void {
  const entry = document.getElementById(entryId(determinationId));
  entry?.scrollIntoView({ block: 'nearest' });
  entry?.focus();
}

function entryId(determinationId: string): string {
  return `determination-${determinationId}`;
}
