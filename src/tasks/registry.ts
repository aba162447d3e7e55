import type { Ambient } from '../domain/ambient.ts';
import { type Failure, Refusal } from '../domain/failure.ts';
import type { FileOutcome, TaskSnapshot } from '../domain/intake/task.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { remainingSecondsOf } from './remaining.ts';
import { createThrottle, type Throttle } from './throttle.ts';

/** Snapshots come at most this often, except the first, the last and nothing in between that matters. */
const SNAPSHOT_EVERY_MS = 200;
/** Tasks that have ended and can still be looked at. */
const ENDED_TASKS_KEPT = 50;

export interface RegistryOptions {
  readonly ambient: Ambient;
  /** A clock that never goes back, in milliseconds. */
  readonly elapsedMs: () => number;
  /** Notes a mistake of ours and answers the reference to show for it. */
  readonly reportDefect: (error: unknown) => string;
}

/** How a running task tells what it does. */
export interface Progress {
  /** The file in hand. */
  begin(index: number): void;
  settle(index: number, outcome: FileOutcome): void;
}

export interface TaskPlan {
  readonly kind: TaskSnapshot['kind'];
  readonly files: readonly string[];
  /** Looks at `signal` between two files, never within one. */
  readonly work: (progress: Progress, signal: AbortSignal) => Promise<void>;
}

export type SnapshotListener = (snapshot: TaskSnapshot, revision: number) => void;

/** Long work. A task belongs to the core, not to a request: closing the page does not stop it. */
export interface Tasks {
  start(plan: TaskPlan): TaskSnapshot;
  /** Newest first. */
  list(): readonly TaskSnapshot[];
  /** The present state and how often it has changed. Fails with `task-not-found`. */
  get(taskId: string): Result<{ readonly snapshot: TaskSnapshot; readonly revision: number }>;
  /** Calls `listen` at each change until the task has ended. */
  subscribe(taskId: string, listen: SnapshotListener): () => void;
  /** Asks the task to end after the files in hand. */
  stop(taskId: string): Result<TaskSnapshot>;
  /** Stops everything and waits until it has stopped. */
  close(): Promise<void>;
}

interface RunningTask {
  readonly id: string;
  readonly plan: TaskPlan;
  readonly startedAt: string;
  readonly startedMs: number;
  readonly outcomes: FileOutcome[];
  readonly stopping: AbortController;
  readonly listeners: Set<SnapshotListener>;
  readonly throttle: Throttle;
  state: TaskSnapshot['state'];
  endedAt: string | null;
  failure: Failure | null;
  current: string | null;
  revision: number;
  ended: Promise<void>;
}

export function createTasks(options: RegistryOptions): Tasks {
  const tasks = new Map<string, RunningTask>();

  const snapshotOf = (task: RunningTask): TaskSnapshot => {
    const total = task.plan.files.length;
    const done = task.outcomes.filter((outcome) => outcome.kind !== 'waiting').length;
    const running = task.state === 'running';
    return {
      id: task.id,
      kind: task.plan.kind,
      state: task.state,
      startedAt: task.startedAt,
      endedAt: task.endedAt,
      done,
      total,
      current: running ? task.current : null,
      remainingSeconds: running ? remainingSecondsOf(done, total, options.elapsedMs() - task.startedMs) : null,
      failure: task.failure,
      files: task.plan.files.map((name, index) => ({ name, outcome: task.outcomes[index] ?? { kind: 'waiting' } })),
    };
  };

  const publish = (task: RunningTask): void => {
    const snapshot = snapshotOf(task);
    for (const listen of [...task.listeners]) listen(snapshot, task.revision);
  };

  const run = async (task: RunningTask): Promise<void> => {
    const changed = (change: () => void): void => {
      change();
      task.revision += 1;
      task.throttle.request();
    };
    const progress: Progress = {
      begin: (index) => changed(() => (task.current = task.plan.files[index] ?? null)),
      settle: (index, outcome) => changed(() => (task.outcomes[index] = outcome)),
    };
    try {
      await task.plan.work(progress, task.stopping.signal);
      const unfinished = task.outcomes.some((outcome) => outcome.kind === 'waiting');
      task.state = task.stopping.signal.aborted && unfinished ? 'stopped' : 'done';
    } catch (error) {
      task.state = 'failed';
      task.failure = error instanceof Refusal ? error.failure : { code: 'defect', reference: options.reportDefect(error) };
    }
    task.endedAt = options.ambient.now();
    task.revision += 1;
    task.throttle.cancel();
    publish(task);
    task.listeners.clear();
    forgetOldest(tasks);
  };

  return {
    start(plan) {
      const task: RunningTask = {
        id: options.ambient.newId(),
        plan,
        startedAt: options.ambient.now(),
        startedMs: options.elapsedMs(),
        outcomes: plan.files.map(() => ({ kind: 'waiting' })),
        stopping: new AbortController(),
        listeners: new Set(),
        throttle: createThrottle(SNAPSHOT_EVERY_MS, options.elapsedMs, () => publish(task)),
        state: 'running',
        endedAt: null,
        failure: null,
        current: null,
        revision: 0,
        ended: Promise.resolve(),
      };
      tasks.set(task.id, task);
      const snapshot = snapshotOf(task);
      task.ended = run(task);
      return snapshot;
    },
    list: () => [...tasks.values()].reverse().map(snapshotOf),
    get(taskId) {
      const task = tasks.get(taskId);
      return task ? succeed({ snapshot: snapshotOf(task), revision: task.revision }) : fail({ code: 'task-not-found', taskId });
    },
    subscribe(taskId, listen) {
      const task = tasks.get(taskId);
      if (task?.state === 'running') task.listeners.add(listen);
      return () => void task?.listeners.delete(listen);
    },
    stop(taskId) {
      const task = tasks.get(taskId);
      if (!task) return fail({ code: 'task-not-found', taskId });
      task.stopping.abort();
      return succeed(snapshotOf(task));
    },
    async close() {
      for (const task of tasks.values()) task.stopping.abort();
      await Promise.all([...tasks.values()].map((task) => task.ended));
    },
  };
}

function forgetOldest(tasks: Map<string, RunningTask>): void {
  const ended = [...tasks.values()].filter((task) => task.state !== 'running');
  for (const task of ended.slice(0, Math.max(0, ended.length - ENDED_TASKS_KEPT))) tasks.delete(task.id);
}
