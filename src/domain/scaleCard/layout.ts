import { BOARD, boardMarkers, isBlackSquare } from './board.ts';
import { isWhiteCell, MARKER_CELLS } from './dictionary.ts';

/** What is drawn on the card: filled rectangles and words. Millimetres of the card, x right, y down from its top left corner. */
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

const FRAME_WIDTH_MM = 190;
const FRAME_HEIGHT_MM = 120;

/** Of the bars that are measured with a caliper after printing. */
export const CHECK_BAR_MM = 50;

/** A line that is drawn, not printed to a size: thin, but not so thin that printers lose it. */
const LINE_MM = 0.2;
const TICK_MM = 0.15;

/** CIE 1976 lightness of the gray steps. */
export const GRAY_STEPS = [20, 35, 50, 65, 80, 95] as const;

/** The scale card, drawn to exact millimetres. All that measures stands at the same place of the frame on both sizes. */
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

/** Millimetre rules along all four sides, ticks inward, numbered in millimetres; the middle of a tick is its place. */
function rules(): CardShape[] {
  const shapes: CardShape[] = [];
  const tickLength = (at: number): number => (at % 10 === 0 ? 4.5 : at % 5 === 0 ? 3.2 : 2.2);
  for (let at = 0; at <= FRAME_WIDTH_MM; at += 1) {
    const length = tickLength(at);
    shapes.push(fill(at - TICK_MM / 2, 0, TICK_MM, length), fill(at - TICK_MM / 2, FRAME_HEIGHT_MM - length, TICK_MM, length));
    if (at % 10 === 0 && at > 0 && at < FRAME_WIDTH_MM) {
      shapes.push(words(`${at}`, at, 7, { centered: true, capHeightMm: 1.6 }));
      shapes.push(words(`${at}`, at, FRAME_HEIGHT_MM - 5.4, { centered: true, capHeightMm: 1.6 }));
    }
  }
  for (let at = 0; at <= FRAME_HEIGHT_MM; at += 1) {
    const length = tickLength(at);
    shapes.push(fill(0, at - TICK_MM / 2, length, TICK_MM), fill(FRAME_WIDTH_MM - length, at - TICK_MM / 2, length, TICK_MM));
    if (at % 10 === 0 && at > 0 && at < FRAME_HEIGHT_MM) {
      shapes.push(words(`${at}`, 6.9, at + 0.8, { centered: true, capHeightMm: 1.6 }));
      shapes.push(words(`${at}`, FRAME_WIDTH_MM - 6.9, at + 0.8, { centered: true, capHeightMm: 1.6 }));
    }
  }
  return shapes;
}

function board(): CardShape[] {
  const { columns, rows, squareMm, markerMm, leftMm, topMm } = BOARD;
  const shapes: CardShape[] = [];
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      if (isBlackSquare(column, row)) shapes.push(fill(leftMm + column * squareMm, topMm + row * squareMm, squareMm, squareMm));
    }
  }
  const cellMm = markerMm / (MARKER_CELLS + 2);
  for (const { markerId, corners } of boardMarkers()) {
    const [{ xMm, yMm }] = corners;
    shapes.push(fill(xMm, yMm, markerMm, markerMm));
    for (let row = 0; row < MARKER_CELLS; row += 1) {
      for (let column = 0; column < MARKER_CELLS; column += 1) {
        if (isWhiteCell(markerId, column, row)) {
          shapes.push(fill(xMm + (column + 1) * cellMm, yMm + (row + 1) * cellMm, cellMm, cellMm, 1));
        }
      }
    }
  }
  return shapes;
}

/** Solid bars, so that the jaws of a caliper have an edge to be set on. */
function checkBars(): CardShape[] {
  return [
    fill(10, 101, CHECK_BAR_MM, 4),
    words('50 mm across. Measure both bars with a caliper, then enter what you read.', 10, 109.2),
    fill(150, 12, 4, CHECK_BAR_MM),
    words('50 mm down', 148.6, 65.4),
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
  return linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055;
}

function label(): CardShape[] {
  const lines = ['Animal', 'Shed', 'Printer'].flatMap((name, index) => {
    const baseMm = 74 + index * 9;
    return [words(name, 148, baseMm), fill(158, baseMm, 22, LINE_MM)];
  });
  return [...lines, words('Exuviary', 66, 103.4, { capHeightMm: 2.6, bold: true }), words('scale card', 84, 103.4, { capHeightMm: 2.6 })];
}
