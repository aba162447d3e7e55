import { createHash } from 'node:crypto';
import { writeSync } from 'node:fs';
import { mkdir, rm, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { createAmbient } from '../../../src/core/ambient.ts';
import { openCore } from '../../../src/core/core.ts';
import { TaskSnapshot } from '../../../src/domain/intake/task.ts';
import { Reading } from '../../../src/domain/measuring/reading.ts';
import { Photo } from '../../../src/domain/photo/photo.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { type RandomSource, randomSource } from '../random.ts';
import { smallPicture } from '../smallPictures.ts';
import type { Confirmation } from './confirmation.ts';
import { readingSavedAs } from './reading.ts';

/*
 * Imports photos and saves readings at the same time, by a plan drawn from a seed, until it is killed. Whatever the core has
 * confirmed is written to stdout at once, so that it outlives the program.
 *
 * Arguments: the archive's folder, a folder for the pictures, the seed.
 */
const [archiveFolder = '', pictureFolder = '', seedText = ''] = process.argv.slice(2);
const seed = Number(seedText);

function say(confirmation: Confirmation): void {
  writeSync(1, `${JSON.stringify(confirmation)}\n`);
}

const core = unwrap(
  await openCore({
    archiveFolder,
    rendererFolder: null,
    resourcesFolder: resolve(import.meta.dirname, '../../../resources'),
    ambient: createAmbient({ now: new Date(Date.parse('2026-01-01T00:00:00Z') + seed * 60_000).toISOString(), seed: seedText }),
    elapsedMs: () => performance.now(),
    logDefect: (_, error) => {
      throw error;
    },
  }),
);
say({ kind: 'opened' });

async function ask(method: string, path: string, body?: unknown, version?: number): Promise<Response> {
  const headers: Record<string, string> = {};
  if (body !== undefined) headers['content-type'] = 'application/json';
  if (version !== undefined) headers['if-match'] = `"${version}"`;
  const init = { method, headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) };
  const response = await core.handle(new Request(`http://core.invalid${path}`, init));
  if (!response.ok) throw new Error(`${method} ${path}: ${await response.text()}`);
  return response;
}

/** Follows an import to its end and says of each photo that it is kept, as soon as the core says so. */
async function follow(task: TaskSnapshot, hashes: ReadonlyMap<string, string>): Promise<void> {
  const said = new Set<string>();
  const events = await ask('GET', `/api/tasks/${task.id}/events`);
  let text = '';
  const decoder = new TextDecoder();
  for await (const piece of events.body ?? new ReadableStream<Uint8Array>()) {
    text += decoder.decode(piece, { stream: true });
    const whole = text.lastIndexOf('\n\n');
    const data = /^data: (.*)$/m.exec(text.slice(text.lastIndexOf('data: ', whole), whole))?.[1];
    if (data === undefined) continue;
    for (const { name, outcome } of TaskSnapshot.parse(JSON.parse(data)).files) {
      const sha256 = hashes.get(name);
      if (outcome.kind === 'refused') throw new Error(`${name}: ${JSON.stringify(outcome.failure)}`);
      if (outcome.kind !== 'added' || sha256 === undefined || said.has(name)) continue;
      said.add(name);
      say({ kind: 'photo', id: outcome.photoId, sha256 });
    }
    text = text.slice(whole + 2);
  }
}

async function importFor(random: RandomSource): Promise<void> {
  await follow(TaskSnapshot.parse(await (await ask('POST', '/api/imports', { intakeId: null })).json()), new Map());
  for (let batch = 0; ; batch++) {
    const paths: string[] = [];
    const hashes = new Map<string, string>();
    for (let count = Math.floor(random.uniform(1, 9)); count > 0; count--) {
      const name = `${seed}-${batch}-${count}.png`;
      const bytes = await smallPicture(seed * 10_000 + batch * 10 + count, 'png', 640, 480);
      await writeFile(join(pictureFolder, name), bytes);
      hashes.set(name, createHash('sha256').update(bytes).digest('hex'));
      paths.push(join(pictureFolder, name));
    }
    const intakeId = await core.grantFiles(paths);
    await follow(TaskSnapshot.parse(await (await ask('POST', '/api/imports', { intakeId })).json()), hashes);
    await Promise.all(paths.map((path) => rm(path)));
  }
}

async function readFor(random: RandomSource): Promise<void> {
  for (;;) {
    const photos = Photo.array().parse(await (await ask('GET', '/api/photos')).json());
    const photo = photos[Math.floor(random.uniform(0, photos.length))];
    if (photo === undefined) {
      await pause(5);
      continue;
    }
    const created = await ask('POST', `/api/photos/${photo.id}/readings`, readingSavedAs(1));
    let reading = Reading.parse(await created.json());
    say({ kind: 'reading', id: reading.id, version: reading.version });
    for (let saves = Math.floor(random.uniform(0, 20)); saves > 0; saves--) {
      const saved = await ask('PUT', `/api/readings/${reading.id}`, readingSavedAs(reading.version + 1), reading.version);
      reading = Reading.parse(await saved.json());
      say({ kind: 'reading', id: reading.id, version: reading.version });
      // A keeper moves a point now and then; without a pause the import would hardly get a turn.
      await pause(random.uniform(0, 15));
    }
  }
}

await mkdir(pictureFolder, { recursive: true });
await Promise.all([importFor(randomSource(seed)), readFor(randomSource(seed + 1))]);
