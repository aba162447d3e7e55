import { useQueryClient } from '@tanstack/react-query';
import { createContext, type ReactElement, type ReactNode, useContext, useEffect, useRef, useState } from 'react';
import type { TaskSnapshot } from '../../../domain/intake/task.ts';
import { ask } from '../../client/ask.ts';
import { useAnswer } from '../../client/queries.ts';
import { useTask } from '../../client/tasks.ts';
import type { Host } from '../../host/host.ts';

/** What is coming in. Lives above the pages, so that looking at an animal meanwhile does not stop it. */
export interface IntakeRun {
  /** Files going over to the archive, before the import proper. */
  readonly sending: { readonly sent: number; readonly total: number } | null;
  /** The import, running or ended; null once put aside. */
  readonly task: TaskSnapshot | null;
  /** The archive does not answer at the moment. */
  readonly silent: boolean;
  readonly error: unknown;
  readonly busy: boolean;
  /** Ends with the id of the import that took these files on; null when none did, and `error` says why unless it was stopped. */
  bringIn(files: readonly File[]): Promise<string | null>;
  /** Goes on with what an earlier run left unfinished. */
  resume(): void;
  stop(): void;
  putAside(): void;
}

const IntakeContext = createContext<IntakeRun | null>(null);

export function useIntakeRun(): IntakeRun {
  const run = useContext(IntakeContext);
  if (!run) throw new Error('Expected an IntakeProvider above but found none.');
  return run;
}

export function IntakeProvider({ host, children }: { host: Host; children: ReactNode }): ReactElement {
  const client = useQueryClient();
  const [beginning, setBeginning] = useState(false);
  const [sending, setSending] = useState<IntakeRun['sending']>(null);
  const [taskId, setTaskId] = useState<string | null>(null);
  const [error, setError] = useState<unknown>(null);
  const stopping = useRef<AbortController | null>(null);
  const { snapshot: task, silent } = useTask(taskId);
  const running = useRunningImport();

  // A window opened or reloaded in the middle of an import finds it again; while files of its own go over, another's is not taken for it.
  useEffect(() => {
    if (running !== null && !beginning) setTaskId((known) => known ?? running);
  }, [running, beginning]);

  const start = async (files: readonly File[]): Promise<string | null> => {
    const controller = new AbortController();
    stopping.current = controller;
    setBeginning(true);
    setError(null);
    setTaskId(null);
    try {
      let intakeId: string | null = null;
      if (files.length > 0) {
        setSending({ sent: 0, total: files.length });
        intakeId = await host.handOver(files, {
          signal: controller.signal,
          onSent: (sent) => setSending({ sent, total: files.length }),
        });
      }
      const started = await ask('POST /api/imports', { body: { intakeId }, signal: controller.signal });
      setTaskId(started.id);
      void client.invalidateQueries({ queryKey: ['GET /api/about'] });
      return started.id;
    } catch (caught) {
      // Stopped in the last moment the import may be running all the same: then it is found again.
      if (controller.signal.aborted) void client.invalidateQueries({ queryKey: ['GET /api/tasks'] });
      else setError(caught);
      return null;
    } finally {
      setBeginning(false);
      setSending(null);
      stopping.current = null;
    }
  };

  const stop = () => {
    if (stopping.current) stopping.current.abort();
    else if (taskId !== null) ask('DELETE /api/tasks/{taskId}', { path: { taskId } }).catch(setError);
  };

  const run: IntakeRun = {
    sending,
    task: taskId === null ? null : task,
    silent: taskId !== null && silent,
    error,
    busy: beginning || (taskId !== null && (task === null || task.state === 'running')),
    bringIn: start,
    resume: () => void start([]),
    stop,
    putAside: () => {
      setTaskId(null);
      setError(null);
    },
  };
  return <IntakeContext value={run}>{children}</IntakeContext>;
}

function useRunningImport(): string | null {
  const { data: tasks } = useAnswer('GET /api/tasks', {});
  return tasks?.find((task) => task.kind === 'import' && task.state === 'running')?.id ?? null;
}
