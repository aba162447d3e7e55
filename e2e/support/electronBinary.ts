import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Where Electron's program lies, or null. Looks for the file instead of importing the package, because evaluating
 * `electron` without its binary starts a download.
 */
export function electronBinary(root: string): string | null {
  const folder = join(root, 'node_modules/electron');
  const pointer = join(folder, 'path.txt');
  if (!existsSync(pointer)) return null;
  const binary = join(folder, 'dist', readFileSync(pointer, 'utf8').trim());
  return existsSync(binary) ? binary : null;
}
