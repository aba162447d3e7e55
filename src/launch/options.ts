import { isAbsolute, resolve } from 'node:path';
import { SHELLS, type Shell } from './shell.ts';

export interface LaunchOptions {
  readonly help: boolean;
  readonly shell: Shell | null;
  /** Program to use as the browser; null to look for one. */
  readonly browser: string | null;
  /** What the shell that opens reads: the archive, and the clock and the identifiers of repeatable runs. */
  readonly passedOn: readonly string[];
}

export const USAGE = `Usage: npm start -- [--shell electron|browser|link] [--browser FILE] [--archive DIR] [--now INSTANT] [--seed TEXT] [--help]

  --shell      how to open: Electron, a browser's app window, or just an address to open by hand; without it, the first that works
  --browser    a Chromium-family browser to use instead of looking for one
  --archive    folder of the archive; without it, Exuviary's place in your data folder
  --now        starts the clock at this moment, for repeatable runs
  --seed       makes the identifiers repeatable
  --help       this text`;

const PASSED_ON = ['--archive', '--now', '--seed'];

/** Everything is checked before anything is built or opened. @throws TypeError with a sentence for the person at the terminal. */
export function parseLaunchOptions(words: readonly string[], directory: string): LaunchOptions {
  const options = { help: false, shell: null as Shell | null, browser: null as string | null };
  const passedOn: string[] = [];
  const rest = words.values();
  for (const word of rest) {
    const { name, value } = splitWord(word);
    if (name === '--help') options.help = true;
    else if (name === '--shell') options.shell = shellNamed(valueFor(name, value, rest));
    else if (name === '--browser') options.browser = absolute(valueFor(name, value, rest), directory);
    else if (PASSED_ON.includes(name)) passedOn.push(name, valueFor(name, value, rest));
    else throw new TypeError(`Expected one of the options below but received ${word}`);
  }
  return { ...options, passedOn };
}

function splitWord(word: string): { name: string; value: string | null } {
  const at = word.startsWith('--') ? word.indexOf('=') : -1;
  return at === -1 ? { name: word, value: null } : { name: word.slice(0, at), value: word.slice(at + 1) };
}

/** After an equals sign or as the next word. */
function valueFor(name: string, given: string | null, rest: Iterator<string>): string {
  const value = given ?? rest.next().value;
  if (value === undefined || value === '' || (given === null && value.startsWith('--'))) {
    throw new TypeError(`Expected a value after ${name} but received none`);
  }
  return value;
}

function shellNamed(value: string): Shell {
  const shell = SHELLS.find((known) => known === value);
  if (shell === undefined) throw new TypeError(`Expected --shell to be one of ${SHELLS.join(', ')} but received ${value}`);
  return shell;
}

/** A bare name such as `chromium` is looked for where the system looks for programs; anything with a slash is a file. */
function absolute(program: string, directory: string): string {
  return isAbsolute(program) || !/[/\\]/.test(program) ? program : resolve(directory, program);
}
