import type { Rung } from '../../domain/growth/rung.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { spanInWords } from '../../words/dates.ts';
import { estimateAsText } from '../../words/estimates.ts';

import { rungName } from '../../words/ladder.ts';
import { SAMPLE_NOTE } from '../../words/sample.ts';

/** Everything that is written on a contact sheet or a flip-book. */
export interface SheetWords {
  readonly title: string;
  /** In italics. */
  readonly taxon: string;
  readonly code: string;
  /** Lines below each skin; the first stands out. */
  readonly captions: readonly (readonly string[])[];
  /** What else has to be known of all that is shown; empty where nothing has. */
  readonly note: string;
}

export function sheetWordsOf(specimen: Pick<Specimen, 'name' | 'code' | 'taxon' | 'sample'>, rungs: readonly Rung[]): SheetWords {
  return {
    title: specimen.name ?? specimen.code,
    taxon: specimen.taxon,
    code: specimen.name ? specimen.code : '',
    captions: rungs.map((rung) => [
      rungName(rung),
      `shed ${spanInWords(rung.happenedFrom, rung.happenedTo)}`,
      rung.carapaceLengthMm ? `carapace ${estimateAsText(rung.carapaceLengthMm, 'mm')}` : 'carapace not measured',
    ]),
    note: specimen.sample ? SAMPLE_NOTE : '',
  };
}

/** What the sheet says about its own scale. */
export function scaleNote(factor: number): string {
  if (factor === 1) return 'True scale: a millimeter on paper is a millimeter of skin. Print at actual size.';
  return `All skins at one scale, ${factor.toFixed(factor < 1 ? 2 : 1)} times their size.`;
}

export const SHEET_RULE = 'Each skin shows the instar that ended with its molt. Sizes ± U (95 %).';
