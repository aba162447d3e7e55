import { homedir } from 'node:os';
import { resolve } from 'node:path';
import { defaultArchiveFolder } from '../archive/folder.ts';

/** The folder asked for, else the one where this machine's programs keep what belongs to their user. */
export function chooseArchiveFolder(requested: string | null): string {
  if (requested !== null) return resolve(requested);
  return defaultArchiveFolder({ platform: process.platform, home: homedir(), environment: process.env });
}
