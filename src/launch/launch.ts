import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { appWindowArguments } from './appWindow.ts';
import { nextStep, type Situation, type Step } from './choose.ts';
import { type Command, type Ending, type Program, start } from './program.ts';

/** What the launcher stands on; the tests put their own in. */
export interface Ground {
  /** The folder of package.json, which Electron takes for the program to run. */
  readonly root: string;
  /** Starts the loopback shell, which announces its address. */
  readonly host: Omit<Command, 'quiet'>;
  readonly passedOn: readonly string[];
  readonly fetchElectron: () => Promise<Situation['electron']>;
  readonly print: (line: string) => void;
  /** Aborted when the keeper wants to stop. */
  readonly stopping: AbortSignal;
}

type Outcome = { readonly kind: 'over'; readonly code: number } | { readonly kind: 'no-window'; readonly reason: string };
type Opening = Extract<Step, { kind: 'open' }>;

/** Opens Exuviary in the best shell that works here, waits until it is closed, and answers the exit code. */
export async function launch(first: Situation, ground: Ground): Promise<number> {
  let situation = first;
  while (!ground.stopping.aborted) {
    const step = nextStep(situation);
    if (step.kind === 'fetch-electron') {
      situation = { ...situation, electron: await ground.fetchElectron() };
      continue;
    }
    // An address is announced together with it: a host that refuses has none.
    if (step.kind === 'give-up' || step.shell !== 'link') ground.print(step.line);
    if (step.kind === 'give-up') return 1;
    const outcome = await open(step, situation.asRoot, ground);
    if (outcome.kind === 'over') return outcome.code;
    situation = without(step, outcome.reason, situation);
  }
  return 0;
}

function open(step: Opening, asRoot: boolean, ground: Ground): Promise<Outcome> {
  if (step.shell === 'electron') return openElectron(step.executable, asRoot, ground);
  if (step.shell === 'browser') return openBrowser(step.executable, asRoot, ground);
  return openLink(step.line, ground);
}

function without(step: Opening, reason: string, situation: Situation): Situation {
  const unavailable = { state: 'unavailable', reason } as const;
  return step.shell === 'electron' ? { ...situation, electron: unavailable } : { ...situation, browser: unavailable };
}

async function openElectron(executable: string, asRoot: boolean, ground: Ground): Promise<Outcome> {
  const words = [...(asRoot ? ['--no-sandbox'] : []), ground.root, ...ground.passedOn];
  const shell = start({ executable, arguments: words, quiet: false }, ground.print);
  const opened = shell.ready.then((announced) => announced !== null);
  const ending = await endingOf(shell, ground.stopping);
  if (ending === null) return over(0);
  return ending.code === 0 || (await opened) ? over(ending.code ?? 1) : noWindow(ending);
}

async function openBrowser(executable: string, asRoot: boolean, ground: Ground): Promise<Outcome> {
  const host = start({ ...ground.host, arguments: [...ground.host.arguments, ...ground.passedOn], quiet: false }, ground.print);
  const url = await host.ready;
  if (url === null) return over((await host.ended).code ?? 1);
  const profile = await mkdtemp(join(tmpdir(), 'exuviary-window-'));
  try {
    const window = start({ executable, arguments: appWindowArguments({ url, profile, asRoot }), quiet: true }, ground.print);
    const closed = window.ended.then((ending) => ({ ending, byWindow: true }));
    const left = host.ended.then((ending) => ({ ending, byWindow: false }));
    const first = await Promise.race([closed, left, aborted(ground.stopping)]);
    await Promise.all([window.stop(), host.stop()]);
    if (first === null) return over(0);
    if (!first.byWindow) return over(first.ending.code ?? 1);
    return first.ending.code === 0 ? over(0) : noWindow(first.ending);
  } finally {
    await rm(profile, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  }
}

async function openLink(line: string, ground: Ground): Promise<Outcome> {
  const host = start({ ...ground.host, arguments: [...ground.host.arguments, ...ground.passedOn], quiet: false }, ground.print);
  const url = await host.ready;
  if (url !== null) {
    ground.print(line);
    ground.print(url);
  }
  const ending = await endingOf(host, ground.stopping);
  return over(ending === null ? 0 : (ending.code ?? 1));
}

/** How a program ended by itself, or null once it was stopped on the keeper's wish. */
async function endingOf(program: Program, stopping: AbortSignal): Promise<Ending | null> {
  const ending = await Promise.race([program.ended, aborted(stopping)]);
  if (ending === null) await program.stop();
  return ending;
}

function aborted(signal: AbortSignal): Promise<null> {
  return new Promise((settle) => {
    if (signal.aborted) settle(null);
    else signal.addEventListener('abort', () => settle(null), { once: true });
  });
}

function over(code: number): Outcome {
  return { kind: 'over', code };
}

function noWindow({ reason }: Ending): Outcome {
  return { kind: 'no-window', reason };
}
