import { existsSync } from 'node:fs';
import { posix, win32 } from 'node:path';
import type { Browser } from './choose.ts';

/** Facts of the machine that say where programs lie. */
export interface Places {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

const LINUX_NAMES = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome', 'microsoft-edge-stable', 'microsoft-edge'];

const MAC_PROGRAMS = [
  'Chromium.app/Contents/MacOS/Chromium',
  'Google Chrome.app/Contents/MacOS/Google Chrome',
  'Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
];

const WINDOWS_PROGRAMS = [
  'Chromium\\Application\\chrome.exe',
  'Google\\Chrome\\Application\\chrome.exe',
  'Microsoft\\Edge\\Application\\msedge.exe',
];
const WINDOWS_FOLDERS = ['ProgramFiles', 'ProgramFiles(x86)', 'LOCALAPPDATA'];

/** Where a Chromium-family browser may lie, best first: free Chromium, then what is often there. */
export function browserCandidates({ platform, home, environment }: Places): readonly string[] {
  if (platform === 'darwin') {
    const folders = ['/Applications', posix.join(home, 'Applications')];
    return MAC_PROGRAMS.flatMap((program) => folders.map((folder) => posix.join(folder, program)));
  }
  if (platform === 'win32') {
    const folders = WINDOWS_FOLDERS.map((name) => environment[name]).filter((folder) => folder !== undefined);
    return WINDOWS_PROGRAMS.flatMap((program) => folders.map((folder) => win32.join(folder, program)));
  }
  const folders = (environment['PATH'] ?? '').split(':').filter((folder) => posix.isAbsolute(folder));
  return LINUX_NAMES.flatMap((name) => folders.map((folder) => posix.join(folder, name)));
}

export function findBrowser(places: Places, exists: (path: string) => boolean = existsSync): Browser {
  const executable = browserCandidates(places).find(exists);
  return executable === undefined
    ? { state: 'unavailable', reason: 'no Chromium-family browser was found' }
    : { state: 'present', executable };
}
