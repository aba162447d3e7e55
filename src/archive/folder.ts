import { posix, win32 } from 'node:path';

/** The few facts about a machine that decide where programs keep what belongs to their user. */
export interface Machine {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
}

/**
 * Where the archive lies unless another folder is asked for. Linux and its kin: `$XDG_DATA_HOME`, if absolute, else
 * `~/.local/share` (XDG Base Directory Specification 0.8); macOS: `~/Library/Application Support`; Windows: `%LOCALAPPDATA%`,
 * because roaming profiles are no place for gigabytes.
 */
export function defaultArchiveFolder(machine: Machine): string {
  const { platform, home, environment } = machine;
  if (platform === 'win32') {
    return win32.join(environment['LOCALAPPDATA'] || win32.join(home, 'AppData', 'Local'), 'Exuviary');
  }
  if (platform === 'darwin') return posix.join(home, 'Library', 'Application Support', 'Exuviary');
  const named = environment['XDG_DATA_HOME'];
  return posix.join(named && posix.isAbsolute(named) ? named : posix.join(home, '.local', 'share'), 'exuviary');
}
