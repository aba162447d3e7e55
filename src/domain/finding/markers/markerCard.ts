import { fitHomography } from '../../measuring/homography.ts';
import type { ImagePoint, PlanePoint } from '../../measuring/points.ts';
import { adjugate, type Matrix3, transform } from '../../numerics/matrix3.ts';
import { type MarkerCorners, squareCorners } from '../../scaleCard/board.ts';
import type { LightPlanes } from '../light.ts';
import type { FoundMarker, FoundPoints } from './found.ts';
import { refineMarker } from './markerEdges.ts';
import { type PointPair, planeThrough } from './plane.ts';

/** A square card with one marker in each corner, all upright; which markers does not matter. */
export interface MarkerCardSpec {
  readonly sideMm: number;
  readonly markerMm: number;
  /** From the edge of the card to the markers. */
  readonly marginMm: number;
}

/** Sizes of the simplest kind of such a card. Own choice; a keeper's own card has its own. */
export const PLAIN_MARKER_CARD: MarkerCardSpec = { sideMm: 80, markerMm: 17.6, marginMm: 4 };

/** Markers stand within this share of their distance from where the card has them, or it is another card. */
const PLACE_TOLERANCE = 0.12;
const CORNER_SCATTER_PX = 0.15;
/** How well a marker's corner is placed: in the rendered photos within 0.1 px. Not the scatter about the plane, which calibrating tells. */
const CORNER_PX = 0.05;

/**
 * The marker corners of a plain card, refined on the markers' own edges.
 *
 * @param planes at full size; markers in their frame.
 * @returns null when no two markers stand to each other as on this card.
 */
export function markerCardPoints(planes: LightPlanes, markers: readonly FoundMarker[], spec: MarkerCardSpec): FoundPoints | null {
  const refined = markers.flatMap((marker) => {
    const corners = refineMarker(planes, marker);
    return corners ? [{ markerId: marker.markerId, corners }] : [];
  });
  const placed = refined.map((first) => placedBy(first, refined, spec)).toSorted((one, other) => other.length - one.length)[0];
  if (!placed || placed.length < 2) return null;
  const pairs = placed.flatMap(({ marker, nominal }) =>
    nominal.flatMap(({ xMm, yMm }, index): PointPair[] => {
      const at = marker.corners[index];
      return at ? [{ at, xMm, yMm }] : [];
    }),
  );
  const fit = planeThrough(pairs, CORNER_SCATTER_PX);
  if (!fit || fit.kept.length < 6) return null;
  return {
    markers: placed.length,
    points: fit.kept.map(({ at, xMm, yMm }) => ({ at, xMm, yMm })),
    pointPx: CORNER_PX,
  };
}

interface PlacedMarker {
  readonly marker: FoundMarker;
  readonly nominal: MarkerCorners;
}

/** Every marker's place on the card, told from where the plane of the first one says it lies. */
function placedBy(
  first: FoundMarker,
  all: readonly FoundMarker[],
  { sideMm, markerMm, marginMm }: MarkerCardSpec,
): readonly PlacedMarker[] {
  const pitchMm = sideMm - 2 * marginMm - markerMm;
  const fit = fitHomography(squareCorners(0, 0, markerMm), first.corners);
  if (!fit) return [];
  const imageToPlane = adjugate(fit.matrix);
  const offsets = all.flatMap((marker) => {
    const [corner] = marker.corners;
    const place = placeOf(imageToPlane, corner);
    const column = Math.round(place.xMm / pitchMm);
    const row = Math.round(place.yMm / pitchMm);
    const away = Math.hypot(place.xMm - column * pitchMm, place.yMm - row * pitchMm);
    return Math.abs(column) <= 1 && Math.abs(row) <= 1 && away < PLACE_TOLERANCE * pitchMm && isUpright(imageToPlane, marker, markerMm)
      ? [{ marker, column, row }]
      : [];
  });
  const left = Math.min(...offsets.map(({ column }) => column));
  const top = Math.min(...offsets.map(({ row }) => row));
  const cells = offsets.map(({ marker, column, row }) => ({ marker, column: column - left, row: row - top }));
  const distinct = new Set(cells.map(({ column, row }) => `${column} ${row}`));
  // Two to a side: a third column or row, or two in one place, belong to another pattern.
  if (distinct.size !== cells.length || cells.some(({ column, row }) => column > 1 || row > 1)) return [];
  return cells.map(({ marker, column, row }) => ({
    marker,
    nominal: squareCorners(marginMm + column * pitchMm, marginMm + row * pitchMm, markerMm),
  }));
}

function isUpright(imageToPlane: Matrix3, { corners }: FoundMarker, markerMm: number): boolean {
  const [a, b] = [placeOf(imageToPlane, corners[0]), placeOf(imageToPlane, corners[1])];
  return Math.hypot(b.xMm - a.xMm - markerMm, b.yMm - a.yMm) < 2 * PLACE_TOLERANCE * markerMm;
}

function placeOf(imageToPlane: Matrix3, { xPx, yPx }: ImagePoint): PlanePoint {
  const [x, y, w] = transform(imageToPlane, xPx, yPx, 1);
  return { xMm: x / w, yMm: y / w };
}
