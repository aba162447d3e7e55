import type { CalendarDay } from '../dates.ts';
import type { Molt } from './molt.ts';

/** What ordering and counting need of a molt. */
export type NumberedMolt = Pick<Molt, 'happenedFrom' | 'happenedTo' | 'instarShed'>;

/** Instar of the animal on the day it was acquired, where the keeper knows it. */
export interface Acquisition {
  readonly acquiredOn: CalendarDay | null;
  readonly acquiredInstar: number | null;
}

/**
 * Period k is the life before molt k of the list (from 0) and after the molt before it. An anchor says which instar ended
 * at the end of its period, so which one began the next. The acquisition is the anchor of the period before it: it says
 * which instar the next molt will end, unless one goes by unrecorded, and not which the molt before it shed.
 */
export interface InstarAnchor {
  readonly period: number;
  readonly ended: number;
  readonly from: 'molt' | 'acquisition';
}

/**
 * Everything that fixes a number in the row of molts, in order of time. An acquisition that leaves no room for the numbers
 * noted at molts is left out: those were noted on the skins.
 *
 * @param ordered molts of one animal, oldest first.
 */
export function anchorsOf(ordered: readonly NumberedMolt[], acquisition: Acquisition | undefined): InstarAnchor[] {
  const noted = ordered.flatMap((molt, period): InstarAnchor[] =>
    molt.instarShed === null ? [] : [{ period, ended: molt.instarShed, from: 'molt' }],
  );
  const acquired = acquisitionAnchor(ordered, acquisition);
  if (!acquired || !leavesRoom(acquired, noted)) return noted;
  return [...noted, acquired].sort((a, b) => a.period - b.period);
}

/** Null where the day fell into the days of a molt, or is not known while there are molts: then it has no place among them. */
function acquisitionAnchor(ordered: readonly NumberedMolt[], acquisition: Acquisition | undefined): InstarAnchor | null {
  if (!acquisition || acquisition.acquiredInstar === null) return null;
  const ended = acquisition.acquiredInstar - 1;
  const day = acquisition.acquiredOn;
  if (day === null) return ordered.length === 0 ? { period: -1, ended, from: 'acquisition' } : null;
  const surely = ordered.filter((molt) => molt.happenedTo < day).length;
  const perhaps = ordered.filter((molt) => molt.happenedFrom <= day).length;
  return surely === perhaps ? { period: surely - 1, ended, from: 'acquisition' } : null;
}

function leavesRoom({ period, ended }: InstarAnchor, noted: readonly InstarAnchor[]): boolean {
  const before = noted.findLast((anchor) => anchor.period <= period) ?? { period: -1, ended: 0 };
  const after = noted.find((anchor) => anchor.period > period);
  return ended - before.ended >= period - before.period && (!after || after.ended - ended >= after.period - period);
}
