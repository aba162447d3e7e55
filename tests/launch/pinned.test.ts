import { spawn, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { describe, expect, test } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const PINNED = resolve(root, 'src/launch/pinned.mjs');

function run(...words: string[]): { status: number | null; stdout: string } {
  return spawnSync(process.execPath, [PINNED, ...words], { encoding: 'utf8' });
}

describe('the starter for the pinned Node', () => {
  test('runs Node 24 or newer, whatever ran the starter', () => {
    expect(Number.parseInt(run('-p', 'process.versions.node').stdout, 10)).toBeGreaterThanOrEqual(24);
  });

  test('hands over arguments and exit code', () => {
    const { status, stdout } = run('-e', 'console.log(process.argv.slice(1).join("|")); process.exitCode = 5', 'two words', '--flag');
    expect(stdout).toBe('two words|--flag\n');
    expect(status).toBe(5);
  });

  test('answers a signal as shells do', () => {
    expect(run('-e', 'process.kill(process.pid, "SIGKILL")').status).toBe(128 + 9);
  });

  test.skipIf(process.platform === 'win32')('ends what it runs when the shell it was started from dies', async () => {
    const script = 'process.on("SIGTERM", () => { console.log("ended"); process.exit() }); console.log("runs"); setInterval(() => 0, 1000)';
    // The trailing command keeps the shell from being replaced by what it runs, as some shells do.
    const shell = spawn('/bin/sh', ['-c', `"$0" "$1" -e '${script}'; true`, process.execPath, PINNED], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const lines = createInterface({ input: shell.stdout })[Symbol.asyncIterator]();
    expect((await lines.next()).value).toBe('runs');
    shell.kill('SIGKILL');
    expect((await lines.next()).value).toBe('ended');
  });

  test('puts the same Node first for tools that start it by name', () => {
    const { stdout } = run('-p', 'process.env.PATH.split(require("node:path").delimiter)[0] + "\\n" + process.execPath');
    const [first, executable = ''] = stdout.trim().split('\n');
    expect(first).toBe(dirname(executable));
  });

  test('knows exactly the packages that package.json pins', () => {
    const { optionalDependencies } = JSON.parse(readFileSync(resolve(root, 'package.json'), 'utf8'));
    const named = [...readFileSync(PINNED, 'utf8').matchAll(/: '([\w-]+)\/bin\/node/g)].map(([, name]) => name);
    expect(named.toSorted()).toEqual(Object.keys(optionalDependencies).toSorted());
  });
});
