import type { Failure } from '../../domain/failure.ts';
import { errorCode } from './files.ts';

/** What a person is told when the archive's own disk refuses; null when the error is no system error, so a defect. */
export function diskFailure(error: unknown, folder: string): Failure | null {
  const code = errorCode(error);
  if (code === null || !/^E[A-Z0-9]+$/.test(code)) return null;
  if (code === 'ENOSPC' || code === 'EDQUOT') return { code: 'disk-full' };
  return { code: 'archive-folder-unusable', folder, reason: code };
}
