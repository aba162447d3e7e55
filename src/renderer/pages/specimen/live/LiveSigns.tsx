import { type ReactElement, useState } from 'react';
import type { Molt } from '../../../../domain/molting/molt.ts';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { claimOf } from '../../../../domain/sexing/live/claim.ts';
import type { LiveSign } from '../../../../domain/sexing/live/liveSign.ts';
import { dayHere } from '../../../../words/dates.ts';
import { SILENCE_WORDS } from '../../../../words/evidence.ts';
import { capitalized } from '../../../../words/labels.ts';
import { findingInWords } from '../../../../words/liveSigns.ts';
import { sexInWords } from '../../../../words/sex.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { DayText } from '../../../parts/DayText.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Thumb } from '../../../parts/Thumb.tsx';
import { StatementDialog } from '../../examination/record/StatementDialog.tsx';
import { LiveSignDialog } from './LiveSignDialog.tsx';
import style from './LiveSigns.module.css';
import { WithdrawSignDialog } from './WithdrawSignDialog.tsx';

interface Props {
  specimenId: string;
  molts: readonly Molt[];
  animalPhotos: readonly Photo[];
  today: string;
}

/** What the animal itself shows of its sex, apart from its skins, which show the instar before. */
export function LiveSigns({ specimenId, molts, animalPhotos, today }: Props): ReactElement {
  const answer = useAnswer('GET /api/specimens/{specimenId}/live-signs', { path: { specimenId } });
  const [recording, setRecording] = useState(false);
  const [stating, setStating] = useState(false);
  const [withdrawing, setWithdrawing] = useState<LiveSign | null>(null);
  const signs = answer.data ?? [];
  return (
    <section aria-labelledby="live-signs" className={style['live']}>
      <header className={style['head']}>
        <h2 id="live-signs">Its sex, seen on the animal</h2>
        <Button icon="add" onClick={() => setRecording(true)}>
          Record a sign
        </Button>
        <Button onClick={() => setStating(true)}>Statement of sex</Button>
      </header>
      {answer.error && <FailureNotice error={answer.error} action={<Button onClick={() => void answer.refetch()}>Ask again</Button>} />}
      {answer.data && signs.length === 0 && (
        <p className={style['soft']}>
          Nothing recorded. Palpal bulbs and hooks appear on the animal with its last molt and are not to be expected on a skin; bulbs or an
          egg sac prove a sex, and earlier readings are held against them.
        </p>
      )}
      {signs.length > 0 && (
        <ol className={style['signs']}>
          {signs.map((sign) => (
            <SignLine key={sign.id} sign={sign} molts={molts} onWithdraw={() => setWithdrawing(sign)} />
          ))}
        </ol>
      )}
      {recording && <LiveSignDialog {...{ specimenId, molts, animalPhotos, today }} onClose={() => setRecording(false)} />}
      {stating && <StatementDialog specimenId={specimenId} onClose={() => setStating(false)} />}
      {withdrawing && <WithdrawSignDialog sign={withdrawing} onClose={() => setWithdrawing(null)} />}
    </section>
  );
}

function SignLine({ sign, molts, onWithdraw }: { sign: LiveSign; molts: readonly Molt[]; onWithdraw: () => void }): ReactElement {
  const { finding, seenOn, observer, notes, photoIds, withdrawn } = sign;
  const claim = claimOf(sign);
  const ultimate = finding.kind === 'palpal-bulbs' ? molts.find(({ id }) => id === finding.ultimateMoltId) : undefined;
  return (
    <li className={style['sign']}>
      <div className={withdrawn ? style['over'] : undefined}>
        <strong>{capitalized(findingInWords(finding))}</strong>
        <p className={style['soft']}>
          <DayText day={seenOn} />, {observer}.{' '}
          {claim === null ? silenceOf(sign) : `Speaks for: ${sexInWords({ ...claim, conflict: false })}.`}
        </p>
        {ultimate && (
          <p className={style['soft']}>
            Ultimate molt: <DayText day={ultimate.happenedTo} />
          </p>
        )}
        {notes !== '' && <p>{notes}</p>}
        {withdrawn && (
          <p>
            Withdrawn <DayText day={dayHere(withdrawn.at)} />: {withdrawn.reason}
          </p>
        )}
      </div>
      <div className={style['photos']}>
        {photoIds.map((photoId, place) => (
          <Thumb key={photoId} photoId={photoId} alt={`Photo ${place + 1} of this sign`} className={style['thumb']} />
        ))}
      </div>
      {withdrawn === null && (
        <Button onClick={onWithdraw}>
          Withdraw<span className="spoken-only">: {findingInWords(finding)}</span>
        </Button>
      )}
    </li>
  );
}

/** Why a sign says nothing of the sex. */
function silenceOf({ finding }: LiveSign): string {
  const hooksSeen = finding.kind === 'tibial-hooks' && finding.seen;
  return hooksSeen ? `Weighs nothing: ${SILENCE_WORDS['genus-hooks-not-known']}.` : 'Weighs nothing by itself.';
}
