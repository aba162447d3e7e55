import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';

/** How long a program may take to close what it has open before it is ended the hard way. */
const GRACE_MS = 10_000;

export interface Ending {
  /** null if a signal ended it, or if it never started. */
  readonly code: number | null;
  /** Why, in words for the end of a sentence. */
  readonly reason: string;
}

export interface Program {
  /** What it announced in a line `{"ready": "..."}` on its stdout; null if it ended without. */
  readonly ready: Promise<string | null>;
  readonly ended: Promise<Ending>;
  /** Asks it to end, and resolves when it has. */
  stop(): Promise<void>;
}

export interface Command {
  readonly executable: string;
  readonly arguments: readonly string[];
  /** Browsers fill the terminal with remarks for their own developers. */
  readonly quiet: boolean;
}

/** Starts a program that ends with us. Its lines on stdout, apart from the announcement, go to `print`. */
export function start({ executable, arguments: words, quiet }: Command, print: (line: string) => void): Program {
  const child = spawn(executable, words, { stdio: ['ignore', quiet ? 'ignore' : 'pipe', quiet ? 'ignore' : 'inherit'] });
  const ended = new Promise<Ending>((settle) => {
    child.on('error', (error) => settle({ code: null, reason: `${executable} could not be started (${error.message})` }));
    child.on('exit', (code, signal) => settle({ code, reason: `${executable} ended with ${signal ?? `code ${code}`}` }));
  });
  const ready = new Promise<string | null>((settle) => {
    void ended.then(() => settle(null));
    if (child.stdout === null) return;
    createInterface({ input: child.stdout }).on('line', (line) => {
      const announced = announcementIn(line);
      if (announced === null) print(line);
      else settle(announced);
    });
  });
  return {
    ready,
    ended,
    async stop() {
      child.kill('SIGTERM');
      const impatience = setTimeout(() => child.kill('SIGKILL'), GRACE_MS);
      await ended;
      clearTimeout(impatience);
    },
  };
}

/** The value of `ready` in a line such as `{"ready":"http://127.0.0.1:4000/"}`; null for any other line. */
export function announcementIn(line: string): string | null {
  if (!line.startsWith('{')) return null;
  try {
    const message: unknown = JSON.parse(line);
    return typeof message === 'object' && message !== null && 'ready' in message && typeof message.ready === 'string'
      ? message.ready
      : null;
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
