import type { PlanePoint } from '../../measuring/points.ts';
import type { Matrix3 } from '../../numerics/matrix3.ts';
import { BOARD, type BoardCorner, boardCorners, boardMarkers } from '../../scaleCard/board.ts';
import { type LightImage, lightAt } from '../light.ts';
import type { FoundMarker, FoundPoints } from './found.ts';
import { refineMarker } from './markerEdges.ts';
import { type PointPair, planeThrough, seenAt } from './plane.ts';
import { refineCrossing } from './saddle.ts';

const LEAST_MARKERS = 2;
/** With fewer inner corners the markers' own edges are taken in; ink that runs moves these, but not the corners. */
const ENOUGH_CORNERS = 8;
/** Marker outlines are found to about a pixel, and the paper may not be flat: their common plane is believed within this. */
const MARKER_SCATTER_PX = 1.5;
/** A refined corner is believed this near to where its neighbors say; paper curls. */
const CORNER_SCATTER_PX = 0.1;
/** A corner is looked at within this distance, mm: the nearest marker begins 1.5 mm away in x and y. */
const REACH_MM = 1.3;
/** Where the four squares about a corner are compared, mm in x and y: inside of what is looked at, and at its end. */
const SQUARE_PROBES_MM = [0.75, 1.25] as const;
const PROBE_SPREAD_MM = 0.15;
/** The darkest white and the lightest black must differ by this share of what their means do. */
const LEAST_EVENNESS = 0.8;
/** Corners whose squares differ by less than this share of the clearest corner's are covered or in glare. */
const LEAST_CONTRAST = 0.3;
/**
 * How well a corner is placed: drawn cards with grain, blur and tilt are held to 0.06 px in both coordinates together, so 0.04 px in
 * each. Not the scatter about the plane, which a bent card or a lens makes, and which calibrating tells and counts.
 */
const CORNER_PX = 0.04;

/**
 * The inner chessboard corners of the scale card, from markers that were found: these say which card and where; where exactly
 * is taken from the corners, because outlines of markers shrink by up to a pixel when found.
 *
 * @param image at full size; markers in its frame.
 * @returns null when fewer than two markers of the card agree on one plane, or too few corners are seen.
 */
export function boardPoints(image: LightImage, markers: readonly FoundMarker[]): FoundPoints | null {
  const pairs = placed(markers, ({ corners }) => corners);
  if (pairs.length < 4 * LEAST_MARKERS) return null;
  const rough = planeThrough(pairs, MARKER_SCATTER_PX);
  if (!rough || rough.kept.length < 4 * LEAST_MARKERS) return null;
  // From rough corners of few markers a far corner is predicted badly: near ones first, then all from those.
  const near = cornersSeen(image, rough.matrix, nearTo(rough.kept));
  const better = planeThrough(near, CORNER_SCATTER_PX)?.matrix ?? rough.matrix;
  const corners = cornersSeen(image, better, boardCorners());
  const outlines = corners.length < ENOUGH_CORNERS ? placed(markers, (marker) => refineMarker([image], marker)) : [];
  const fine = planeThrough([...corners, ...outlines], CORNER_SCATTER_PX);
  if (!fine) return null;
  return {
    markers: Math.ceil(rough.kept.length / 4),
    points: fine.kept.map(({ at, xMm, yMm }) => ({ at, xMm, yMm })),
    pointPx: CORNER_PX,
  };
}

/** Corners of the card's own markers, with their places on it. */
function placed(markers: readonly FoundMarker[], cornersOf: (marker: FoundMarker) => FoundMarker['corners'] | null): readonly PointPair[] {
  const known = new Map(boardMarkers().map(({ markerId, corners }) => [markerId, corners]));
  return markers.flatMap((marker) => {
    const nominal = known.get(marker.markerId);
    const corners = nominal ? cornersOf(marker) : null;
    return (corners ?? []).flatMap((at, index): PointPair[] => {
      const place = nominal?.[index];
      return place ? [{ at, ...place }] : [];
    });
  });
}

function nearTo(seen: readonly PlanePoint[]): readonly BoardCorner[] {
  return boardCorners().filter((corner) =>
    seen.some(({ xMm, yMm }) => Math.hypot(xMm - corner.xMm, yMm - corner.yMm) < 1.2 * BOARD.squareMm),
  );
}

function cornersSeen(image: LightImage, planeToImage: Matrix3, corners: readonly BoardCorner[]): readonly PointPair[] {
  const seen = corners.flatMap((corner) => {
    const start = seenAt(planeToImage, corner);
    const aside = seenAt(planeToImage, { xMm: corner.xMm + REACH_MM, yMm: corner.yMm });
    const below = seenAt(planeToImage, { xMm: corner.xMm, yMm: corner.yMm + REACH_MM });
    const halfPx = Math.min(
      Math.hypot(aside.xPx - start.xPx, aside.yPx - start.yPx),
      Math.hypot(below.xPx - start.xPx, below.yPx - start.yPx),
    );
    const at = refineCrossing(image, start, halfPx);
    return at ? [{ at, xMm: corner.xMm, yMm: corner.yMm, contrast: contrastAt(image, planeToImage, corner) }] : [];
  });
  // Most of the card may be covered, so it is the clearest corner that the others are held against.
  const clearest = Math.max(...seen.map(({ contrast }) => contrast));
  return seen.filter(({ contrast }) => contrast > 0 && contrast > LEAST_CONTRAST * clearest);
}

/**
 * How much lighter the two white squares are than the two black ones; 0 when one of the four is not as even as a printed square:
 * something lies over it.
 */
function contrastAt(image: LightImage, planeToImage: Matrix3, { xMm, yMm, blackTopLeft }: BoardCorner): number {
  const lights = (x: number, y: number): readonly number[] =>
    SQUARE_PROBES_MM.map((awayMm) => {
      const probes = [-PROBE_SPREAD_MM, 0, PROBE_SPREAD_MM].map((byMm) => {
        const at = seenAt(planeToImage, { xMm: xMm + x * (awayMm + byMm), yMm: yMm + y * (awayMm - byMm) });
        return lightAt(image, at.xPx, at.yPx);
      });
      return probes.reduce((sum, light) => sum + light, 0) / probes.length;
    });
  const diagonal = [...lights(-1, -1), ...lights(1, 1)];
  const other = [...lights(1, -1), ...lights(-1, 1)];
  const [white, black] = blackTopLeft ? [other, diagonal] : [diagonal, other];
  const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
  const contrast = mean(white) - mean(black);
  return Math.min(...white) - Math.max(...black) > LEAST_EVENNESS * contrast ? contrast : 0;
}
