import type { PendingRemoval, RemovableKind, RemovalCounts, RemovedThing, Restoration } from '../../domain/removal.ts';
import { counted, listed } from '../../words/counts.ts';
import { dayInWords, momentInWords, spanInWords } from '../../words/dates.ts';
import { SEEN_LABELS } from '../../words/observations.ts';

/** What a removal takes, beyond what was named: "2 molts, 1 skin and 3 readings"; '' when nothing hangs on it. */
export function whatGoesToo(kind: RemovableKind, counts: RemovalCounts): string {
  const own = (of: RemovableKind) => (kind === of ? 1 : 0);
  return listed(
    [
      said(counts.specimens - own('specimen'), 'specimen'),
      said(counts.molts - own('molt'), 'molt'),
      said(counts.exuviae - own('exuvia'), 'skin'),
      said(counts.photos - own('photo'), 'photo'),
      said(counts.readings - own('reading'), 'reading'),
      said(counts.determinations, 'determination'),
      said(counts.observations - own('observation'), 'observation'),
      counts.liveSigns > 0 ? counted(counts.liveSigns, 'sign of the animal', 'signs of the animal') : '',
    ].filter((part) => part !== ''),
  );
}

/** What was removed, by its name: "The molt of 5 Mar 2026 of G-012". */
export function removedThingInWords(thing: RemovedThing): string {
  switch (thing.kind) {
    case 'specimen':
      return thing.code;
    case 'molt':
      return `The molt of ${spanInWords(thing.happenedFrom, thing.happenedTo)} of ${thing.code}`;
    case 'exuvia':
      return `The skin of ${spanInWords(thing.happenedFrom, thing.happenedTo)} of ${thing.code}`;
    case 'photo':
      return `The photo ${thing.originalName}`;
    case 'reading':
      return `Pass ${thing.pass} on ${thing.originalName}`;
    case 'observation':
      return `The note "${SEEN_LABELS[thing.seen]}" of ${momentInWords({ at: thing.at, offset: thing.utcOffset })} of ${thing.code}`;
    case 'print-check':
      return `The print check of ${thing.printer} of ${dayInWords(thing.checkedOn)}`;
    case 'sample-cabinet':
      return 'The sample cabinet';
  }
}

/** What comes back with it: "with 2 molts and 2 skins"; '' for nothing. */
export function comesBackWith({ thing, ...counts }: PendingRemoval): string {
  const goes = thing.kind === 'sample-cabinet' ? counted(counts.specimens, 'specimen') : whatGoesToo(thing.kind, counts);
  return goes === '' ? '' : `with ${goes}`;
}

/** What putting back did, and which photos it left with another animal, whose sizes they count for now. */
export function putBackInWords({ photosElsewhere }: Restoration): string {
  if (photosElsewhere.length === 0) return 'Put back as it was.';
  const codes = listed([...new Set(photosElsewhere.map(({ code }) => code))]);
  const were = photosElsewhere.length === 1 ? 'was' : 'were';
  return `Put back, except ${counted(photosElsewhere.length, 'photo')} that ${were} given to ${codes} meanwhile.`;
}

function said(count: number, one: string): string {
  return count > 0 ? counted(count, one) : '';
}
