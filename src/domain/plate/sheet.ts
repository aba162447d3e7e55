import { z } from 'zod';

export const SheetSize = z.enum(['a4', 'letter']);
export type SheetSize = z.infer<typeof SheetSize>;

/** `true`: a millimeter is a millimeter on paper. `fitted`: as large as the sheet allows, all by the same factor. */
export const SheetScale = z.enum(['true', 'fitted']);
export type SheetScale = z.infer<typeof SheetScale>;

/** ISO 216 and ANSI/ASME Y14.1. */
export const SHEETS_MM: Readonly<Record<SheetSize, { readonly widthMm: number; readonly heightMm: number }>> = {
  a4: { widthMm: 210, heightMm: 297 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
};

/** Room round the skins: title above, scale bar below. */
export const SHEET_MARGIN_MM = 12;
export const SHEET_HEAD_MM = 16;
export const SHEET_FOOT_MM = 12;
/** Below each skin, for this many lines. */
export const CAPTION_LINES = 4;
export const CAPTION_LINE_MM = 4.2;
export const CAPTION_MM = CAPTION_LINES * CAPTION_LINE_MM + 0.2;
/** So wide that a usual date or name of an instar takes one line; four stand beside each other on either paper. */
const NARROWEST_MM = 41;
const GAP_MM = 5;
const MOST_ON_A_SHEET = 20;
const MOST_ENLARGED = 10;

/** What a sheet needs to know of a plate. */
export interface SheetPlate {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly carapaceAtMm: number;
  readonly carapaceFromLeftMm: number;
}

/** A skin on the sheet, from its top left corner, mm of paper. */
export interface PlacedPlate {
  readonly index: number;
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
  /** The part of the plate that is shown, as shares of its sides; the whole but for a skin larger than the sheet. */
  readonly shown: { readonly left: number; readonly top: number; readonly width: number; readonly height: number };
  /** Middle and top of its caption, and how wide it may be. */
  readonly caption: { readonly middleMm: number; readonly topMm: number; readonly widthMm: number };
}

export interface SheetLayout {
  readonly size: SheetSize;
  /** Millimeters of paper for each millimeter of skin. */
  readonly factor: number;
  readonly pages: readonly (readonly PlacedPlate[])[];
}

/**
 * Lines plates up in rows, carapace middles on one line in each, oldest first, all at the same factor. Fitted: the largest at
 * which twenty find room on a sheet. At true scale they take as many sheets as they need, and what is larger than a sheet is cut
 * off round the carapace.
 */
export function layOutSheet(plates: readonly SheetPlate[], size: SheetSize, scale: SheetScale): SheetLayout {
  if (scale === 'true') return { size, factor: 1, pages: packed(plates, size, 1) };
  const allowed = Math.ceil(plates.length / MOST_ON_A_SHEET);
  let low = 0;
  let high = MOST_ENLARGED;
  for (let round = 0; round < 40; round += 1) {
    const factor = (low + high) / 2;
    if (isWhole(plates, size, factor) && packed(plates, size, factor).length <= allowed) low = factor;
    else high = factor;
  }
  return { size, factor: low, pages: packed(plates, size, low) };
}

function roomOf(size: SheetSize): { widthMm: number; heightMm: number } {
  const { widthMm, heightMm } = SHEETS_MM[size];
  return {
    widthMm: widthMm - 2 * SHEET_MARGIN_MM,
    heightMm: heightMm - 2 * SHEET_MARGIN_MM - SHEET_HEAD_MM - SHEET_FOOT_MM,
  };
}

function isWhole(plates: readonly SheetPlate[], size: SheetSize, factor: number): boolean {
  const room = roomOf(size);
  return plates.every(({ widthMm, heightMm }) => widthMm * factor <= room.widthMm && heightMm * factor <= room.heightMm - CAPTION_MM);
}

interface Figure {
  readonly index: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly aboveMm: number;
  readonly cellMm: number;
  readonly shown: PlacedPlate['shown'];
}

function packed(plates: readonly SheetPlate[], size: SheetSize, factor: number): PlacedPlate[][] {
  const room = roomOf(size);
  const pages: PlacedPlate[][] = [];
  let page: PlacedPlate[] = [];
  let topMm = 0;
  for (const row of rowsOf(plates, room, factor)) {
    const lineMm = Math.max(...row.map(({ aboveMm }) => aboveMm));
    const belowMm = Math.max(...row.map(({ heightMm, aboveMm }) => heightMm - aboveMm));
    // Rounding must not push a skin that fills the sheet onto the next.
    if (page.length > 0 && topMm + lineMm + belowMm + CAPTION_MM > room.heightMm + 1e-9) {
      pages.push(page);
      page = [];
      topMm = 0;
    }
    page.push(...placedRow(row, { room, topMm, lineMm, belowMm }));
    topMm += lineMm + belowMm + CAPTION_MM + GAP_MM;
  }
  return page.length > 0 ? [...pages, page] : pages;
}

function rowsOf(plates: readonly SheetPlate[], room: { widthMm: number; heightMm: number }, factor: number): Figure[][] {
  const rows: Figure[][] = [];
  let usedMm = Number.POSITIVE_INFINITY;
  for (const [index, plate] of plates.entries()) {
    const figure = figureOf(index, plate, room, factor);
    if (usedMm + figure.cellMm > room.widthMm + 1e-9 || isTooHigh([...(rows.at(-1) ?? []), figure], room)) {
      rows.push([]);
      usedMm = 0;
    }
    rows.at(-1)?.push(figure);
    usedMm += figure.cellMm + GAP_MM;
  }
  return rows;
}

/** On one line, skins that reach far ahead and skins that reach far back need more height than either. */
function isTooHigh(row: readonly Figure[], room: { heightMm: number }): boolean {
  const aboveMm = Math.max(...row.map((figure) => figure.aboveMm));
  const belowMm = Math.max(...row.map((figure) => figure.heightMm - figure.aboveMm));
  return aboveMm + belowMm > room.heightMm - CAPTION_MM + 1e-9;
}

function figureOf(index: number, plate: SheetPlate, room: { widthMm: number; heightMm: number }, factor: number): Figure {
  const widthMm = Math.min(plate.widthMm * factor, room.widthMm);
  const heightMm = Math.min(plate.heightMm * factor, room.heightMm - CAPTION_MM);
  const width = widthMm / (plate.widthMm * factor);
  const height = heightMm / (plate.heightMm * factor);
  const left = windowAt(plate.carapaceFromLeftMm / plate.widthMm, width);
  const top = windowAt(plate.carapaceAtMm / plate.heightMm, height);
  return {
    index,
    widthMm,
    heightMm,
    aboveMm: plate.carapaceAtMm * factor - top * plate.heightMm * factor,
    cellMm: Math.max(widthMm, NARROWEST_MM),
    shown: { left, top, width, height },
  };
}

/** Where a window of a share of a side begins, so that it stands round a middle and within the side. */
function windowAt(middle: number, share: number): number {
  return Math.min(1 - share, Math.max(0, middle - share / 2));
}

function placedRow(
  row: readonly Figure[],
  at: { room: { widthMm: number }; topMm: number; lineMm: number; belowMm: number },
): PlacedPlate[] {
  const usedMm = row.reduce((sum, { cellMm }) => sum + cellMm, 0) + GAP_MM * (row.length - 1);
  let leftMm = SHEET_MARGIN_MM + (at.room.widthMm - usedMm) / 2;
  const topMm = SHEET_MARGIN_MM + SHEET_HEAD_MM + at.topMm;
  return row.map(({ index, widthMm, heightMm, aboveMm, cellMm, shown }) => {
    const middleMm = leftMm + cellMm / 2;
    leftMm += cellMm + GAP_MM;
    return {
      index,
      leftMm: middleMm - widthMm / 2,
      topMm: topMm + at.lineMm - aboveMm,
      widthMm,
      heightMm,
      shown,
      caption: { middleMm, topMm: topMm + at.lineMm + at.belowMm, widthMm: cellMm },
    };
  });
}
