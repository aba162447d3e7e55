import { grayscale, PDFDocument, type PDFFont, type PDFPage, PrintScaling, StandardFonts } from '@cantoo/pdf-lib';
import { CARD_SIZES_MM, type CardLayout, type CardShape, type CardSize, scaleCardLayout } from '../../domain/scaleCard/layout.ts';

/** PDF's unit of length (ISO 32000-2:2020, 8.3.2.3): 1/72 in. */
const POINTS_PER_MM = 72 / 25.4;

/** Height of capitals over the size of Helvetica (Adobe font metrics of Helvetica: CapHeight 718 of 1000). */
const CAP_HEIGHT = 0.718;

export type SheetSize = 'a4' | 'letter';

/** Upright sheets, each for two cards. */
const SHEETS_MM: { readonly [Size in SheetSize]: { readonly widthMm: number; readonly heightMm: number; readonly card: CardSize } } = {
  a4: { widthMm: 210, heightMm: 297, card: 'a5' },
  letter: { widthMm: 215.9, heightMm: 279.4, card: 'half-letter' },
};

interface Pen {
  readonly page: PDFPage;
  readonly regular: PDFFont;
  readonly bold: PDFFont;
  /** Of the card's top left corner on the sheet. */
  readonly leftMm: number;
  readonly topMm: number;
  readonly sheetHeightMm: number;
}

/**
 * A sheet with two scale cards as a vector PDF, drawn to exact millimeters; to be printed at actual size and cut in the middle.
 * The same bytes each time: it carries no date.
 */
export async function scaleCardPdf(sheet: SheetSize): Promise<Uint8Array> {
  const { widthMm, heightMm, card } = SHEETS_MM[sheet];
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle('Exuviary scale card');
  // Viewers that heed it offer no "fit to page" (ISO 32000-2:2020, table 147, PrintScaling).
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const page = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
  const regular = await document.embedFont(StandardFonts.Helvetica);
  const bold = await document.embedFont(StandardFonts.HelveticaBold);
  const layout = scaleCardLayout(card);
  const [, cardHeightMm] = CARD_SIZES_MM[card];
  for (const topMm of [0, heightMm - cardHeightMm]) drawCard({ page, regular, bold, leftMm: 0, topMm, sheetHeightMm: heightMm }, layout);
  drawCut(page, widthMm, heightMm);
  return await document.save({ useObjectStreams: false });
}

function drawCard(pen: Pen, { shapes }: CardLayout): void {
  for (const shape of shapes) drawShape(pen, shape);
}

function drawShape({ page, regular, bold, leftMm, topMm, sheetHeightMm }: Pen, shape: CardShape): void {
  // PDF counts upward from the bottom of the sheet.
  const x = (mm: number): number => (leftMm + mm) * POINTS_PER_MM;
  const y = (mm: number): number => (sheetHeightMm - topMm - mm) * POINTS_PER_MM;
  if (shape.kind === 'fill') {
    page.drawRectangle({
      x: x(shape.leftMm),
      y: y(shape.topMm + shape.heightMm),
      width: shape.widthMm * POINTS_PER_MM,
      height: shape.heightMm * POINTS_PER_MM,
      color: grayscale(shape.gray),
    });
    return;
  }
  const font = shape.bold ? bold : regular;
  const size = (shape.capHeightMm * POINTS_PER_MM) / CAP_HEIGHT;
  const width = font.widthOfTextAtSize(shape.text, size);
  page.drawText(shape.text, { x: x(shape.xMm) - (shape.centered ? width / 2 : 0), y: y(shape.yMm), size, font, color: grayscale(0) });
}

function drawCut(page: PDFPage, widthMm: number, heightMm: number): void {
  const y = (heightMm / 2) * POINTS_PER_MM;
  page.drawLine({
    start: { x: 0, y },
    end: { x: widthMm * POINTS_PER_MM, y },
    thickness: 0.4,
    dashArray: [4, 6],
    color: grayscale(0.6),
  });
}
