import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { resolve } from 'node:path';
import { createInterface } from 'node:readline';

const root = resolve(import.meta.dirname, '../..');

/** The loopback host as a process of its own, on one archive folder. */
export interface LoopbackProcess {
  /** Address with a one-use ticket. */
  readonly url: string;
  /** Everything it wrote to stderr, for a failing test's report. */
  stderr(): string;
  /** Ends it the way Ctrl-C does; resolves with the exit code. */
  stop(): Promise<number | null>;
  /** Ends it without any warning. */
  kill(): Promise<void>;
}

export async function startLoopback(archive: string, extra: readonly string[] = []): Promise<LoopbackProcess> {
  const child = spawn(process.execPath, [resolve(root, 'out/main/loopback.js'), '--archive', archive, '--keep', ...extra], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let complaints = '';
  child.stderr.setEncoding('utf8').on('data', (text: string) => {
    complaints += text;
  });
  const url = await readyUrl(child, () => complaints);
  return {
    url,
    stderr: () => complaints,
    stop: () => end(child, 'SIGTERM'),
    kill: async () => {
      await end(child, 'SIGKILL');
    },
  };
}

async function readyUrl(child: ChildProcess, complaints: () => string): Promise<string> {
  if (child.stdout === null) throw new TypeError('Expected the host to have a stdout');
  for await (const line of createInterface({ input: child.stdout })) {
    if (!line.startsWith('{')) continue;
    const message: unknown = JSON.parse(line);
    if (typeof message === 'object' && message !== null && 'ready' in message && typeof message.ready === 'string') return message.ready;
  }
  throw new Error(`Expected the host to say that it is ready but it ended: ${complaints()}`);
}

async function end(child: ChildProcess, signal: NodeJS.Signals): Promise<number | null> {
  if (child.exitCode !== null || child.signalCode !== null) return child.exitCode;
  const ended = once(child, 'exit');
  child.kill(signal);
  await ended;
  return child.exitCode;
}
