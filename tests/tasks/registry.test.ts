import { describe, expect, it } from 'vitest';
import { Refusal } from '../../src/domain/failure.ts';
import { TaskSnapshot } from '../../src/domain/intake/task.ts';
import { unwrap } from '../../src/domain/result.ts';
import { createTasks, type Progress, type TaskPlan } from '../../src/tasks/registry.ts';

function registry() {
  const defects: unknown[] = [];
  let made = 0;
  const tasks = createTasks({
    ambient: { now: () => '2026-01-01T12:00:00.000Z', newId: () => `task-${++made}` },
    elapsedMs: () => performance.now(),
    reportDefect: (error) => `reference-${defects.push(error)}`,
  });
  /** Starts a task and waits for its last snapshot. */
  const run = async (work: TaskPlan['work'], files = ['a.jpg', 'b.jpg']): Promise<TaskSnapshot> => {
    const { id } = tasks.start({ kind: 'import', files, work });
    return ended(id);
  };
  const ended = (id: string): Promise<TaskSnapshot> =>
    new Promise((resolve) => {
      const look = (snapshot: TaskSnapshot): void => {
        if (snapshot.state !== 'running') resolve(snapshot);
      };
      tasks.subscribe(id, look);
      look(unwrap(tasks.get(id)).snapshot);
    });
  return { tasks, run, ended, defects };
}

const added = (photoId: string) => ({ kind: 'added', photoId }) as const;

describe('a task', () => {
  it('begins with everything waiting and ends with what became of it', async () => {
    const { tasks, ended } = registry();
    const first = tasks.start({
      kind: 'import',
      files: ['a.jpg', 'b.jpg'],
      work: async (progress) => {
        await new Promise(setImmediate);
        progress.settle(0, added('p1'));
        progress.settle(1, { kind: 'refused', failure: { code: 'file-empty', file: 'b.jpg' } });
      },
    });
    expect(TaskSnapshot.parse(first)).toMatchObject({ state: 'running', done: 0, total: 2, endedAt: null, failure: null });
    expect(first.files.map((file) => file.outcome.kind)).toEqual(['waiting', 'waiting']);
    const last = TaskSnapshot.parse(await ended(first.id));
    expect(last).toMatchObject({ state: 'done', done: 2, current: null, endedAt: '2026-01-01T12:00:00.000Z' });
    expect(last.files.map((file) => file.outcome.kind)).toEqual(['added', 'refused']);
  });
  it('tells each listener its last state, whatever came too fast before', async () => {
    const { tasks, ended } = registry();
    const go = Promise.withResolvers<Progress>();
    const { id } = tasks.start({
      kind: 'import',
      files: Array.from({ length: 50 }, (_, index) => `${index}.jpg`),
      work: async (progress) => {
        go.resolve(progress);
        await new Promise(setImmediate);
        for (let index = 0; index < 50; index++) progress.settle(index, added(`p${index}`));
      },
    });
    const heard: TaskSnapshot[] = [];
    tasks.subscribe(id, (snapshot) => heard.push(snapshot));
    await ended(id);
    expect(heard.at(-1)).toMatchObject({ state: 'done', done: 50 });
    expect(heard.length).toBeLessThan(5);
  });
  it('says which file it has in hand', async () => {
    const { tasks, run } = registry();
    const seen: (string | null)[] = [];
    await run(async (progress) => {
      progress.begin(1);
      seen.push(tasks.list()[0]?.current ?? null);
    });
    expect(seen).toEqual(['b.jpg']);
  });
  it('stops when it is asked to, with the rest still waiting', async () => {
    const { tasks, ended } = registry();
    const { id } = tasks.start({
      kind: 'import',
      files: ['a.jpg', 'b.jpg'],
      work: async (progress, signal) => {
        progress.settle(0, added('p1'));
        if (!signal.aborted) await new Promise((resolve) => signal.addEventListener('abort', resolve));
      },
    });
    expect(unwrap(tasks.stop(id)).id).toBe(id);
    expect(await ended(id)).toMatchObject({ state: 'stopped', done: 1, failure: null });
  });
  it('that had done everything before the stop is done', async () => {
    const { tasks, ended } = registry();
    const { id } = tasks.start({ kind: 'import', files: [], work: async () => undefined });
    tasks.stop(id);
    expect((await ended(id)).state).toBe('done');
  });
  it('fails with the failure it met', async () => {
    const { run, defects } = registry();
    const snapshot = await run(async () => {
      throw new Refusal({ code: 'disk-full' });
    });
    expect(snapshot).toMatchObject({ state: 'failed', failure: { code: 'disk-full' } });
    expect(defects).toEqual([]);
  });
  it('fails with a reference to our mistake', async () => {
    const { run, defects } = registry();
    const mistake = new TypeError('Expected a mistake');
    const snapshot = await run(async () => {
      throw mistake;
    });
    expect(snapshot).toMatchObject({ state: 'failed', failure: { code: 'defect', reference: 'reference-1' } });
    expect(defects).toEqual([mistake]);
  });
});

describe('the tasks', () => {
  it('are listed newest first, with those that have ended', async () => {
    const { tasks, run } = registry();
    await run(async () => undefined);
    await run(async () => undefined);
    expect(tasks.list().map((task) => task.id)).toEqual(['task-2', 'task-1']);
  });
  it('that have ended are remembered up to a bound', async () => {
    const { tasks, run } = registry();
    for (let index = 0; index < 55; index++) await run(async () => undefined, []);
    expect(tasks.list()).toHaveLength(50);
    expect(tasks.list()[0]?.id).toBe('task-55');
  });
  it('of another name are not found', () => {
    const { tasks } = registry();
    expect(tasks.get('none')).toEqual({ ok: false, failure: { code: 'task-not-found', taskId: 'none' } });
    expect(tasks.stop('none')).toEqual({ ok: false, failure: { code: 'task-not-found', taskId: 'none' } });
  });
  it('all end before the close does', async () => {
    const { tasks } = registry();
    let finished = false;
    tasks.start({
      kind: 'import',
      files: ['a.jpg'],
      work: async (_, signal) => {
        await new Promise((resolve) => signal.addEventListener('abort', resolve));
        await new Promise(setImmediate);
        finished = true;
      },
    });
    await tasks.close();
    expect(finished).toBe(true);
  });
});
