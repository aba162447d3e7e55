import { grayscale, type PDFFont, type PDFPage } from '@cantoo/pdf-lib';

/** Where on a photo something was seen. */
export interface StatementMark {
  /** The number it is called by in the caption. */
  readonly number: number;
  /** One point, or the corners of an outline; as shares of the upright picture, from its top left corner. */
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

/** In points, from the bottom left corner of the page. */
export interface Place {
  readonly left: number;
  readonly bottom: number;
  readonly width: number;
  readonly height: number;
}

const RING = 7;
const LABEL_SIZE = 9;
/** Dark on light, so that it stands out on a pale skin as on a black ground. */
const STROKES = [
  { thickness: 3, color: grayscale(1) },
  { thickness: 1.2, color: grayscale(0) },
] as const;

/** Draws a ring round each point and a line round each outline, each with its number beside it. */
export function drawMarks(
  { page, font }: { readonly page: PDFPage; readonly font: PDFFont },
  marks: readonly StatementMark[],
  place: Place,
): void {
  for (const { number, points } of marks) {
    const at = points.map(({ x, y }) => ({ x: place.left + x * place.width, y: place.bottom + (1 - y) * place.height }));
    for (const { thickness, color } of STROKES) {
      for (const [index, start] of at.entries()) {
        if (at.length === 1) page.drawCircle({ ...start, size: RING, borderWidth: thickness, borderColor: color });
        else page.drawLine({ start, end: at[(index + 1) % at.length] ?? start, thickness, color });
      }
    }
    const x = Math.min(Math.max(...at.map((point) => point.x)) + RING + 2, place.left + place.width - LABEL_SIZE);
    const y = Math.min(Math.max(...at.map((point) => point.y)), place.bottom + place.height - LABEL_SIZE);
    const width = font.widthOfTextAtSize(String(number), LABEL_SIZE);
    page.drawRectangle({ x: x - 1, y: y - 2, width: width + 2, height: LABEL_SIZE + 1, color: grayscale(1) });
    page.drawText(String(number), { x, y, size: LABEL_SIZE, font, color: grayscale(0) });
  }
}
