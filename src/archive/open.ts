import type { Ambient } from '../domain/ambient.ts';
import { fail, type Result } from '../domain/result.ts';
import type { Archive } from './archive.ts';

/**
 * Opens the archive in a folder, making it if there is none: locks it, brings its catalogue up to date, purges what was removed
 * last time and sweeps half-arrived bytes. Fails with `archive-in-use`, `archive-not-ours`, `archive-from-newer-version`,
 * `archive-damaged`, `archive-folder-unusable` or `disk-full`.
 */
export async function openArchive(folder: string, ambient: Ambient): Promise<Result<Archive>> {
  ambient.now();
  return fail({ code: 'archive-folder-unusable', folder, reason: 'not built yet' });
}
