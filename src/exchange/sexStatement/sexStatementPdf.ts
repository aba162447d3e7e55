import {
  clip,
  endPath,
  grayscale,
  PDFDocument,
  type PDFFont,
  type PDFImage,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
} from '@cantoo/pdf-lib';
import type { StatementText } from '../../words/sexStatement.ts';
import { embedFace, type Face, LACKING, LACKING_NOTE, openFace } from '../letters.ts';
import { wrapped } from '../lines.ts';
import { type CloseUp, closeUpOf, marksOn } from './closeUp.ts';
import { drawMarks, type Place, type StatementMark } from './marks.ts';

/** PDF's unit of length (ISO 32000-2:2020, 8.3.2.3): 1/72 in. Everything below is in points unless it says otherwise. */
const POINTS_PER_MM = 72 / 25.4;

const PAGES_MM = { a4: [210, 297], letter: [215.9, 279.4] } as const;
export type StatementPage = keyof typeof PAGES_MM;

const MARGIN = 18 * POINTS_PER_MM;
const LABEL_WIDTH = 46 * POINTS_PER_MM;
const LARGEST_TEXT = 10;
const SMALLEST_TEXT = 6;
/** Of one row: more than a page holds. */
const MOST_LINES = 150;
const SHORTENED = '(shortened to fit one page)';
/** A row of photos below the text, as many as stay large enough to show anything; they fill what the text leaves of the page. */
const LEAST_PHOTO_HEIGHT = 52 * POINTS_PER_MM;
export const MOST_PHOTOS = 3;
const CAPTION_SIZE = 8;
const CAPTION_LINES = 3;
const CAPTION_HEIGHT = CAPTION_LINES * CAPTION_SIZE * 1.3;
const PHOTO_GAP = 4 * POINTS_PER_MM;
/** The whole picture in a corner of its part, as a share of it. */
const INSET_SIDE = 0.3;
const CLOSE_UP_NOTE = 'enlarged; the frame in the corner shows which part of the photo';

export interface StatementPicture {
  readonly caption: string;
  /** A JPEG, upright. */
  readonly jpeg: Uint8Array;
  readonly marks: readonly StatementMark[];
}

interface Letters {
  readonly face: Face;
  readonly font: PDFFont;
}

interface Pen {
  readonly page: PDFPage;
  readonly regular: Letters;
  readonly bold: Letters;
  readonly widthPt: number;
}

/**
 * The statement on one page, with up to three photos. The text is set as large as fits, down to 6 points; where that does not do,
 * the longest rows are cut, each with a sign that it was: no row is left out, and least of all what was not checked. Letters that the font lacks are marked, and a sentence says so. The
 * same bytes each time: it carries no date but the one in its words.
 */
export async function sexStatementPdf(
  text: StatementText,
  pictures: readonly StatementPicture[],
  paper: StatementPage,
): Promise<Uint8Array> {
  const [widthMm, heightMm] = PAGES_MM[paper];
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(text.title);
  const page = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
  const regular: Letters = { face: await openFace('regular'), font: await embedFace(document, 'regular') };
  const bold: Letters = { face: await openFace('bold'), font: await embedFace(document, 'bold') };
  const pen: Pen = { page, regular, bold, widthPt: widthMm * POINTS_PER_MM };
  const shown = await Promise.all(
    pictures.slice(0, MOST_PHOTOS).map(async ({ caption, jpeg, marks }) => ({ caption, marks, image: await document.embedJpg(jpeg) })),
  );
  const footPt = shown.length > 0 ? MARGIN + LEAST_PHOTO_HEIGHT + CAPTION_HEIGHT + PHOTO_GAP : MARGIN;
  const belowPt = drawText(pen, withLackingNote(text, pictures, regular.face), { topPt: heightMm * POINTS_PER_MM - MARGIN, footPt });
  drawPictures(pen, shown, belowPt - PHOTO_GAP);
  return await document.save({ useObjectStreams: false });
}

function withLackingNote(text: StatementText, pictures: readonly StatementPicture[], face: Face): StatementText {
  const said = [text.title, text.claim, text.closing, ...text.rows.flatMap((row) => [row.label, row.text])];
  const lacking = [...said, ...pictures.map(({ caption }) => caption)].some((words) => face.writable(words).includes(LACKING));
  return lacking ? { ...text, closing: `${text.closing} ${LACKING_NOTE}` } : text;
}

interface Line {
  readonly text: string;
  readonly bold: boolean;
  readonly leftPt: number;
  readonly size: number;
  /** Down from the line before. */
  readonly stepPt: number;
}

/** Gives back how far down it came. */
function drawText(pen: Pen, text: StatementText, { topPt, footPt }: { readonly topPt: number; readonly footPt: number }): number {
  const roomPt = topPt - footPt;
  let size = LARGEST_TEXT;
  let lines = linesOf(pen, text, { size, most: MOST_LINES });
  while (size > SMALLEST_TEXT && heightOf(lines) > roomPt) {
    size -= 0.5;
    lines = linesOf(pen, text, { size, most: MOST_LINES });
  }
  for (let most = MOST_LINES - 1; most > 0 && heightOf(lines) > roomPt; most -= 1) lines = linesOf(pen, text, { size, most });
  let y = topPt;
  for (const line of lines) {
    y -= line.stepPt;
    pen.page.drawText(line.text, {
      x: line.leftPt,
      y,
      size: line.size,
      font: (line.bold ? pen.bold : pen.regular).font,
      color: grayscale(0),
    });
  }
  return y;
}

