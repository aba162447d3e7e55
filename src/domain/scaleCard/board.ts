import type { PlanePoint } from '../measuring/points.ts';

/** The chessboard of the scale card: markers stand in its white squares. */
export const BOARD = {
  columns: 11,
  rows: 7,
  squareMm: 12,
  markerMm: 9,
  /** Of the frame in which all of the card is drawn: x right, y down, on every size of card the same. */
  leftMm: 10,
  topMm: 12,
  /** Lower numbers are left to simpler cards, so that the two are not taken for each other. */
  firstMarker: 12,
} as const;

/** Four corners, clockwise from the one that is top left when the marker stands upright. */
export type MarkerCorners = readonly [PlanePoint, PlanePoint, PlanePoint, PlanePoint];

export interface BoardMarker {
  readonly markerId: number;
  readonly corners: MarkerCorners;
}

/** The square in the top left corner is black, and so is every second one. */
export function isBlackSquare(column: number, row: number): boolean {
  return (column + row) % 2 === 0;
}

/** The markers in reading order, in mm of the card's frame. */
export function boardMarkers(): readonly BoardMarker[] {
  const { columns, rows, squareMm, markerMm, leftMm, topMm, firstMarker } = BOARD;
  const markers: BoardMarker[] = [];
  const margin = (squareMm - markerMm) / 2;
  for (let row = 0; row < rows; row += 1) {
    for (let column = 0; column < columns; column += 1) {
      if (isBlackSquare(column, row)) continue;
      const corners = squareCorners(leftMm + column * squareMm + margin, topMm + row * squareMm + margin, markerMm);
      markers.push({ markerId: firstMarker + markers.length, corners });
    }
  }
  return markers;
}

/** Where four squares meet, and whether the one to the top left is black; in mm of the card's frame. */
export interface BoardCorner extends PlanePoint {
  readonly blackTopLeft: boolean;
}

/** The inner corners of the chessboard: the metric comes from these. */
export function boardCorners(): readonly BoardCorner[] {
  const { columns, rows, squareMm, leftMm, topMm } = BOARD;
  return Array.from({ length: (columns - 1) * (rows - 1) }, (_, index) => {
    const column = index % (columns - 1);
    const row = Math.floor(index / (columns - 1));
    return {
      xMm: leftMm + (column + 1) * squareMm,
      yMm: topMm + (row + 1) * squareMm,
      blackTopLeft: isBlackSquare(column, row),
    };
  });
}

export function squareCorners(leftMm: number, topMm: number, sideMm: number): MarkerCorners {
  return [
    { xMm: leftMm, yMm: topMm },
    { xMm: leftMm + sideMm, yMm: topMm },
    { xMm: leftMm + sideMm, yMm: topMm + sideMm },
    { xMm: leftMm, yMm: topMm + sideMm },
  ];
}
