import type { ReactElement } from 'react';
import { Refusal } from '../../../../domain/failure.ts';
import { Button } from '../../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../../parts/Notice.tsx';
import style from './SavingLine.module.css';
import type { OpenReading } from './useReading.ts';

/** Whether what was answered is kept, and what to do where it is not. */
export function SavingLine({ open, onGiveUp }: { open: OpenReading; onGiveUp: () => void }): ReactElement {
  const { begun, saving, error, insist, takeStored } = open;
  if (error instanceof Refusal && error.failure.code === 'changed-meanwhile') {
    return (
      <Notice tone="refusal" title="This reading was changed in another window.">
        <p>What you answer here is not kept until you say which one counts.</p>
        <div className={style['deeds']}>
          <Button onClick={() => void takeStored()}>Show the other one</Button>
          <Button onClick={insist}>Keep this one</Button>
        </div>
      </Notice>
    );
  }
  if (error !== null) return <FailureNotice error={error} action={<Button onClick={insist}>Keep it again</Button>} />;
  if (!begun) {
    const graded = open.reading.checklist.grade === null ? '' : '; the grade is the one the skin has on record';
    return <p className={style['line']}>Nothing answered yet{graded}. Every answer is kept at once; leave and come back when you like.</p>;
  }
  return (
    <div className={style['line']}>
      <span>{saving === 'saving' ? 'Keeping …' : 'Kept as a reading under way. It counts once it is signed.'}</span>
      <Button kind="quiet" onClick={onGiveUp}>
        Give up this reading
      </Button>
    </div>
  );
}
