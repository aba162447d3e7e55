import type { ReactElement } from 'react';
import type { MissedMoltCheck } from '../../../../domain/growth/missed/missedMolts.ts';
import { missedInWords, type NameOfMolt } from '../../../../words/growth.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import style from './Questions.module.css';
import type { Gaps } from './useGaps.ts';
import type { NoneMissed } from './useNoneMissed.ts';

interface Props {
  check: MissedMoltCheck;
  nameOf: NameOfMolt;
  /** Whether any instar of the row is known. */
  isNumbered: boolean;
  gaps: Gaps;
  noneMissed: NoneMissed;
}

/** One place where a molt may be missing, its grounds, and the button that puts the gap on record. */
export function MissedMolt({ check, nameOf, isNumbered, gaps, noneMissed }: Props): ReactElement {
  const words = missedInWords(check, nameOf);
  const asks = check.suggestedSkipped > 0;
  return (
    <Notice tone={check.verdict === 'likely' ? 'warning' : 'note'} title={words.title}>
      <p>{words.grounds}</p>
      {asks && (
        <p className={style['answer']}>
          <Button icon="add" busy={gaps.busy} onClick={() => gaps.accept(check)}>
            Put the gap on record
          </Button>
          {noneMissed.knows(check.laterMoltId) && check.instarsOnRecord === 1 && (
            <Button busy={noneMissed.busy} onClick={() => noneMissed.say(check.laterMoltId, true)}>
              No, none was missed
            </Button>
          )}
          <span>
            {isNumbered
              ? 'Later instars are numbered anew; nothing else changes, and it can be taken back.'
              : 'No instar is known here, so a presumed molt without a skin is put between the two; it can be taken back.'}
          </span>
        </p>
      )}
      {gaps.error && !gaps.accepted && <FailureNotice error={gaps.error} />}
      {noneMissed.error && <FailureNotice error={noneMissed.error} />}
    </Notice>
  );
}
