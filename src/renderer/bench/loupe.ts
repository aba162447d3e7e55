/** How much the loupe can enlarge: CSS pixels for one pixel of the photo. */
export const LOUPE_ZOOMS = [4, 6, 8, 12, 16] as const;
export const DEFAULT_LOUPE_ZOOM = 8;

/** The next larger or smaller loupe; the same at the end of the row. */
export function loupeAfter(zoom: number, by: 1 | -1): number {
  const larger = LOUPE_ZOOMS.find((candidate) => candidate > zoom);
  const smaller = LOUPE_ZOOMS.findLast((candidate) => candidate < zoom);
  return (by === 1 ? larger : smaller) ?? zoom;
}
