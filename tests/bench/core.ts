import { resolve } from 'node:path';
import { createAmbient } from '../../src/core/ambient.ts';
import { type Core, openCore } from '../../src/core/core.ts';

export const root = resolve(import.meta.dirname, '../..');

/** The whole program without a shell, on an archive folder. */
export async function openBenchCore(archiveFolder: string): Promise<Core> {
  const opened = await openCore({
    archiveFolder,
    rendererFolder: null,
    resourcesFolder: resolve(root, 'resources'),
    ambient: createAmbient({ now: null, seed: null }),
    elapsedMs: () => performance.now(),
    logDefect: (reference, error) => console.error(`Defect ${reference}:`, error),
  });
  if (!opened.ok) throw new Error(`Expected the archive to open but received ${opened.failure.code}`);
  return opened.value;
}

export async function answer<Value>(core: Core, method: string, path: string, body?: unknown): Promise<Value> {
  const init: RequestInit = { method };
  if (body instanceof Blob) {
    init.body = body;
    init.headers = { 'content-type': 'application/octet-stream' };
  } else if (body !== undefined) {
    init.body = JSON.stringify(body);
    init.headers = { 'content-type': 'application/json' };
  }
  const response = await core.handle(new Request(`http://exuviary.invalid${path}`, init));
  if (!response.ok) throw new Error(`${method} ${path}: ${response.status} ${await response.text()}`);
  return (response.status === 204 ? undefined : await response.json()) as Value;
}

/** Reads a task's events until it has ended; resolves with how it ended. */
export async function taskEnd(core: Core, taskId: string): Promise<string> {
  const response = await core.handle(new Request(`http://exuviary.invalid/api/tasks/${taskId}/events`));
  if (response.body === null) throw new Error('Expected a stream of events');
  const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
  let pending = '';
  for (;;) {
    const { done, value } = await reader.read();
    if (done) throw new Error('Expected the task to end before its events do');
    pending += value;
    const blocks = pending.split('\n\n');
    pending = blocks.pop() ?? '';
    for (const block of blocks) {
      const data = block
        .split('\n')
        .filter((line) => line.startsWith('data:'))
        .map((line) => line.slice(5))
        .join('\n');
      if (data === '') continue;
      const { state } = JSON.parse(data) as { state: string };
      if (state === 'running') continue;
      await reader.cancel();
      return state;
    }
  }
}
