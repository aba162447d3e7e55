import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { watch } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { Confirmation } from './killing/confirmation.ts';
import { catalogueTroubles, type Promises, troublesAfterKill } from './killing/survival.ts';
import { type RandomSource, randomSource } from './random.ts';

export interface KillRuns {
  readonly kills: number;
  /** Kills after which everything that had been confirmed was there, whole, and nothing half-written was to be seen. */
  readonly survived: number;
  readonly confirmedPhotos: number;
  readonly confirmedReadings: number;
  readonly troubles: readonly string[];
}

/**
 * When to kill: so long after the nth thing of a kind. A `change` is one in the archive's folder or in `incoming`, as the
 * system reports it: these fall between the steps of staging, publishing and recording, where random moments seldom do.
 */
interface KillMoment {
  readonly after: Confirmation['kind'] | 'start' | 'change';
  readonly count: number;
  readonly delayMs: number;
}

const PROGRAM = resolve(import.meta.dirname, 'killing/program.ts');

/** Kills a program that imports photos and saves readings with SIGKILL, again and again, always on the same archive. */
export async function killRuns(kills: number, seed: number): Promise<KillRuns> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-kill-'));
  const archiveFolder = join(folder, 'archive');
  const random = randomSource(seed);
  const promises: Promises = { photos: new Map(), readings: new Map() };
  const troubles: string[] = [];
  let survived = 0;
  await mkdir(join(archiveFolder, 'incoming'), { recursive: true });
  try {
    for (let run = 1; run <= kills; run++) {
      const programArguments = [archiveFolder, join(folder, 'pictures'), String(seed + run)];
      await runAndKill(programArguments, momentFrom(random), promises);
      const found = [...(await troublesAfterKill(archiveFolder, promises)), ...catalogueTroubles(archiveFolder)];
      troubles.push(...found.map((trouble) => `kill ${run}: ${trouble}`));
      if (found.length === 0) survived += 1;
    }
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
  return { kills, survived, confirmedPhotos: promises.photos.size, confirmedReadings: promises.readings.size, troubles };
}

function momentFrom(random: RandomSource): KillMoment {
  const chance = random.uniform(0, 1);
  if (chance < 0.1) return { after: 'start', count: 1, delayMs: random.uniform(0, 800) };
  if (chance < 0.2) return { after: 'opened', count: 1, delayMs: random.uniform(0, 200) };
  if (chance < 0.4) return { after: 'photo', count: Math.floor(random.uniform(1, 8)), delayMs: random.uniform(0, 80) };
  if (chance < 0.5) return { after: 'reading', count: Math.floor(random.uniform(1, 60)), delayMs: random.uniform(0, 20) };
  return { after: 'change', count: Math.floor(random.uniform(1, 250)), delayMs: random.uniform(0, 3) };
}

/** @throws when the program ends by itself. */
async function runAndKill(programArguments: readonly string[], moment: KillMoment, promises: Promises): Promise<void> {
  const [archiveFolder = ''] = programArguments;
  const program = spawn(process.execPath, [PROGRAM, ...programArguments], { stdio: ['ignore', 'pipe', 'pipe'] });
  let seen = 0;
  const happened = (what: KillMoment['after']): void => {
    if (what !== moment.after) return;
    seen += 1;
    if (seen === moment.count) setTimeout(() => program.kill('SIGKILL'), moment.delayMs);
  };
  const watchers = [archiveFolder, join(archiveFolder, 'incoming')].map((folder) => watch(folder, () => happened('change')));
  let complaints = '';
  program.stderr.setEncoding('utf8').on('data', (text: string) => {
    complaints += text;
  });
  createInterface({ input: program.stdout }).on('line', (line) => {
    const confirmation = Confirmation.parse(JSON.parse(line));
    if (confirmation.kind === 'photo') promises.photos.set(confirmation.id, confirmation.sha256);
    if (confirmation.kind === 'reading') promises.readings.set(confirmation.id, confirmation.version);
    happened(confirmation.kind);
  });
  happened('start');
  const [code, signal] = (await once(program, 'close')) as [number | null, NodeJS.Signals | null];
  for (const watcher of watchers) watcher.close();
  if (signal !== 'SIGKILL') throw new Error(`Expected the program to be killed but it ended with ${code ?? signal}: ${complaints}`);
}
