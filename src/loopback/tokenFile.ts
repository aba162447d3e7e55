import { rm, writeFile } from 'node:fs/promises';

/**
 * Puts the token where only its owner can read it. An older file is removed first: writing into it would keep the
 * permissions that it has. Answers what removes the file again.
 */
export async function writeTokenFile(path: string, token: string): Promise<() => Promise<void>> {
  await rm(path, { force: true });
  await writeFile(path, `${token}\n`, { mode: 0o600, flag: 'wx' });
  return () => rm(path, { force: true });
}
