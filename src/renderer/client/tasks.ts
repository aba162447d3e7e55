import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { TaskSnapshot } from '../../domain/intake/task.ts';
import { addressOf, ask } from './ask.ts';

/**
 * Follows one task by its stream of snapshots; null until the first has come. The stream reconnects by itself. When the
 * task has ended every kept answer is asked again: it can have touched all of them.
 */
export function useTask(taskId: string | null): TaskSnapshot | null {
  const client = useQueryClient();
  const [snapshot, setSnapshot] = useState<TaskSnapshot | null>(null);
  useEffect(() => {
    if (taskId === null) return;
    const leaving = new AbortController();
    const take = (next: TaskSnapshot) => {
      setSnapshot(next);
      if (next.state === 'running') return;
      source.close();
      void client.invalidateQueries();
    };
    const source = new EventSource(addressOf('GET /api/tasks/{taskId}/events', { taskId }));
    source.onmessage = (event: MessageEvent<string>) => take(TaskSnapshot.parse(JSON.parse(event.data)));
    source.onerror = () => {
      // A closed stream (unlike one that is reconnecting) will not come back: look once how the task stands.
      if (source.readyState !== EventSource.CLOSED) return;
      ask('GET /api/tasks/{taskId}', { path: { taskId }, signal: leaving.signal }).then(take, () => setSnapshot(null));
    };
    return () => {
      leaving.abort();
      source.close();
    };
  }, [taskId, client]);
  return snapshot?.id === taskId ? snapshot : null;
}
