import type { Instar } from '../../../domain/molting/instar.ts';
import type { Molt } from '../../../domain/molting/molt.ts';
import { spanInWords } from '../../../words/dates.ts';
import { moltName } from '../../../words/instars.ts';

/** "Shed instar 8, 5 Mar 2026": which of the skins of an animal is meant. */
export function skinName(
  molt: Pick<Molt, 'happenedFrom' | 'happenedTo'>,
  { instar, recordedMolt }: { readonly instar: Instar | null; readonly recordedMolt: number },
): string {
  return `${moltName(instar, recordedMolt)}, ${spanInWords(molt.happenedFrom, molt.happenedTo)}`;
}
