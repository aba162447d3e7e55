import { isAbsolute } from 'node:path';

const MOST_FILES = 10_000;

/** The list of files that the bridge sent, or null for anything else than 1 to 10 000 absolute paths. */
export function pathsIn(payload: unknown): readonly string[] | null {
  if (!Array.isArray(payload) || payload.length === 0 || payload.length > MOST_FILES) return null;
  const paths: unknown[] = payload;
  return paths.every((path) => typeof path === 'string' && isAbsolute(path) && !path.includes('\0')) ? (paths as string[]) : null;
}
