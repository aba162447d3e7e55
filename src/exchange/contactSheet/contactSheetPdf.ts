import { grayscale, PDFDocument, type PDFFont, type PDFPage, PrintScaling } from '@cantoo/pdf-lib';
import { roundLengthMm, SHEET_HEAD_MM, SHEET_MARGIN_MM, SHEETS_MM, type SheetLayout } from '../../domain/plate/sheet.ts';
import { embedFace, LACKING, LACKING_NOTE, writable } from '../letters.ts';
import { SHEET_RULE, type SheetWords, scaleNote } from './sheetWords.ts';

/** PDF's unit of length (ISO 32000-2:2020, 8.3.2.3): 1/72 in. */
const POINTS_PER_MM = 72 / 25.4;
const LINE_MM = 4.2;
const LONGEST_BAR_MM = 60;

interface Fonts {
  readonly regular: PDFFont;
  readonly bold: PDFFont;
  readonly italic: PDFFont;
}

interface Pen extends Fonts {
  readonly page: PDFPage;
  readonly sheetHeightMm: number;
}

/**
 * The skins of an animal as a PDF to print. The same bytes for the same sheet: it carries no date.
 *
 * @param pictures JPEG of each plate's shown part, in the order of `layout`'s indices.
 */
export async function contactSheetPdf(
  layout: SheetLayout,
  words: SheetWords,
  pictures: ReadonlyMap<number, Uint8Array>,
): Promise<Uint8Array> {
  const { widthMm, heightMm } = SHEETS_MM[layout.size];
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(`${words.title}: skins at one scale`);
  // Viewers that heed it offer no "fit to page" (ISO 32000-2:2020, table 147, PrintScaling).
  if (layout.factor === 1) document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const fonts: Fonts = {
    regular: await embedFace(document, 'regular'),
    bold: await embedFace(document, 'bold'),
    italic: await embedFace(document, 'italic'),
  };
  for (const [number, placed] of layout.pages.entries()) {
    const page = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
    const pen: Pen = { ...fonts, page, sheetHeightMm: heightMm };
    drawHead(pen, words, layout.pages.length > 1 ? `${number + 1} of ${layout.pages.length}` : '', widthMm);
    for (const { index, leftMm, topMm, widthMm: plateWidthMm, heightMm: plateHeightMm, caption } of placed) {
      const bytes = pictures.get(index);
      if (bytes) {
        const image = await document.embedJpg(bytes);
        page.drawImage(image, {
          x: leftMm * POINTS_PER_MM,
          y: (heightMm - topMm - plateHeightMm) * POINTS_PER_MM,
          width: plateWidthMm * POINTS_PER_MM,
          height: plateHeightMm * POINTS_PER_MM,
        });
      }
      for (const [line, text] of (words.captions[index] ?? []).entries()) {
        const font = line === 0 ? pen.bold : pen.regular;
        write(pen, text, { middleMm: caption.middleMm, baselineMm: caption.topMm + LINE_MM * (line + 1), sizePt: 8, font });
      }
    }
    drawFoot(pen, layout, isLacking(words, fonts));
  }
  return await document.save({ useObjectStreams: false });
}

function drawHead(pen: Pen, words: SheetWords, pageNumber: string, widthMm: number): void {
  write(pen, words.title, { leftMm: SHEET_MARGIN_MM, baselineMm: SHEET_MARGIN_MM + 6, sizePt: 16, font: pen.bold });
  const below = SHEET_MARGIN_MM + SHEET_HEAD_MM - 4;
  write(pen, words.taxon, { leftMm: SHEET_MARGIN_MM, baselineMm: below, sizePt: 10, font: pen.italic });
  const right = [words.code, pageNumber].filter(Boolean).join('   ');
  const at = widthMm - SHEET_MARGIN_MM - pen.regular.widthOfTextAtSize(writable(right, pen.regular), 10) / POINTS_PER_MM;
  write(pen, right, { leftMm: at, baselineMm: below, sizePt: 10, font: pen.regular });
}

function drawFoot(pen: Pen, { factor }: SheetLayout, lacking: boolean): void {
  const lengthMm = roundLengthMm(LONGEST_BAR_MM / factor);
  const baselineMm = pen.sheetHeightMm - SHEET_MARGIN_MM - 1;
  const y = (pen.sheetHeightMm - baselineMm) * POINTS_PER_MM;
  const [from, to] = [SHEET_MARGIN_MM * POINTS_PER_MM, (SHEET_MARGIN_MM + lengthMm * factor) * POINTS_PER_MM];
  for (const line of [
    { start: { x: from, y }, end: { x: to, y } },
    ...[from, to].map((x) => ({ start: { x, y: y - 4 }, end: { x, y: y + 4 } })),
  ]) {
    pen.page.drawLine({ ...line, thickness: 1, color: grayscale(0) });
  }
  write(pen, `${lengthMm} mm`, { leftMm: SHEET_MARGIN_MM + lengthMm * factor + 3, baselineMm: baselineMm + 1, sizePt: 9, font: pen.bold });
  const notesMm = SHEET_MARGIN_MM + lengthMm * factor + 22;
  write(pen, scaleNote(factor), { leftMm: notesMm, baselineMm: baselineMm - 2, sizePt: 7, font: pen.regular });
  write(pen, SHEET_RULE, { leftMm: notesMm, baselineMm: baselineMm + 1.6, sizePt: 7, font: pen.regular });
  if (lacking) write(pen, LACKING_NOTE, { leftMm: notesMm, baselineMm: baselineMm + 5.2, sizePt: 7, font: pen.regular });
}

function isLacking({ title, taxon, code, captions }: SheetWords, { regular }: Fonts): boolean {
  return [title, taxon, code, ...captions.flat()].some((text) => writable(text, regular).includes(LACKING));
}

type Place = ({ readonly leftMm: number } | { readonly middleMm: number }) & {
  readonly baselineMm: number;
  readonly sizePt: number;
  readonly font: PDFFont;
};

function write({ page, sheetHeightMm }: Pen, text: string, place: Place): void {
  const { font, sizePt, baselineMm } = place;
  const written = writable(text, font);
  const xMm = 'leftMm' in place ? place.leftMm : place.middleMm - font.widthOfTextAtSize(written, sizePt) / POINTS_PER_MM / 2;
  page.drawText(written, {
    x: xMm * POINTS_PER_MM,
    y: (sheetHeightMm - baselineMm) * POINTS_PER_MM,
    size: sizePt,
    font,
    color: grayscale(0),
  });
}
