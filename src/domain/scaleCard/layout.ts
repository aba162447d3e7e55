import { encodeSrgb } from '../numerics/srgb.ts';
import { BOARD, boardMarkers, isBlackSquare } from './board.ts';
import { isWhiteCell, MARKER_CELLS } from './dictionary.ts';

/** What is drawn on the card: filled rectangles and words. Millimeters of the card, x right, y down from its top left corner. */
export type CardShape =
  | {
      readonly kind: 'fill';
      readonly leftMm: number;
      readonly topMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
      /** Encoded sRGB gray, 0 black to 1 white. */
      readonly gray: number;
    }
  | {
      readonly kind: 'words';
      readonly text: string;
      /** Of the baseline; the text is centered on it, or starts there. */
      readonly xMm: number;
      readonly yMm: number;
      readonly centered: boolean;
      readonly capHeightMm: number;
      readonly bold: boolean;
    };

export type CardSize = 'a5' | 'half-letter';

export interface CardLayout {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Where the frame's origin lies on the card. */
  readonly frameLeftMm: number;
  readonly frameTopMm: number;
  readonly shapes: readonly CardShape[];
}

/** A5: ISO 216:2007; half of Letter: ANSI/ASME Y14.1, 8.5 in x 11 in. Both lying. */
export const CARD_SIZES_MM: { readonly [Size in CardSize]: readonly [number, number] } = {
  a5: [210, 148],
  'half-letter': [215.9, 139.7],
};

/** All of the drawing, rules included. */
export const CARD_FRAME_MM = { width: 190, height: 120 } as const;
const { width: FRAME_WIDTH_MM, height: FRAME_HEIGHT_MM } = CARD_FRAME_MM;

/** Of the bars that are measured with a caliper after printing. */
export const CHECK_BAR_MM = 50;

/** A line that is drawn, not printed to a size: thin, but not so thin that printers lose it. */
const LINE_MM = 0.2;
const TICK_MM = 0.15;
/** Rules begin this far from the corners of the frame, where two of them would meet. */
const RULE_INSET_MM = 10;
const NUMBER = { centered: true, capHeightMm: 1.6 };

/** CIE 1976 lightness of the gray steps. */
export const GRAY_STEPS = [20, 35, 50, 65, 80, 95] as const;

/** The scale card, drawn to exact millimeters. All that measures stands at the same place of the frame on both sizes. */
export function scaleCardLayout(size: CardSize): CardLayout {
  const [widthMm, heightMm] = CARD_SIZES_MM[size];
  const frameLeftMm = (widthMm - FRAME_WIDTH_MM) / 2;
  const frameTopMm = (heightMm - FRAME_HEIGHT_MM) / 2;
  const shapes = [...rules(), ...board(), ...checkBars(), ...graySteps(), ...label()];
  return { widthMm, heightMm, frameLeftMm, frameTopMm, shapes: shapes.map((shape) => shifted(shape, frameLeftMm, frameTopMm)) };
}

function shifted(shape: CardShape, byXMm: number, byYMm: number): CardShape {
  return shape.kind === 'fill'
    ? { ...shape, leftMm: shape.leftMm + byXMm, topMm: shape.topMm + byYMm }
    : { ...shape, xMm: shape.xMm + byXMm, yMm: shape.yMm + byYMm };
}

function fill(leftMm: number, topMm: number, widthMm: number, heightMm: number, gray = 0): CardShape {
  return { kind: 'fill', leftMm, topMm, widthMm, heightMm, gray };
}

function words(
  text: string,
  xMm: number,
  yMm: number,
  options: { centered?: boolean; capHeightMm?: number; bold?: boolean } = {},
): CardShape {
  const { centered = false, capHeightMm = 1.8, bold = false } = options;
  return { kind: 'words', text, xMm, yMm, centered, capHeightMm, bold };
}

