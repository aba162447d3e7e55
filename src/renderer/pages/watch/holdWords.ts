import type { FeedingHold } from '../../../domain/care/feedingHold.ts';
import type { Wait } from '../../../domain/care/feedingTable.ts';
import type { GrownBy, SpanNow } from '../../../domain/care/spanNow.ts';
import type { WaitDifference } from '../../../domain/care/tableDifference.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import type { MoltsSince } from '../../../domain/molting/instars.ts';
import { inchesFromMm } from '../../../domain/units.ts';
import { counted } from '../../../words/counts.ts';
import { dayInWords } from '../../../words/dates.ts';
import { fangColorInWords } from '../../../words/observations.ts';

/** "21 days", "1 month". */
export function waitInWords({ count, unit }: Wait): string {
  return counted(count, unit === 'days' ? 'day' : 'month');
}

/** What span the wait was taken for, and why it is the longer one of two. */
export function spanInWordsOf({ span, straddles }: FeedingHold): string {
  if (span === null) return 'Its size is not known, so it waits as the longest, to be safe.';
  const range = `${millimeters(span.lowMm)} to ${millimeters(span.highMm)}`;
  // From a carapace alone the middle says nothing that the animal could be held against.
  const rough = span.from.kind === 'skin' && span.from.measured === 'carapace-length';
  const size = rough ? `Leg span not measured, somewhere from ${range} mm` : `Leg span about ${millimeters(span.spanMm)} mm (${range})`;
  const from = spanSourceInWords(span);
  return straddles ? `${size}, ${from}: this meets more than one wait, and the longest counts.` : `${size}, ${from}.`;
}

/** The hold in one line: the day it ends, and what is still missing. */
export function holdInWords({ until, fangs, missing }: Pick<FeedingHold, 'until' | 'fangs' | 'missing'>): string {
  const noted = fangs ? `last noted ${fangColorInWords(fangs.color)}` : 'not noted yet';
  if (!missing.includes('fangs')) return `No prey before ${dayInWords(until)}. Its fangs are hard.`;
  return missing.includes('date')
    ? `No prey before ${dayInWords(until)}, nor until its fangs are black (${noted}).`
    : `No prey until its fangs are black (${noted}). Its wait ended on ${dayInWords(until)}.`;
}

/** Of an animal that is held no more, though nobody ever looked at its new fangs. */
export function fangsUnseenInWords(moltedOn: CalendarDay): string {
  return `Its fangs were never noted since the molt on ${dayInWords(moltedOn)}: look before feeding, prey only if they are black.`;
}

function spanSourceInWords({ from }: SpanNow): string {
  if (from.kind === 'animal') return 'measured on the animal';
  const back = moltsBackInWords(from.moltsSince);
  const skin = from.measured === 'leg-span' ? `its last measured skin${back}` : `the carapace alone of its last measured skin${back}`;
  return `foretold from ${skin} and ${GROWTH_OF[from.grownBy]}`;
}

const GROWTH_OF: Readonly<Record<GrownBy, string>> = {
  'own-skins': 'its own growth',
  kin: 'the growth of its kin',
  'any-tarantula': 'usual growth',
};

/** How many instars the skin lies back, where that is not simply the last. */
function moltsBackInWords({ fewest, most }: MoltsSince): string {
  if (most === 1) return '';
  return fewest === most ? `, ${most} molts back,` : `, ${fewest} to ${most} molts back,`;
}

/** "over 50.8 mm (2 in) and under 101.6 mm (4 in)". */
export function spansInWords({ fromMm, fromIncluded, to }: Pick<WaitDifference, 'fromMm' | 'fromIncluded' | 'to'>): string {
  if (to && to.mm === fromMm) return `exactly ${length(fromMm)}`;
  const low = fromMm === 0 ? null : `${fromIncluded ? 'from' : 'over'} ${length(fromMm)}`;
  const high = to ? `${to.included ? 'up to' : 'under'} ${length(to.mm)}` : null;
  if (low && high) return `${low}, ${high}`;
  return low ?? high ?? 'all animals';
}

function length(mm: number): string {
  return `${Number(mm.toFixed(1))} mm (${Number(inchesFromMm(mm).toFixed(2))} in)`;
}

function millimeters(mm: number): string {
  return String(Math.round(mm));
}
