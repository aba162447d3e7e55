import type { Shell } from './shell.ts';

/** Electron's program: there, not there and not yet asked for, or not to be had. */
export type Electron =
  | { readonly state: 'present'; readonly executable: string }
  | { readonly state: 'absent' }
  | { readonly state: 'unavailable'; readonly reason: string };

/** A Chromium-family browser: found, or not, or found and of no use. */
export type Browser =
  | { readonly state: 'present'; readonly executable: string }
  | { readonly state: 'unavailable'; readonly reason: string };

/** What is known of this machine and of the keeper's wish when the choice is made. */
export interface Situation {
  /** The shell that was asked for; null to take the best. */
  readonly wanted: Shell | null;
  readonly hasDisplay: boolean;
  /** On Linux neither Electron nor a browser can use its own sandbox then. */
  readonly asRoot: boolean;
  readonly electron: Electron;
  readonly browser: Browser;
}

export type Step =
  | { readonly kind: 'fetch-electron' }
  | { readonly kind: 'open'; readonly shell: 'electron' | 'browser'; readonly executable: string; readonly line: string }
  | { readonly kind: 'open'; readonly shell: 'link'; readonly line: string }
  | { readonly kind: 'give-up'; readonly line: string };

const WITHOUT_SANDBOX = ', without its own sandbox because you are root';

/** The next thing to do. Asked again after an Electron was looked for, and after a window could not be opened. */
export function nextStep(situation: Situation): Step {
  const { wanted, hasDisplay, electron } = situation;
  if (wanted === 'link') return link('you asked for the address alone');
  if (!hasDisplay) return wanted === null ? link('there is no display here') : giveUp(wanted, 'there is no display here');
  if (wanted === 'browser') return browserStep(situation, 'you asked for a browser');
  if (electron.state === 'absent') return { kind: 'fetch-electron' };
  if (electron.state === 'present') return electronStep(electron.executable, situation);
  if (wanted === 'electron') return giveUp('electron', electron.reason);
  return browserStep(situation, electron.reason);
}

function electronStep(executable: string, { wanted, asRoot }: Situation): Step {
  const why = wanted === 'electron' ? 'you asked for it' : 'it is installed';
  return { kind: 'open', shell: 'electron', executable, line: `Opening Exuviary in Electron${asRoot ? WITHOUT_SANDBOX : ''}: ${why}.` };
}

function browserStep({ wanted, asRoot, browser }: Situation, why: string): Step {
  if (browser.state === 'unavailable') {
    return wanted === 'browser' ? giveUp('browser', browser.reason) : link(`${why}, and ${browser.reason}`);
  }
  const where = `an app window of ${browser.executable}${asRoot ? WITHOUT_SANDBOX : ''}`;
  return { kind: 'open', shell: 'browser', executable: browser.executable, line: `Opening Exuviary in ${where}: ${why}.` };
}

function link(why: string): Step {
  return { kind: 'open', shell: 'link', line: `Open this address once, within a minute, in a browser on this machine (${why}):` };
}

function giveUp(wanted: Shell, why: string): Step {
  return { kind: 'give-up', line: `Exuviary cannot open with --shell ${wanted}: ${why}.` };
}
