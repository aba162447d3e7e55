import type { Instar } from '../domain/molting/instar.ts';
import type { InstarSpan } from '../domain/molting/instars.ts';
import { listed } from './counts.ts';
import { capitalized } from './labels.ts';

/** "instar 9", or "instar 9 if no molt was missed" where it is only counted. */
export function instarInWords({ number, certainty }: Instar): string {
  return `instar ${numberedInWords({ number, certainty })}`;
}

/** "9", or "9 if no molt was missed", under a heading that says instar. */
export function numberedInWords({ number, certainty }: Instar): string {
  return `${number}${unlessMissed(certainty)}`;
}

/** "9", or "9?" where room is short: it holds if no molt was missed. */
export function instarMark({ number, certainty }: Instar): string {
  return certainty === 'known' ? String(number) : `${number}?`;
}

/** "Shed instar 7"; where the instar is not known, its place among those recorded. */
export function moltName(instar: Instar | null, recordedMolt: number): string {
  return instar === null ? capitalized(recordedInWords(recordedMolt)) : `Shed ${instarInWords(instar)}`;
}

/** "molt 3 on record". */
export function recordedInWords(recordedMolt: number): string {
  return `molt ${recordedMolt} on record`;
}

/** The one thing nobody may forget about a skin. */
export function whatSkinShows(instar: Instar | null): string {
  return `Shows ${endedInWords(instar)}: the animal came out of it larger.`;
}

/** "instar 7, which has ended", or without a number "the instar that ended with this molt". */
export function endedInWords(instar: Instar | null): string {
  return instar === null ? 'the instar that ended with this molt' : `${instarInWords(instar)}, which has ended`;
}

/** "instar 5", or "instar 5 or 6" where a molt whose day is not known lies between. */
export function instarSpanInWords({ from, to, certainty }: InstarSpan): string {
  return `${from === to ? `instar ${from}` : `instar ${from} or ${to}`}${unlessMissed(certainty)}`;
}

/** "The molts of instars 7 and 8 are not on record." */
export function missingInWords(missing: readonly number[]): string {
  return missing.length === 1
    ? `The molt of instar ${missing[0]} is not on record.`
    : `The molts of instars ${listed(missing.map(String))} are not on record.`;
}

function unlessMissed(certainty: Instar['certainty']): string {
  return certainty === 'known' ? '' : ' if no molt was missed';
}
