import type { ReactElement } from 'react';
import { remainingInWords } from '../../../../words/dates.ts';
import { useChange } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { ProgressBar } from '../../../parts/ProgressBar.tsx';
import style from './Gallery.module.css';
import { usePreparing } from './useCuts.tsx';

/** How far the skins are laid flat, and a stop. */
export function Preparing(): ReactElement | null {
  const task = usePreparing();
  const stop = useChange('DELETE /api/tasks/{taskId}');
  if (!task) return null;
  const remaining = task.remainingSeconds === null ? '' : `, ${remainingInWords(task.remainingSeconds)} left`;
  return (
    <div className={style['preparing']} role="status">
      <ProgressBar done={task.done} total={task.total} label="Laying the skins flat" />
      <span>
        Laying the skins flat: {task.done} of {task.total}
        {remaining}
      </span>
      <Button kind="quiet" busy={stop.isPending} onClick={() => stop.mutate({ path: { taskId: task.id } })}>
        Stop
      </Button>
    </div>
  );
}
