import type { CalendarDay } from '../dates.ts';
import type { Instar } from './instar.ts';
import { type Acquisition, anchorsOf, type InstarAnchor, type NumberedMolt } from './instarAnchors.ts';
import type { Molt } from './molt.ts';

/** A molt that can be found again in the order of time. */
export type DatedMolt = NumberedMolt & Pick<Molt, 'id'>;

/** An instar that lies between two numbers, both included; equal when there is one alone. */
export interface InstarSpan extends Pick<Instar, 'certainty'> {
  readonly from: number;
  readonly to: number;
}

export function byDate(a: Pick<Molt, 'happenedFrom' | 'happenedTo'>, b: Pick<Molt, 'happenedFrom' | 'happenedTo'>): number {
  return compareText(a.happenedFrom, b.happenedFrom) || compareText(a.happenedTo, b.happenedTo);
}

export function inDateOrder<M extends Pick<Molt, 'happenedFrom' | 'happenedTo'>>(molts: readonly M[]): M[] {
  return molts.toSorted(byDate);
}

/** 1 for the first molt on record, whatever its instar ("molt 3 on record"); null if the molt is not among them. */
export function recordedMoltNumber(moltId: string, molts: readonly DatedMolt[]): number | null {
  const index = inDateOrder(molts).findIndex((molt) => molt.id === moltId);
  return index < 0 ? null : index + 1;
}

/**
 * The instar that each molt ended, so the one its skin shows. Known where it was noted, or where two numbers noted before and
 * after leave just the room; inferred where it can be counted from one side alone; null where nothing anchors the count, or
 * where molts are missing and it is open on which side.
 *
 * @param ordered molts of one animal, oldest first.
 */
export function instarsOfSkins(ordered: readonly NumberedMolt[], acquisition?: Acquisition): (Instar | null)[] {
  const anchors = anchorsOf(ordered, acquisition);
  return ordered.map((molt, period) => (molt.instarShed === null ? countedInstar(period, anchors) : known(molt.instarShed)));
}

/** The instar shown by the skin of one molt, as `instarsOfSkins` gives it; null also when the molt is not among them. */
export function instarOfSkin(moltId: string, molts: readonly DatedMolt[], acquisition?: Acquisition): Instar | null {
  const ordered = inDateOrder(molts);
  const index = ordered.findIndex((molt) => molt.id === moltId);
  return instarsOfSkins(ordered, acquisition)[index] ?? null;
}

/**
 * Instar of the living animal: the one after its last skin, and as sure as that; without molts the one in which it was
 * acquired, if no molt was missed since.
 */
export function instarNowOf(molts: readonly NumberedMolt[], acquisition?: Acquisition): Instar | null {
  const ordered = inDateOrder(molts);
  const anchors = anchorsOf(ordered, acquisition);
  const now = instarOfPeriod(ordered.length, anchors);
  if (now === null || now.from < 1) return null;
  const lastShed = instarsOfSkins(ordered, acquisition).at(-1);
  const certainty = lastShed?.certainty === 'known' && lastShed.number + 1 === now.from ? 'known' : 'inferred';
  return { number: now.from, certainty };
}

/** How many molts went by between two states of an animal, on record or not; two numbers where that is open. */
export interface MoltsSince {
  readonly fewest: number;
  readonly most: number;
}

/**
 * By how many instars the living animal is ahead of the skin of one molt: 1 for the last, if nothing was missed. Molts on record
 * count one each; numbers noted on both sides tell of those that are not. Numbers that contradict the dates take none away.
 *
 * @param ordered molts of one animal, oldest first.
 * @param index of the molt that shed the skin, within them.
 */
export function moltsSinceSkin(ordered: readonly NumberedMolt[], index: number, acquisition?: Acquisition): MoltsSince {
  const onRecord = ordered.length - index;
  const anchors = anchorsOf(ordered, acquisition);
  const now = instarOfPeriod(ordered.length, anchors);
  const noted = ordered[index]?.instarShed ?? null;
  const shown = noted === null ? instarOfPeriod(index, anchors) : { from: noted, to: noted };
  if (now === null || shown === null) return { fewest: onRecord, most: onRecord };
  return { fewest: Math.max(onRecord, now.from - shown.to), most: Math.max(onRecord, now.to - shown.from) };
}

/**
 * Instar shown by a photo of the living animal. After a molt the animal is in the next instar, unlike the skin that molt
 * left. A photo from within the days in which a molt may have happened can show either side, and a jump in the known
 * numbers leaves the periods between them open: then the span has two ends.
 */
export function instarOfAnimalPhoto(takenOn: CalendarDay, molts: readonly NumberedMolt[], acquisition?: Acquisition): InstarSpan | null {
  const ordered = inDateOrder(molts);
  const anchors = anchorsOf(ordered, acquisition);
  const surely = ordered.filter((molt) => molt.happenedTo < takenOn).length;
  const perhaps = ordered.filter((molt) => molt.happenedFrom <= takenOn).length;
  const earliest = instarOfPeriod(surely, anchors);
  const latest = instarOfPeriod(perhaps, anchors);
  if (!earliest || !latest || earliest.from < 1) return null;
  const skins = instarsOfSkins(ordered, acquisition);
  const certainty = [surely, perhaps].every((period) => isBesideKnown(period, skins)) ? 'known' : 'inferred';
  return { from: earliest.from, to: latest.to, certainty };
}

/** Whether the molt that began a period, or the one that ended it, left a skin of a known instar. */
function isBesideKnown(period: number, skins: readonly (Instar | null)[]): boolean {
  return skins[period - 1]?.certainty === 'known' || skins[period]?.certainty === 'known';
}

function known(number: number): Instar {
  return { number, certainty: 'known' };
}

function countedInstar(period: number, anchors: readonly InstarAnchor[]): Instar | null {
  const span = instarOfPeriod(period, anchors);
  if (span === null || span.from !== span.to || span.from < 1) return null;
  const isBetween = anchors.some((anchor) => anchor.period < period) && anchors.some((anchor) => anchor.period >= period);
  return { number: span.from, certainty: isBetween ? 'known' : 'inferred' };
}

/**
 * The nearest anchor before the period counts up to its beginning, the nearest after counts down to its end; where they
 * differ, molts in between went unrecorded.
 */
function instarOfPeriod(period: number, anchors: readonly InstarAnchor[]): Pick<InstarSpan, 'from' | 'to'> | null {
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
