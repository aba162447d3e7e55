import type { ScaleMarks } from '../../domain/measuring/calibration.ts';
import type { ReadingDraft } from '../../domain/measuring/reading.ts';
import { sameValue } from './change.ts';

/** What the archive holds of one photo and one pass, as far as this page knows. */
export interface Stored {
  readonly scale: { readonly marks: ScaleMarks | null; readonly check?: ScaleMarks | undefined; readonly version: number };
  /** Null until the first mark of a new pass is saved. */
  readonly reading: { readonly id: string; readonly draft: ReadingDraft; readonly version: number } | null;
}

/** What the page shows, settled. `draft` is null as long as nothing has been marked in a new pass. */
export interface Wanted {
  readonly marks: ScaleMarks | null;
  readonly check?: ScaleMarks | undefined;
  readonly draft: ReadingDraft | null;
}

/** One request. Requests are sent one at a time; what settles meanwhile goes with the next. */
export type Dispatch =
  | ({ readonly kind: 'save-scale' } & Stored['scale'])
  | { readonly kind: 'begin-reading'; readonly draft: ReadingDraft }
  | { readonly kind: 'save-reading'; readonly id: string; readonly draft: ReadingDraft; readonly version: number };

/** The next thing to send, or null when the archive holds all that is wanted. */
export function nextDispatch(stored: Stored, wanted: Wanted): Dispatch | null {
  if (!sameScale(stored.scale, wanted)) return { kind: 'save-scale', ...scaleOf(wanted), version: stored.scale.version };
  if (wanted.draft === null || sameValue(stored.reading?.draft, wanted.draft)) return null;
  if (stored.reading === null) return { kind: 'begin-reading', draft: wanted.draft };
  return { kind: 'save-reading', id: stored.reading.id, draft: wanted.draft, version: stored.reading.version };
}

/** What is stored once the archive has answered. */
export function afterDispatch(stored: Stored, sent: Dispatch, answer: { readonly id: string; readonly version: number }): Stored {
  if (sent.kind === 'save-scale') return { ...stored, scale: { ...scaleOf(sent), version: answer.version } };
  return { ...stored, reading: { id: answer.id, draft: sent.draft, version: answer.version } };
}

/**
 * After an answer that never came or a version that did not fit, with what the archive really holds now. `arrived`: the
 * request had gone through after all, only its answer was lost. `untouched`: the archive stands where it stood. `changed`:
 * somebody else was there.
 */
export function whatHappened(before: Stored, sent: Dispatch, now: Stored): 'arrived' | 'untouched' | 'changed' {
  if (sent.kind === 'save-scale') {
    if (now.scale.version === before.scale.version) return sameReading(before, now) ? 'untouched' : 'changed';
    return sameScale(now.scale, sent) && sameReading(before, now) ? 'arrived' : 'changed';
  }
  if (now.scale.version !== before.scale.version) return 'changed';
  if (sameReading(before, now)) return 'untouched';
  return sameValue(now.reading?.draft, sent.draft) ? 'arrived' : 'changed';
}

export type Scale = Pick<Wanted, 'marks' | 'check'>;

/** The marks alone. */
export function scaleOf({ marks, check }: Scale): Scale {
  return check === undefined ? { marks } : { marks, check };
}

function sameScale(one: Scale, other: Scale): boolean {
  return sameValue(one.marks, other.marks) && sameValue(one.check, other.check);
}

function sameReading(one: Stored, other: Stored): boolean {
  return one.reading?.id === other.reading?.id && one.reading?.version === other.reading?.version;
}

const FIRST_PAUSE_MS = 1_000;
const LONGEST_PAUSE_MS = 30_000;

/** How long to wait before the next attempt: 1 s, doubling, at most 30 s. */
export function pauseBeforeAttempt(failedAttempts: number): number {
  return Math.min(LONGEST_PAUSE_MS, FIRST_PAUSE_MS * 2 ** Math.max(0, failedAttempts - 1));
}
