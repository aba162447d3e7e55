import { type ReactElement, useState } from 'react';
import { wordsFor } from '../../../words/failures.ts';
import { useChange } from '../../client/queries.ts';
import { useTask } from '../../client/tasks.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { ProgressBar } from '../../parts/ProgressBar.tsx';
import style from './Welcome.module.css';
import { WelcomePlate } from './WelcomePlate.tsx';

/** The first start: look round the sample cabinet, or begin an empty one. */
export function Welcome({ onBeginEmpty }: { onBeginEmpty: () => void }): ReactElement {
  const fill = useChange('POST /api/sample-cabinet');
  const [taskId, setTaskId] = useState<string | null>(null);
  const { snapshot: task } = useTask(taskId);
  const filling = fill.isPending || (taskId !== null && (task === null || task.state === 'running'));
  return (
    <div className={style['welcome']}>
      <div>
        <PageHead
          title="A place for what they leave behind"
          below="Exuviary keeps photos of shed skins, reads millimeters and sex from them, and lines them up, molt after molt."
        />
        <div className={style['choices']}>
          <section>
            <h2>Look round the sample cabinet</h2>
            <p>Fifteen invented animals, one of them molting right now, show what everything is for; one click removes them again.</p>
            <Button kind="primary" busy={filling} onClick={() => fill.mutate({}, { onSuccess: (started) => setTaskId(started.id) })}>
              Open the sample cabinet
            </Button>
            <div className={style['course']}>
              {filling && (
                <div className={style['progress']} role="status">
                  <ProgressBar label="Filling the sample cabinet" done={task?.done ?? 0} total={task?.total ?? 0} />
                  <span className="figures">
                    {task ? `Laying out picture ${Math.min(task.done + 1, task.total)} of ${task.total}` : 'Opening the drawers …'}
                  </span>
                </div>
              )}
              {fill.error && <FailureNotice error={fill.error} />}
              {task?.failure && <p className={style['failure']}>{wordsFor(task.failure).happened}</p>}
            </div>
          </section>
          <section>
            <h2>Begin an empty one</h2>
            <p>Your own cabinet, with nothing in it yet: add your first animal, or bring in the photos you already have.</p>
            <Button onClick={onBeginEmpty}>Begin empty</Button>
          </section>
        </div>
      </div>
      <WelcomePlate />
    </div>
  );
}
