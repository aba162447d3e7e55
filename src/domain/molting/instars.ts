import type { CalendarDay } from '../dates.ts';
import type { Molt } from './molt.ts';

/** What ordering and counting need of a molt. */
export type DatedMolt = Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo' | 'instarShed'>;

/** Instar of the animal on the day it was acquired, where the keeper knows it. */
export interface Acquisition {
  readonly acquiredOn: CalendarDay | null;
  readonly acquiredInstar: number | null;
}

/** An instar known to lie between two numbers, both included; equal when it is known. */
export interface InstarSpan {
  readonly from: number;
  readonly to: number;
}

export function byDate(a: Pick<Molt, 'happenedFrom' | 'happenedTo'>, b: Pick<Molt, 'happenedFrom' | 'happenedTo'>): number {
  return compareText(a.happenedFrom, b.happenedFrom) || compareText(a.happenedTo, b.happenedTo);
}

export function inDateOrder<M extends Pick<Molt, 'happenedFrom' | 'happenedTo'>>(molts: readonly M[]): M[] {
  return molts.toSorted(byDate);
}

/** 1 for the first molt on record, whatever its instar ("molt 3 of those recorded"); null if the molt is not among them. */
export function recordedMoltNumber(moltId: string, molts: readonly DatedMolt[]): number | null {
  const index = inDateOrder(molts).findIndex((molt) => molt.id === moltId);
  return index < 0 ? null : index + 1;
}

/**
 * Instar of the living animal after its last recorded molt: one more than the last instar shed, and one more for each
 * later molt whose instar nobody noted. Null when nothing anchors the count. Molts that were never recorded make the
 * true number larger.
 */
export function instarNowOf(molts: readonly DatedMolt[], acquisition?: Acquisition): number | null {
  return instarOfPeriod(molts.length, anchorsOf(inDateOrder(molts), acquisition))?.from ?? null;
}

/**
 * Instar shown by a photo of the living animal. After a molt the animal is in the next instar, unlike the skin that molt
 * left. A photo from within the days in which a molt may have happened can show either side, and a jump in the known
 * numbers leaves the periods between them open: then the span has two ends.
 */
export function instarOfAnimalPhoto(takenOn: CalendarDay, molts: readonly DatedMolt[], acquisition?: Acquisition): InstarSpan | null {
  const ordered = inDateOrder(molts);
  const anchors = anchorsOf(ordered, acquisition);
  const surely = ordered.filter((molt) => molt.happenedTo < takenOn).length;
  const perhaps = ordered.filter((molt) => molt.happenedFrom <= takenOn).length;
  const earliest = instarOfPeriod(surely, anchors);
  const latest = instarOfPeriod(perhaps, anchors);
  return earliest && latest ? { from: earliest.from, to: latest.to } : null;
}

/**
 * Period k is the life before molt k of the list (from 0) and after the molt before it. An anchor says which instar ended
 * at the end of its period, so which one began the next.
 */
interface Anchor {
  readonly period: number;
  readonly ended: number;
}

function anchorsOf(ordered: readonly DatedMolt[], acquisition: Acquisition | undefined): Anchor[] {
  const anchors = ordered.flatMap((molt, period) => (molt.instarShed === null ? [] : [{ period, ended: molt.instarShed }]));
  const acquired = acquisitionAnchor(ordered, acquisition);
  return (acquired ? [...anchors, acquired] : anchors).sort((a, b) => a.period - b.period);
}

function acquisitionAnchor(ordered: readonly DatedMolt[], acquisition: Acquisition | undefined): Anchor | null {
  if (!acquisition?.acquiredOn || acquisition.acquiredInstar === null) return null;
  const day = acquisition.acquiredOn;
  const surely = ordered.filter((molt) => molt.happenedTo < day).length;
  const perhaps = ordered.filter((molt) => molt.happenedFrom <= day).length;
  return surely === perhaps ? { period: surely - 1, ended: acquisition.acquiredInstar - 1 } : null;
}

/**
 * The nearest anchor before the period counts up to its beginning, the nearest after counts down to its end; where they
 * differ, molts in between went unrecorded.
 */
function instarOfPeriod(period: number, anchors: readonly Anchor[]): InstarSpan | null {
  const before = anchors.findLast((anchor) => anchor.period < period);
  const after = anchors.find((anchor) => anchor.period >= period);
  const up = before ? before.ended + (period - before.period) : null;
  const down = after ? after.ended - (after.period - period) : null;
  const from = up ?? down;
  const to = down ?? up;
  return from === null || to === null ? null : { from, to };
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
