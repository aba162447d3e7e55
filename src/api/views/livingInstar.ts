import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { MoltWatched } from '../../domain/care/lastMolt.ts';
import type { Instar } from '../../domain/molting/instar.ts';
import { instarNowOf } from '../../domain/molting/instars.ts';

/** In which the animal lives: a molt that was watched to its end counts, though it is not on record yet. */
export function livingInstarOf({ specimen, molts }: Pick<CabinetEntry, 'specimen' | 'molts'>, watched: MoltWatched | null): Instar | null {
  const now = instarNowOf(molts, specimen);
  return now && watched?.state === 'not-recorded' ? { ...now, number: now.number + 1 } : now;
}
