import { type CalendarDay, daysBetween } from '../../../domain/dates.ts';
import { isPresumed } from '../../../domain/growth/missed/presumedMolts.ts';
import type { Molt } from '../../../domain/molting/molt.ts';
import type { PhotoView } from '../../../domain/photo/photo.ts';
import type { Specimen } from '../../../domain/specimen/specimen.ts';

/** A skin is photographed soon after its molt; after this many days a new molt is the likelier story (our assumption). */
export const PHOTO_FOLLOWS_MOLT_DAYS = 30;

export type DatedMolt = Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo' | 'outcomes'>;

/**
 * The molt whose skin a photo of this day most likely shows: the last one that can have happened by then, if not too long
 * ago. null suggests a new molt; so does a photo without a day. A presumed molt has no skin.
 */
export function suggestMolt(takenOn: CalendarDay | null, molts: readonly DatedMolt[]): string | null {
  if (takenOn === null) return null;
  const last = molts
    .filter((molt) => molt.happenedFrom <= takenOn && !isPresumed(molt))
    .toSorted((a, b) => compare(a.happenedFrom, b.happenedFrom))
    .at(-1);
  return last && daysBetween(last.happenedTo, takenOn) <= PHOTO_FOLLOWS_MOLT_DAYS ? last.id : null;
}

/** The animal whose code stands in the name of the file, as in "G-012 dorsal.jpg"; the longest code if several do. */
export function suggestSpecimen(fileName: string, specimens: readonly Pick<Specimen, 'id' | 'code'>[]): string | null {
  const name = wordsOf(fileName);
  const named = specimens.filter((specimen) => name.includes(wordsOf(specimen.code)));
  return named.toSorted((a, b) => b.code.length - a.code.length)[0]?.id ?? null;
}

/** The view a file name speaks of; else from above, as most skins are photographed. */
export function suggestView(fileName: string): PhotoView {
  const name = fileName.toLowerCase();
  if (name.includes('ventral')) return 'ventral';
  if (name.includes('inside') || name.includes('inner')) return 'abdomen-inside';
  if (name.includes('outside') || name.includes('outer')) return 'abdomen-outside';
  if (name.includes('detail') || name.includes('closeup') || name.includes('close-up')) return 'detail';
  return 'dorsal';
}

/** Runs of letters and of figures, each closed by a space, so that "G-12" is not found in "G-121". */
function wordsOf(text: string): string {
  return ` ${(text.toLowerCase().match(/\p{L}+|\p{N}+/gu) ?? []).join(' ')} `;
}

function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