/** Millimeter rules along all four sides, ticks inward, numbered in millimeters from 0; the middle of a tick is its place. */
function rules(): CardShape[] {
  const shapes: CardShape[] = [];
  for (let at = 0; at <= FRAME_WIDTH_MM - 2 * RULE_INSET_MM; at += 1) {
    const x = RULE_INSET_MM + at;
    const length = tickLengthMm(at);
    shapes.push(fill(x - TICK_MM / 2, 0, TICK_MM, length), fill(x - TICK_MM / 2, FRAME_HEIGHT_MM - length, TICK_MM, length));
    if (at % 10 === 0) for (const y of [7, FRAME_HEIGHT_MM - 5.4]) shapes.push(words(`${at}`, x, y, NUMBER));
  }
  for (let at = 0; at <= FRAME_HEIGHT_MM - 2 * RULE_INSET_MM; at += 1) {
    const y = RULE_INSET_MM + at;
    const length = tickLengthMm(at);
    shapes.push(fill(0, y - TICK_MM / 2, length, TICK_MM), fill(FRAME_WIDTH_MM - length, y - TICK_MM / 2, length, TICK_MM));
    if (at % 10 === 0) for (const x of [6.9, FRAME_WIDTH_MM - 6.9]) shapes.push(words(`${at}`, x, y + 0.8, NUMBER));
  }
  return shapes;
}

function tickLengthMm(at: number): number {
  if (at % 10 === 0) return 4.5;
  return at % 5 === 0 ? 3.2 : 2.2;
}

function board(): CardShape[] {
  const { columns, rows, squareMm, leftMm, topMm } = BOARD;
  const shapes: CardShape[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      if (isBlackSquare(column, row)) shapes.push(fill(leftMm + column * squareMm, topMm + row * squareMm, squareMm, squareMm));
    }
  }
  for (const { markerId, corners } of boardMarkers()) shapes.push(...marker(markerId, corners[0].xMm, corners[0].yMm));
  return shapes;
}

/** White cells in one piece along rows and again along columns: side by side they would show seams. */
function marker(markerId: number, leftMm: number, topMm: number): CardShape[] {
  const cellMm = BOARD.markerMm / (MARKER_CELLS + 2);
  const shapes = [fill(leftMm, topMm, BOARD.markerMm, BOARD.markerMm)];
  for (let line = 0; line < MARKER_CELLS; line += 1) {
    for (const { from, length } of runs((at) => isWhiteCell(markerId, at, line))) {
      shapes.push(fill(leftMm + (from + 1) * cellMm, topMm + (line + 1) * cellMm, length * cellMm, cellMm, 1));
    }
    for (const { from, length } of runs((at) => isWhiteCell(markerId, line, at))) {
      shapes.push(fill(leftMm + (line + 1) * cellMm, topMm + (from + 1) * cellMm, cellMm, length * cellMm, 1));
    }
  }
  return shapes;
}

function runs(isWhite: (at: number) => boolean): readonly { readonly from: number; readonly length: number }[] {
  const found: { from: number; length: number }[] = [];
  for (let at = 0; at < MARKER_CELLS; at += 1) {
    if (!isWhite(at)) continue;
    const last = found.at(-1);
    if (last && last.from + last.length === at) last.length += 1;
    else found.push({ from: at, length: 1 });
  }
  return found;
}

/** Solid bars, so that the jaws of a caliper have an edge to be set on. Letters name them: "across" may mean either. */
function checkBars(): CardShape[] {
  return [
    fill(10, 101, CHECK_BAR_MM, 4),
    words('A: 50 mm. Measure bars A and B with a caliper, then enter what you read.', 10, 109.2),
    fill(150, 12, 4, CHECK_BAR_MM),
    words('B: 50 mm', 148.6, 65.4),
  ];
}

function graySteps(): CardShape[] {
  const heightMm = CHECK_BAR_MM / GRAY_STEPS.length;
  return GRAY_STEPS.flatMap((lightness, index) => [
    fill(160, 12 + index * heightMm, 14, heightMm, grayOf(lightness)),
    words(`${lightness}`, 175, 12 + (index + 0.5) * heightMm + 0.7, { capHeightMm: 1.5 }),
  ]);
}

/** Encoded sRGB gray (IEC 61966-2-1) of a CIE 1976 lightness. */
function grayOf(lightness: number): number {
  const linear = lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / 903.3;
  return encodeSrgb(linear);
}

function label(): CardShape[] {
  const lines = ['Animal', 'Shed', 'Printer'].flatMap((name, index) => {
    const baseMm = 74 + index * 9;
    return [words(name, 148, baseMm), fill(158, baseMm, 22, LINE_MM)];
  });
  return [...lines, words('Exuviary', 66, 103.4, { capHeightMm: 2.6, bold: true }), words('scale card', 84, 103.4, { capHeightMm: 2.6 })];
}
