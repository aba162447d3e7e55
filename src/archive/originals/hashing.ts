import { createHash } from 'node:crypto';
import type { Files } from './files.ts';

/** SHA-256 of a file's bytes as they are now, in lower-case hexadecimal. */
export async function sha256Of(files: Files, path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const piece of files.read(path)) hash.update(piece);
  return hash.digest('hex');
}
