import { spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Electron } from './choose.ts';

/** Enough for a good line; whoever has none waits no longer than this, and only when no Electron is there. */
const PATIENCE_MS = 45_000;

/**
 * Whether Electron's program is there. Looks for the files instead of importing the package, because evaluating
 * `electron` without its program starts a download.
 */
export function findElectron(root: string): Electron {
  const folder = join(root, 'node_modules/electron');
  const pointer = join(folder, 'path.txt');
  if (!existsSync(join(folder, 'install.js'))) return { state: 'unavailable', reason: 'the electron package is not installed' };
  if (!existsSync(pointer)) return { state: 'absent' };
  const executable = join(folder, 'dist', readFileSync(pointer, 'utf8').trim());
  return existsSync(executable) ? { state: 'present', executable } : { state: 'absent' };
}

/** Lets Electron's own installer fetch the program, quietly and for a limited time; a second start finds it in place. */
export async function fetchElectron(root: string, stopping: AbortSignal, patienceMs: number = PATIENCE_MS): Promise<Electron> {
  const installer = join(root, 'node_modules/electron/install.js');
  const ended = await new Promise<'fetched' | 'failed' | 'too-slow'>((settle) => {
    const child = spawn(process.execPath, [installer], {
      stdio: 'ignore',
      timeout: patienceMs,
      killSignal: 'SIGKILL',
      signal: stopping,
    });
    child.on('error', () => settle('failed'));
    child.on('exit', (code, signal) => settle(code === 0 ? 'fetched' : signal === 'SIGKILL' ? 'too-slow' : 'failed'));
  });
  const found = ended === 'fetched' ? findElectron(root) : null;
  if (found?.state === 'present') return found;
  const tooSlow = `Electron did not arrive within ${patienceMs / 1000} seconds (\`node src/launch/pinned.mjs node_modules/electron/install.js\` fetches it at leisure)`;
  return { state: 'unavailable', reason: ended === 'too-slow' ? tooSlow : 'Electron is not installed and could not be fetched' };
}
