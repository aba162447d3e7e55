import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { createAmbient } from '../core/ambient.ts';
import { chooseArchiveFolder } from '../core/archiveFolder.ts';
import { openCore } from '../core/core.ts';
import { wordsFor } from '../words/failures.ts';
import { type LoopbackArguments, parseArguments, USAGE } from './arguments.ts';
import { watchPresence } from './presence.ts';
import { listen } from './server.ts';
import { writeTokenFile } from './tokenFile.ts';

/** Nobody here for this long: nobody will come back to an address that was good for one use. */
const PATIENCE_MS = 10 * 60_000;

/** Bundled, the pages lie beside the program; run from its source, where the build puts them. */
const BUILT_PAGES = import.meta.filename.endsWith('.ts') ? '../../out/renderer' : '../renderer';
const RESOURCES = '../../resources';

const elapsedMs = (): number => performance.now();

function readArguments(): LoopbackArguments {
  try {
    return parseArguments(process.argv.slice(2));
  } catch (error) {
    if (error instanceof TypeError) return endWith(`${error.message}\n\n${USAGE}`);
    throw error;
  }
}

function endWith(complaint: string): never {
  process.stderr.write(`${complaint}\n`);
  process.exit(1);
}

const asked = readArguments();
if (asked.help) {
  process.stdout.write(`${USAGE}\n`);
  process.exit(0);
}
const rendererFolder = asked.renderer === null ? resolve(import.meta.dirname, BUILT_PAGES) : resolve(asked.renderer);
if (!existsSync(join(rendererFolder, 'index.html'))) endWith(`No pages in ${rendererFolder}. "npm run build" makes them.`);
const opened = await openCore({
  archiveFolder: chooseArchiveFolder(asked.archive),
  rendererFolder,
  resourcesFolder: resolve(import.meta.dirname, RESOURCES),
  ambient: createAmbient(asked),
  elapsedMs,
  logDefect: (reference, error) => console.error(`Defect ${reference}:`, error),
});
if (!opened.ok) {
  const { happened, advice } = wordsFor(opened.failure);
  endWith(`${happened} ${advice}`);
}
const core = opened.value;

// Asked to end more than once, as by a terminal and by what started us, it ends once.
const ending = new AbortController();
const presence = watchPresence(PATIENCE_MS, () => {
  if (!asked.keep) ending.abort();
});
const server = await orEnd(
  listen({ port: asked.port, handle: (request) => core.handle(request), presence, elapsedMs }),
  `Port ${asked.port} can't be listened on. Without --port a free one is found.`,
);
const removeToken =
  asked.tokenFile === null
    ? async () => undefined
    : await orEnd(writeTokenFile(asked.tokenFile, server.token), `The token can't be written to ${asked.tokenFile}.`);

/** What the system refuses is told in a sentence, and the archive is given back first. */
async function orEnd<Value>(attempt: Promise<Value>, complaint: string): Promise<Value> {
  try {
    return await attempt;
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    await core.close();
    return endWith(`${complaint} (${error.code})`);
  }
}

/** Files in hand are finished, the archive is folded into one file, and only then is the process gone. */
async function closeDown(): Promise<void> {
  presence.stop();
  server.refuseNew();
  await removeToken();
  await core.close();
  await server.close();
  process.exit(0);
}
ending.signal.addEventListener('abort', () => void closeDown(), { once: true });
for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.on(signal, () => ending.abort());

process.stdout.write(`${JSON.stringify({ ready: server.newAddress(), port: server.port })}\n`);
