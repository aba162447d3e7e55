import type { Determination } from './determination.ts';

/**
 * Determinations that still count: neither withdrawn nor corrected by a later one. A correction that is itself withdrawn
 * does not bring the corrected one back, for its reader has already called it wrong.
 */
export function standingOf<D extends Pick<Determination, 'id' | 'supersedes' | 'withdrawn'>>(determinations: readonly D[]): D[] {
  const corrected = correctedIds(determinations);
  return determinations.filter((determination) => determination.withdrawn === null && !corrected.has(determination.id));
}

export function correctedIds(determinations: readonly Pick<Determination, 'supersedes'>[]): ReadonlySet<string> {
  return new Set(determinations.flatMap((determination) => (determination.supersedes === null ? [] : [determination.supersedes])));
}
