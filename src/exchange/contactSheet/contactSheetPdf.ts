import { grayscale, PDFDocument, type PDFFont, type PDFPage, PrintScaling } from '@cantoo/pdf-lib';
import { SHEETS_MM, type SheetLayout } from '../../domain/plate/sheet.ts';
import { embedFace, type FaceName } from '../letters.ts';
import type { WrittenPage } from './placed.ts';
import { sheetPages } from './sheetPages.ts';
import type { SheetWords } from './sheetWords.ts';
import { openFaces } from './typesetting.ts';

/** PDF's unit of length (ISO 32000-2:2020, 8.3.2.3): 1/72 in. */
const POINTS_PER_MM = 72 / 25.4;

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
  const fonts: Record<FaceName, PDFFont> = {
    regular: await embedFace(document, 'regular'),
    bold: await embedFace(document, 'bold'),
    italic: await embedFace(document, 'italic'),
  };
  const written = sheetPages(layout, words, await openFaces());
  for (const [number, placed] of layout.pages.entries()) {
    const page = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
    for (const { index, leftMm, topMm, widthMm: plateWidthMm, heightMm: plateHeightMm } of placed) {
      const bytes = pictures.get(index);
      if (!bytes) continue;
      page.drawImage(await document.embedJpg(bytes), {
        x: leftMm * POINTS_PER_MM,
        y: (heightMm - topMm - plateHeightMm) * POINTS_PER_MM,
        width: plateWidthMm * POINTS_PER_MM,
        height: plateHeightMm * POINTS_PER_MM,
      });
    }
    const words = written[number];
    if (words) writePage(page, words, fonts);
  }
  return await document.save({ useObjectStreams: false });
}

function writePage(page: PDFPage, { heightMm, texts, lines }: WrittenPage, fonts: Readonly<Record<FaceName, PDFFont>>): void {
  const pointAt = ([xMm, yMm]: readonly [number, number]) => ({ x: xMm * POINTS_PER_MM, y: (heightMm - yMm) * POINTS_PER_MM });
  for (const { text, face, sizeMm, leftMm, baselineMm } of texts) {
    const at = pointAt([leftMm, baselineMm]);
    page.drawText(text, { ...at, size: sizeMm * POINTS_PER_MM, font: fonts[face], color: grayscale(0) });
  }
  for (const { fromMm, toMm, thicknessMm } of lines) {
    page.drawLine({ start: pointAt(fromMm), end: pointAt(toMm), thickness: thicknessMm * POINTS_PER_MM, color: grayscale(0) });
  }
}