function heightOf(lines: readonly Line[]): number {
  return lines.reduce((sum, { stepPt }) => sum + stepPt, 0);
}

/** @param most lines of one row; a longer one is cut. */
function linesOf(
  pen: Pen,
  { title, claim, rows, closing }: StatementText,
  { size, most }: { readonly size: number; readonly most: number },
): Line[] {
  const { regular, bold, widthPt } = pen;
  const fullPt = widthPt - 2 * MARGIN;
  const leading = size * 1.35;
  const wide = (words: string, at: { size: number; bold: boolean }): Line[] =>
    wrapped(words, { face: (at.bold ? bold : regular).face, size: at.size, width: fullPt }).map((line, index) => ({
      ...{ text: line, bold: at.bold, leftPt: MARGIN, size: at.size },
      stepPt: at.size * (index === 0 ? 1.9 : 1.35),
    }));
  const rowLines = rows.flatMap(({ label, text }): Line[] => {
    const body = shortened(wrapped(text, { face: regular.face, size, width: fullPt - LABEL_WIDTH }), most);
    const first = { text: bold.face.writable(label), bold: true, leftPt: MARGIN, size, stepPt: leading * 1.25 };
    // The first line of the body stands beside its label.
    return [
      first,
      ...body.map((line, index) => ({
        ...{ text: line, bold: false, size },
        leftPt: MARGIN + LABEL_WIDTH,
        stepPt: index === 0 ? 0 : leading,
      })),
    ];
  });
  return [
    ...wide(title, { size: size * 1.8, bold: true }),
    ...wide(claim, { size: size * 1.3, bold: true }),
    ...rowLines,
    ...wide(closing, { size, bold: false }),
  ];
}

/** A row that is cut keeps a line for saying so. */
function shortened(lines: readonly string[], most: number): readonly string[] {
  return lines.length <= most ? lines : [...lines.slice(0, Math.max(1, most - 1)), SHORTENED];
}

interface ShownPicture {
  readonly caption: string;
  readonly marks: readonly StatementMark[];
  readonly image: PDFImage;
}

/** Beside each other from `topPt` down to the margin, each as large as its place allows, with its marks and what they show. */
function drawPictures({ page, regular, bold, widthPt }: Pen, pictures: readonly ShownPicture[], topPt: number): void {
  const placePt = (widthPt - 2 * MARGIN - PHOTO_GAP * (pictures.length - 1)) / pictures.length;
  for (const [index, { caption, marks, image }] of pictures.entries()) {
    const left = MARGIN + index * (placePt + PHOTO_GAP);
    const { width, height } = image.scaleToFit(placePt, topPt - MARGIN - CAPTION_HEIGHT);
    const bottom = topPt - height;
    const place = { left, bottom, width, height };
    const closeUp = closeUpOf(marks);
    if (closeUp) drawCloseUp({ page, font: bold.font }, { image, marks, closeUp }, place);
    else {
      page.drawImage(image, { x: left, y: bottom, width, height });
      drawMarks({ page, font: bold.font }, marks, place);
    }
    const words = closeUp ? `${caption}; ${CLOSE_UP_NOTE}` : caption;
    const lines = wrapped(words, { face: regular.face, size: CAPTION_SIZE, width: placePt }).slice(0, CAPTION_LINES);
    for (const [row, line] of lines.entries()) {
      const y = bottom - (row + 1) * CAPTION_SIZE * 1.3;
      page.drawText(line, { x: left, y, size: CAPTION_SIZE, font: regular.font, color: grayscale(0.25) });
    }
  }
}

/** The marked part of a picture, and the whole of it small in the corner that is farthest from what is marked. */
function drawCloseUp(
  { page, font }: { readonly page: PDFPage; readonly font: PDFFont },
  { image, marks, closeUp }: { readonly image: PDFImage; readonly marks: readonly StatementMark[]; readonly closeUp: CloseUp },
  place: Place,
): void {
  const { left, bottom, width, height } = place;
  const whole = { width: width / closeUp.side, height: height / closeUp.side };
  page.pushOperators(pushGraphicsState(), rectangle(left, bottom, width, height), clip(), endPath());
  page.drawImage(image, {
    x: left - closeUp.left * whole.width,
    y: bottom - (1 - closeUp.top - closeUp.side) * whole.height,
    ...whole,
  });
  page.pushOperators(popGraphicsState());
  const near = marksOn(closeUp, marks);
  drawMarks({ page, font }, near, place);
  const points = near.flatMap((mark) => mark.points);
  const middle = (along: 'x' | 'y') => points.reduce((sum, point) => sum + point[along], 0) / points.length;
  const inset = { width: width * INSET_SIDE, height: height * INSET_SIDE };
  const x = middle('x') > 0.5 ? left : left + width - inset.width;
  const y = middle('y') > 0.5 ? bottom + height - inset.height : bottom;
  page.drawRectangle({ x: x - 1.5, y: y - 1.5, width: inset.width + 3, height: inset.height + 3, color: grayscale(1) });
  page.drawImage(image, { x, y, ...inset });
  const frame = {
    x: x + closeUp.left * inset.width,
    y: y + (1 - closeUp.top - closeUp.side) * inset.height,
    width: closeUp.side * inset.width,
    height: closeUp.side * inset.height,
  };
  page.drawRectangle({ ...frame, borderWidth: 2.2, borderColor: grayscale(1) });
  page.drawRectangle({ ...frame, borderWidth: 0.8, borderColor: grayscale(0) });
}
