import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, readFile, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { createInterface } from 'node:readline';
import { type Browser, chromium, expect } from '@playwright/test';
import { chromiumOptions } from './chromium.ts';

/** A busy machine takes a second or two. */
const ANSWERED_WITHIN_MS = 15_000;

const root = resolve(import.meta.dirname, '../..');

/** `npm start` as a process of its own. */
export interface Launcher {
  /** What it has printed so far, line by line. */
  readonly lines: readonly string[];
  /** Ends it the way Ctrl-C does. */
  interrupt(): void;
  /** Its exit code, once it has one. */
  readonly ended: Promise<number | null>;
}

export function startLauncher(words: readonly string[], display: string | null): Launcher {
  const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...rest } = process.env;
  const env = display === null ? rest : { ...rest, DISPLAY: display };
  const child = spawn(process.execPath, [resolve(root, 'src/launch/main.ts'), ...words], { env, stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  createInterface({ input: child.stdout }).on('line', (line) => lines.push(line));
  return {
    lines,
    interrupt: () => child.kill('SIGINT'),
    ended: once(child, 'exit').then(() => child.exitCode),
  };
}

/**
 * A program that is Chromium without a screen, whatever it is asked to show, and that lets itself be driven. Answers its
 * path; `openedBy` then finds the window that somebody opened with it.
 */
export async function writeHeadlessBrowser(folder: string): Promise<string> {
  const { executablePath = chromium.executablePath() } = chromiumOptions();
  const program = join(folder, 'browser');
  const script = [
    '#!/bin/sh',
    `for word in "$@"; do case "$word" in --user-data-dir=*) echo "\${word#*=}" > "${program}.profile";; esac; done`,
    `exec "${executablePath}" --headless=new --remote-debugging-port=0 --disable-gpu --disable-quic "$@"`,
  ];
  await writeFile(program, `${script.join('\n')}\n`);
  await chmod(program, 0o755);
  return program;
}

/** The profile folder that such a browser was started with. */
export async function profileOf(program: string): Promise<string> {
  await expect(async () => expect(await readFile(`${program}.profile`, 'utf8')).not.toBe('')).toPass();
  return (await readFile(`${program}.profile`, 'utf8')).trim();
}

export async function openedBy(program: string): Promise<Browser> {
  const portFile = join(await profileOf(program), 'DevToolsActivePort');
  await expect(async () => expect(await readFile(portFile, 'utf8')).toMatch(/^\d+\n/)).toPass();
  const [port] = (await readFile(portFile, 'utf8')).split('\n');
  // Seldom, and not known why, a Chromium that has just started takes the connection and never answers; asked anew, it does.
  const asked = () => chromium.connectOverCDP(`http://127.0.0.1:${port}`, { timeout: ANSWERED_WITHIN_MS });
  return await asked().catch(asked);
}
