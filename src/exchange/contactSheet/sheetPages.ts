import { roundLengthMm } from '../../domain/plate/scaleBar.ts';
import {
  CAPTION_LINE_MM,
  CAPTION_LINES,
  type PlacedPlate,
  SHEET_HEAD_MM,
  SHEET_MARGIN_MM,
  SHEETS_MM,
  type SheetLayout,
} from '../../domain/plate/sheet.ts';
import { LACKING_NOTE } from '../letters.ts';
import type { PlacedText, WrittenPage } from './placed.ts';
import { SHEET_RULE, type SheetWords, scaleNote } from './sheetWords.ts';
import { barLines, type Faces, fittingSizeMm, isLacking, set } from './typesetting.ts';

const MM_PER_POINT = 25.4 / 72;
const LONGEST_BAR_MM = 60;
const TITLE_SIZES_MM = [16, 14, 12, 10.5, 9].map((points) => points * MM_PER_POINT);
const SMALL_MM = 7 * MM_PER_POINT;
const SMALL_LINE_MM = 3.4;

/** All that is written on each page of a contact sheet, every line fitted to its place. */
export function sheetPages(layout: SheetLayout, words: SheetWords, faces: Faces): WrittenPage[] {
  const { widthMm, heightMm } = SHEETS_MM[layout.size];
  return layout.pages.map((placed, index) => {
    const pageNumber = layout.pages.length > 1 ? `${index + 1} of ${layout.pages.length}` : '';
    const foot = footOf(layout, words, faces);
    return {
      widthMm,
      heightMm,
      texts: [
        ...headOf(words, pageNumber, widthMm, faces),
        ...placed.flatMap((plate) => captionOf(plate, words.captions[plate.index] ?? [], faces)),
        ...foot.texts,
      ],
      lines: foot.lines,
    };
  });
}

function headOf({ title, taxon, code }: SheetWords, pageNumber: string, sheetWidthMm: number, faces: Faces): PlacedText[] {
  const widthMm = sheetWidthMm - 2 * SHEET_MARGIN_MM;
  const sizeMm = fittingSizeMm(faces.bold, title, widthMm, TITLE_SIZES_MM);
  const below = { sizeMm: 10 * MM_PER_POINT, baselineMm: SHEET_MARGIN_MM + SHEET_HEAD_MM - 4, lineMm: 0, mostLines: 1 };
  const right = set(faces, [code, pageNumber].filter(Boolean).join(' · '), {
    ...below,
    ...{ face: 'regular', align: 'right', atMm: sheetWidthMm - SHEET_MARGIN_MM, widthMm: widthMm / 2 },
  });
  const taxonWidthMm = Math.min(...right.map(({ leftMm }) => leftMm - 4), sheetWidthMm - SHEET_MARGIN_MM) - SHEET_MARGIN_MM;
  const lineMm = 1.2 * sizeMm;
  const titleLines = set(faces, title, {
    ...{ face: 'bold', align: 'left', atMm: SHEET_MARGIN_MM, baselineMm: 0, widthMm, sizeMm, lineMm, mostLines: 2 },
  });
  // A title of two lines begins higher and ends where one of one line stands.
  const raisedMm = SHEET_MARGIN_MM + 6 + (titleLines.length > 1 ? 0.6 : 0) - lineMm * (titleLines.length - 1);
  return [
    ...titleLines.map((line) => ({ ...line, baselineMm: line.baselineMm + raisedMm })),
    ...set(faces, taxon, { ...below, face: 'italic', align: 'left', atMm: SHEET_MARGIN_MM, widthMm: taxonWidthMm }),
    ...right,
  ];
}

/** The name of the skin and its facts, each in as many lines as it needs, all in the lines that a caption has. */
export function captionOf({ caption }: Pick<PlacedPlate, 'caption'>, facts: readonly string[], faces: Faces): PlacedText[] {
  const placed: PlacedText[] = [];
  for (const [index, text] of facts.entries()) {
    const left = CAPTION_LINES - placed.length - (facts.length - 1 - index);
    placed.push(
      ...set(faces, text, {
        face: index === 0 ? 'bold' : 'regular',
        sizeMm: 8 * MM_PER_POINT,
        align: 'middle',
        atMm: caption.middleMm,
        baselineMm: caption.topMm + CAPTION_LINE_MM * (placed.length + 1),
        widthMm: caption.widthMm,
        lineMm: CAPTION_LINE_MM,
        mostLines: Math.max(1, left),
      }),
    );
  }
  return placed;
}

function footOf({ factor, size }: SheetLayout, words: SheetWords, faces: Faces): Pick<WrittenPage, 'texts' | 'lines'> {
  const { widthMm, heightMm } = SHEETS_MM[size];
  const lengthMm = roundLengthMm(LONGEST_BAR_MM / factor);
  const barMm = lengthMm * factor;
  const yMm = heightMm - SHEET_MARGIN_MM - 1;
  const notesMm = SHEET_MARGIN_MM + barMm + 22;
  const written = [words.title, words.taxon, words.code, ...words.captions.flat()];
  const notes = [scaleNote(factor), SHEET_RULE, words.note, isLacking(faces, written) ? LACKING_NOTE : ''].filter(Boolean);
  return {
    lines: barLines(SHEET_MARGIN_MM, yMm, barMm),
    texts: [
      ...set(faces, `${lengthMm} mm`, {
        ...{ face: 'bold', align: 'left', atMm: SHEET_MARGIN_MM + barMm + 3, baselineMm: yMm + 1, widthMm: 18 },
        ...{ sizeMm: 9 * MM_PER_POINT, lineMm: 0, mostLines: 1 },
      }),
      ...notes.flatMap((note, index) =>
        set(faces, note, {
          ...{ face: 'regular', align: 'left', atMm: notesMm, widthMm: widthMm - SHEET_MARGIN_MM - notesMm },
          ...{ baselineMm: yMm + 1.6 - SMALL_LINE_MM * (notes.length - 1 - index), sizeMm: SMALL_MM, lineMm: 0, mostLines: 1 },
        }),
      ),
    ],
  };
}
