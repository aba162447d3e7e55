import type { FaceName } from '../letters.ts';

/** One line of words on a page, from its top left corner, mm of paper. */
export interface PlacedText {
  /** As its face can write it. */
  readonly text: string;
  readonly face: FaceName;
  /** Of the em. */
  readonly sizeMm: number;
  readonly leftMm: number;
  readonly baselineMm: number;
}

export interface PlacedLine {
  readonly fromMm: readonly [x: number, y: number];
  readonly toMm: readonly [x: number, y: number];
  readonly thicknessMm: number;
}

/** All that is written and ruled on one page; a pen puts it on a PDF, another into a picture. */
export interface WrittenPage {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly texts: readonly PlacedText[];
  readonly lines: readonly PlacedLine[];
}
