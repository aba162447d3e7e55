import type { ReactElement } from 'react';
import { counted } from '../../../words/counts.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { useIntakeRun } from './IntakeProvider.tsx';
import style from './ResumeOffer.module.css';

/** After a run that was cut short: offers to go on with the files it had not reached, or to leave them out. */
export function ResumeOffer(): ReactElement | null {
  const { data: about } = useAnswer('GET /api/about', {});
  const run = useIntakeRun();
  const giveUp = useChange('DELETE /api/imports');
  if (!about || about.unfinishedFiles === 0 || run.busy) return null;
  return (
    <Notice tone="warning" title={`An earlier import was cut short: ${counted(about.unfinishedFiles, 'file')} had not been reached.`}>
      <div className={style['offer']}>
        <p>What it had confirmed is safe. The rest still lies in the archive's waiting folder.</p>
        <div className={style['choices']}>
          <Button kind="quiet" busy={giveUp.isPending} onClick={() => giveUp.mutate({})}>
            Leave them out
          </Button>
          <Button onClick={run.resume}>Go on with the rest</Button>
        </div>
      </div>
      {giveUp.error && <FailureNotice error={giveUp.error} />}
    </Notice>
  );
}
