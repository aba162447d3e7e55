import type { PlateFrame } from '../../domain/plate/frame.ts';
import { roundLengthMm } from '../../domain/plate/scaleBar.ts';
import type { PlacedText, WrittenPage } from './placed.ts';
import type { SheetWords } from './sheetWords.ts';
import { barLines, type Faces, set } from './typesetting.ts';

/** A frame is a small sheet of its own: its longer side is so long, and the skins stand on it between the words and the bar. */
const LONGEST_MM = 180;
const NARROWEST_MM = 70;
const MARGIN_MM = 4;
const LINE_MM = 4.6;
const FOOT_MM = 10;

/** Frames of one size; the skins stand at the same place and scale in each. */
export interface FlipFrames {
  /** Millimeters of the frame for each millimeter of skin. */
  readonly factor: number;
  /** Where the frame around all skins begins. */
  readonly skinsLeftMm: number;
  readonly skinsTopMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly pages: readonly WrittenPage[];
}

/** Puts words above and the scale bar below the skins of a flip-book, never over them. */
export function framePages(frame: PlateFrame, words: SheetWords, faces: Faces): FlipFrames {
  const factor = LONGEST_MM / Math.max(frame.widthMm, frame.heightMm);
  const skinsWidthMm = frame.widthMm * factor;
  const widthMm = Math.max(NARROWEST_MM, skinsWidthMm);
  const heads = words.captions.map((facts) => headOf(words, facts, widthMm - 2 * MARGIN_MM, faces));
  const headMm = Math.max(...heads.flat().map(({ baselineMm }) => baselineMm)) + MARGIN_MM;
  const heightMm = headMm + frame.heightMm * factor + FOOT_MM;
  const lengthMm = roundLengthMm((0.3 * widthMm) / factor);
  const barMm = lengthMm * factor;
  const yMm = heightMm - FOOT_MM / 2;
  const bar = set(faces, `${lengthMm} mm`, {
    ...{ face: 'bold', align: 'left', atMm: MARGIN_MM + barMm + 2, baselineMm: yMm + 1 },
    ...{ widthMm: widthMm - 2 * MARGIN_MM - barMm - 2, sizeMm: 3.2, lineMm: 0, mostLines: 1 },
  });
  const note = set(faces, words.note, {
    ...{ face: 'regular', align: 'right', atMm: widthMm - MARGIN_MM, baselineMm: yMm + 1 },
    ...{ widthMm: widthMm - 2 * MARGIN_MM - barMm - 18, sizeMm: 2.6, lineMm: 0, mostLines: 1 },
  });
  return {
    factor,
    skinsLeftMm: (widthMm - skinsWidthMm) / 2,
    skinsTopMm: headMm,
    widthMm,
    heightMm,
    pages: heads.map((head) => ({ widthMm, heightMm, texts: [...head, ...bar, ...note], lines: barLines(MARGIN_MM, yMm, barMm) })),
  };
}

/** Whose skin, which one and its facts, below each other from the top left. */
function headOf(words: SheetWords, facts: readonly string[], widthMm: number, faces: Faces): PlacedText[] {
  const named = [
    { text: [words.title, words.code].filter(Boolean).join(' · '), face: 'bold', mostLines: 2 },
    { text: words.taxon, face: 'italic', mostLines: 1 },
    ...facts.map((text, index) => ({ text, face: index === 0 ? 'bold' : 'regular', mostLines: 2 }) as const),
  ] as const;
  const placed: PlacedText[] = [];
  for (const { text, face, mostLines } of named) {
    const baselineMm = MARGIN_MM + LINE_MM * (placed.length + 0.7);
    placed.push(
      ...set(faces, text, { face, sizeMm: 3.4, align: 'left', atMm: MARGIN_MM, baselineMm, widthMm, lineMm: LINE_MM, mostLines }),
    );
  }
  return placed;
}
