import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import process from 'node:process';

export const ROOT = resolve(import.meta.dirname, '../..');

/** Runs a program in the folder of package.json, its output going where ours goes. Answers the exit code; null if there is none. */
export function run(executable: string, ...words: readonly string[]): Promise<number | null> {
  return new Promise((settle) => {
    const child = spawn(executable, words, { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] });
    child.on('error', (error) => {
      console.error(`Expected to start ${executable} but received: ${error.message}`);
      settle(null);
    });
    child.on('exit', (code) => settle(code));
  });
}

/** Runs a tool's own script under the Node that runs this. */
export function runTool(script: string, ...words: readonly string[]): Promise<number | null> {
  return run(process.execPath, resolve(ROOT, 'node_modules', script), ...words);
}
