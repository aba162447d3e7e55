import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { TaskSnapshot } from '../../domain/intake/task.ts';
import { addressOf, ask } from './ask.ts';

export interface FollowedTask {
  /** null until the first snapshot has come. */
  readonly snapshot: TaskSnapshot | null;
  /** The archive does not answer at the moment; the browser goes on trying. */
  readonly silent: boolean;
}

const NOTHING_YET: FollowedTask = { snapshot: null, silent: false };

/**
 * Follows one task by its stream of snapshots, which reconnects by itself. When the task has ended every kept answer is
 * asked again: it can have touched all of them.
 */
export function useTask(taskId: string | null): FollowedTask {
  const client = useQueryClient();
  const [followed, setFollowed] = useState(NOTHING_YET);
  useEffect(() => {
    if (taskId === null) return;
    const leaving = new AbortController();
    const take = (snapshot: TaskSnapshot) => {
      setFollowed({ snapshot, silent: false });
      if (snapshot.state === 'running') return;
      source.close();
      void client.invalidateQueries();
    };
    const fallSilent = () => setFollowed((before) => ({ ...before, silent: true }));
    const source = new EventSource(addressOf('GET /api/tasks/{taskId}/events', { taskId }));
    source.onmessage = (event: MessageEvent<string>) => take(TaskSnapshot.parse(JSON.parse(event.data)));
    source.onerror = () => {
      fallSilent();
      // A closed stream (unlike one that is reconnecting) will not come back: look once how the task stands.
      if (source.readyState !== EventSource.CLOSED) return;
      ask('GET /api/tasks/{taskId}', { path: { taskId }, signal: leaving.signal }).then(take, fallSilent);
    };
    return () => {
      leaving.abort();
      source.close();
    };
  }, [taskId, client]);
  return followed.snapshot === null || followed.snapshot.id === taskId ? followed : NOTHING_YET;
}
