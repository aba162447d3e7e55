import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { answer, openBenchCore } from './core.ts';
import { type Figure, median, reported } from './figure.ts';

const STARTS = 9;

/** From opening an existing archive to the first answer. */
export async function coldStart(): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  try {
    const durationsMs: number[] = [];
    for (let start = 0; start < STARTS; start++) {
      const from = performance.now();
      const core = await openBenchCore(folder);
      await answer(core, 'GET', '/api/about');
      durationsMs.push(performance.now() - from);
      await core.close();
    }
    return [reported('cold-start-ms', median(durationsMs), 'ms')];
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
