import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { createInterface } from 'node:readline';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const PROGRAM = resolve('src/loopback/main.ts');

let folder: string;
let started: Shell[];

interface Shell {
  readonly child: ChildProcess;
  /** The first line of stdout, parsed; rejects when there is none. */
  readonly ready: Promise<{ readonly ready: string; readonly port: number }>;
  readonly ended: Promise<number | null>;
  stdout(): string;
  stderr(): string;
}

function startShell(...more: readonly string[]): Shell {
  const child = spawn(process.execPath, [PROGRAM, '--archive', join(folder, 'archive'), '--renderer', join(folder, 'pages'), ...more], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let [out, err] = ['', ''];
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    err += text;
  });
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    out += text;
  });
  const ended = once(child, 'close').then(([code]) => code as number | null);
  const firstLine = once(createInterface({ input: child.stdout }), 'line').then(([line]) => JSON.parse(String(line)));
  const ready = Promise.race([
    firstLine,
    ended.then((code) => {
      throw new Error(`Expected the shell to be ready but it ended with ${code}: ${err}`);
    }),
  ]);
  // Only the tests that wait for it care.
  ready.catch(() => undefined);
  const shell: Shell = { child, ready, ended, stdout: () => out, stderr: () => err };
  started.push(shell);
  return shell;
}

beforeEach(async () => {
  started = [];
  folder = await mkdtemp(join(tmpdir(), 'exuviary-loopback-'));
  await mkdir(join(folder, 'pages'));
  await writeFile(join(folder, 'pages', 'index.html'), '<!doctype html><title>Exuviary</title>');
});
afterEach(async () => {
  for (const { child, ended } of started) {
    child.kill('SIGKILL');
    await ended;
  }
  await rm(folder, { recursive: true, force: true });
});

describe('the loopback shell as a program', () => {
  it('says where it is, answers whoever has the token, and ends cleanly when told to', async () => {
    const tokenFile = join(folder, 'token');
    await writeFile(tokenFile, 'an old token', { mode: 0o644 });
    const shell = startShell('--token-file', tokenFile, '--now', '2026-01-01T12:00Z', '--seed', 's');
    const { ready, port } = await shell.ready;
    expect(ready).toMatch(new RegExp(`^http://127\\.0\\.0\\.1:${port}/\\?ticket=[\\w-]{43}$`));
    expect((await stat(tokenFile)).mode & 0o777).toBe(0o600);
    const token = (await readFile(tokenFile, 'utf8')).trim();
    const headers = { authorization: `Bearer ${token}` };
    const about = await (await fetch(`http://127.0.0.1:${port}/api/about`, { headers })).json();
    expect(about).toMatchObject({ archiveFolder: join(folder, 'archive'), specimens: 0 });
    expect((await fetch(`http://127.0.0.1:${port}/api/about`)).status).toBe(403);

    // An open stream does not hold it up.
    const presence = await fetch(`http://127.0.0.1:${port}/api/presence`, { headers });
    shell.child.kill('SIGTERM');
    expect(await shell.ended).toBe(0);
    await expect(presence.text()).rejects.toThrow();
    expect(existsSync(tokenFile)).toBe(false);
    expect(existsSync(join(folder, 'archive', 'catalogue.db-wal'))).toBe(false);
    expect(shell.stdout().trim().split('\n')).toHaveLength(1);
    expect(shell.stderr()).toBe('');
    expect(shell.stdout()).not.toContain(token);
  });
  it('lets two programs not hold one archive', async () => {
    await startShell().ready;
    const second = startShell();
    expect(await second.ended).toBe(1);
    expect(second.stdout()).toBe('');
    expect(second.stderr()).toContain(join(folder, 'archive'));
  });
  it('says so when its port is taken', async () => {
    const { port } = await startShell().ready;
    const second = startShell('--archive', join(folder, 'other archive'), '--port', String(port));
    expect(await second.ended).toBe(1);
    expect(second.stderr()).toContain(`Port ${port} can't be listened on`);
  });
  it('gives the archive back when it is killed', async () => {
    const first = startShell();
    await first.ready;
    first.child.kill('SIGKILL');
    await first.ended;
    expect((await startShell().ready).port).toBeGreaterThan(0);
  });
  it('says how it is used when asked to, and opens nothing', async () => {
    const shell = startShell('--help');
    expect(await shell.ended).toBe(0);
    expect(shell.stdout()).toMatch(/^Usage: loopback/);
    expect(shell.stderr()).toBe('');
    expect(existsSync(join(folder, 'archive'))).toBe(false);
  });
  it.each([
    [['--port', 'none'], /--port/],
    [['--nonsense'], /--nonsense/],
    [['--renderer', '/no such folder'], /No pages in .*npm run build/],
    [['--token-file', '/no such folder/token'], /token can't be written to \/no such folder\/token\. \(ENOENT\)/],
  ])('says what is wrong with %j and what to do', async (words, sentence) => {
    const shell = startShell(...words);
    expect(await shell.ended).toBe(1);
    expect(shell.stderr()).toMatch(sentence);
    expect(shell.stderr()).not.toContain('    at ');
  });
});
