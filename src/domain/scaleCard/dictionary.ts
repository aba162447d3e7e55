/** Inner cells along one side of a marker; a black border one cell wide surrounds them. */
export const MARKER_CELLS = 4;

/**
 * The open dictionary DICT_4X4_50 (OpenCV, Apache-2.0; made after Garrido-Jurado et al. 2014, Pattern Recognition 47:2280):
 * sixteen cells of each marker, row by row, the top left one in the highest bit, 1 for white.
 */
const CODES = [
  0xb532, 0x0f9a, 0x332d, 0x9946, 0x549e, 0x79cd, 0x9e2e, 0xc4f2, 0xfeda, 0xcf56, 0xf991, 0x11a7, 0x0eb7, 0x2a0f, 0x24b1, 0x263e, 0x4665,
  0x6600, 0x6c5e, 0x76af, 0x868b, 0xb02b, 0xccd5, 0xdd82, 0xfe47, 0x9471, 0xace4, 0xa554, 0x2123, 0x346f, 0x4415, 0x57b2, 0x9ecf, 0xf0cb,
  0x08ae, 0x0929, 0x1875, 0x04ff, 0x0df6, 0x1c5a, 0x1718, 0x2a28, 0x328c, 0x38b2, 0x24e8, 0x2eeb, 0x2d3f, 0x4b64, 0x502e, 0x5013,
] as const;

export const MARKER_COUNT = CODES.length;

/**
 * Whether a cell of a marker is white; the border counts as row or column -1 and 4.
 *
 * @throws RangeError for a marker that is not in the dictionary.
 */
export function isWhiteCell(markerId: number, column: number, row: number): boolean {
  const code = CODES[markerId];
  if (code === undefined) throw new RangeError(`Expected a marker from 0 to ${MARKER_COUNT - 1}, got ${markerId}`);
  const inside = column >= 0 && row >= 0 && column < MARKER_CELLS && row < MARKER_CELLS;
  return inside && ((code >> (MARKER_CELLS * MARKER_CELLS - 1 - (row * MARKER_CELLS + column))) & 1) === 1;
}
