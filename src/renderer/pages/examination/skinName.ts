import type { Molt } from '../../../domain/molting/molt.ts';
import { spanInWords } from '../../../words/dates.ts';
import { moltName } from '../../../words/instars.ts';

/** "Shed instar 8, 5 Mar 2026": which of the skins of an animal is meant. */
export function skinName(molt: Pick<Molt, 'instarShed' | 'happenedFrom' | 'happenedTo'>, recordedMolt: number): string {
  return `${moltName(molt, recordedMolt)}, ${spanInWords(molt.happenedFrom, molt.happenedTo)}`;
}
