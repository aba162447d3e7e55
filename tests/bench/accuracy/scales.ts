import { reduceLight, reducePlanes } from '../../../src/domain/finding/light.ts';
import { markerCardPoints } from '../../../src/domain/finding/markers/markerCard.ts';
import { pointsMarks } from '../../../src/domain/finding/markers/pointsMarks.ts';
import { factorFor, type LightOfPicture, refineScale } from '../../../src/domain/finding/refine.ts';
import type { RoughScale } from '../../../src/domain/finding/refinement.ts';
import type { CoinScale, RectangleScale, ScaleMarks } from '../../../src/domain/measuring/calibration.ts';
import { lensOf } from '../../../src/domain/measuring/camera.ts';
import { coinSolutions, nearEdgeBySecondObject } from '../../../src/domain/measuring/coinSide.ts';
import { distance, orderCorners } from '../../../src/domain/measuring/corners.ts';
import { type Ellipse, pointOn } from '../../../src/domain/measuring/ellipse.ts';
import { COIN_DIAMETER_HALF_WIDTH_MM } from '../../../src/domain/measuring/knownCoins.ts';
import { KNOWN_RECTANGLES, rectangularStandardUncertainty } from '../../../src/domain/measuring/knownRectangles.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { planeThrough, viewOfPlane } from '../../../src/domain/measuring/slopedPlane.ts';
import type { FiducialDetector } from '../../../src/images/fiducials.ts';
import { distanceFrom } from '../../support/ellipseDistance.ts';
import { imagePoint, mapQuad, type ScaleObject } from '../../support/photoTruth.ts';
import type { RandomSource } from '../../support/random.ts';
import type { SeenPhoto } from './photos.ts';

export type ScaleKind = ScaleObject['type'];

/** A scale object of a photo as the program refined it from rough handles. */
export interface FoundScale {
  readonly kind: ScaleKind;
  /** Null when it was not found; then `trouble` says why. */
  readonly marks: ScaleMarks | null;
  readonly trouble: string | null;
  /** Distances between what was found and what is true, px: of card corners, of points of a rim or of ticks. */
  readonly offPx: readonly number[];
  /** What two clicks alone would give: where, and the true distance. */
  readonly twoClicks: { readonly ends: readonly [ImagePoint, ImagePoint]; readonly distanceMm: number };
}

/** Rough handles are off by this share of the object's width, each in a direction of its own. */
const HANDLE_ERROR = 0.03;
/** Of rough corners: refining replaces it. */
const HANDLE_PX = 1;
/** Print of the photos' own marker card. */
const SHARP_PRINT = { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0.0005 };

/** Every scale object of a photo, refined from handles that are off; cards with markers are found without any. */
export async function foundScales(photo: SeenPhoto, detector: FiducialDetector, random: RandomSource): Promise<readonly FoundScale[]> {
  const found: FoundScale[] = [];
  for (const object of photo.truth.scale_objects) {
    if (object.type === 'fiducial_card') found.push(await markerCard(photo, object, detector));
    else if (object.type === 'id1_card') found.push(card(photo, object, random));
    else if (object.type === 'rule') found.push(rule(photo, object, random));
    else found.push(coin(photo, object, random));
  }
  return found;
}

function rough(at: ImagePoint, byPx: number, random: RandomSource): ImagePoint {
  const direction = random.uniform(0, 2 * Math.PI);
  return { xPx: at.xPx + byPx * Math.cos(direction), yPx: at.yPx + byPx * Math.sin(direction) };
}

type Of<Kind extends ScaleKind> = Extract<ScaleObject, { type: Kind }>;

/** As the program does when it is asked over the wire: in a picture made as small as the marks allow. */
function refine({ light, picture }: SeenPhoto, asked: RoughScale): ReturnType<typeof refineScale> {
  return refineScale(reducedBy(light, factorFor(asked)), asked, picture);
}

function reducedBy({ image, colors, factor }: LightOfPicture, by: number): LightOfPicture {
  return by === 1 ? { image, colors, factor } : { image: reduceLight(image, by), colors: reducePlanes(colors, by), factor: factor * by };
}

function card(photo: SeenPhoto, object: Of<'id1_card'>, random: RandomSource): FoundScale {
  const { cornerRadiusMm: _, ...size } = KNOWN_RECTANGLES['id-1'];
  const ordered = orderCorners(mapQuad(object.corners_top_px), size);
  if (!ordered.ok) throw new Error(`${photo.truth.name}: ${ordered.failure.code}`);
  const [a, b, c, d] = ordered.value;
  const twoClicks = { ends: [a, b], distanceMm: size.widthMm } as const;
  const byPx = HANDLE_ERROR * distance(a, b);
  const handles: RectangleScale['corners'] = [
    rough(a, byPx, random),
    rough(b, byPx, random),
    rough(c, byPx, random),
    rough(d, byPx, random),
  ];
  const refined = refine(photo, {
    kind: 'rectangle',
    marks: { kind: 'rectangle', object: 'id-1', ...size, corners: handles, pointingPx: HANDLE_PX },
    cornerRadiusMm: 0,
  });
  if (!refined.ok) return { kind: 'id1_card', marks: null, trouble: refined.failure.code, offPx: [], twoClicks };
  const { marks } = refined.value;
  if (marks.kind !== 'rectangle') throw new TypeError(`Expected a rectangle but ${marks.kind} was refined`);
  const offPx = marks.corners.map((corner, index) => distance(corner, ordered.value[index] ?? corner));
  return { kind: 'id1_card', marks, trouble: null, offPx, twoClicks };
}

async function markerCard({ light }: SeenPhoto, object: Of<'fiducial_card'>, detector: FiducialDetector): Promise<FoundScale> {
  const [a, b] = mapQuad(object.corners_top_px);
  const twoClicks = { ends: [a, b], distanceMm: object.side_mm } as const;
  const { upright: markers } = await detector.find(light.image);
  const spec = { sideMm: object.side_mm, markerMm: object.marker_mm, marginMm: object.margin_mm };
  const points = markerCardPoints(light.colors, markers, spec);
  if (!points) return { kind: 'fiducial_card', marks: null, trouble: `${markers.length} markers`, offPx: [], twoClicks };
  return {
    kind: 'fiducial_card',
    marks: pointsMarks(points, 'markers', SHARP_PRINT, object.thickness_mm),
    trouble: null,
    offPx: [],
    twoClicks,
  };
}

function rule(photo: SeenPhoto, object: Of<'rule'>, random: RandomSource): FoundScale {
  const middles = object.ticks_at_edge_px.map(([x, y], index): ImagePoint => {
    const [innerX, innerY] = object.ticks_inner_end_px[index] ?? [x, y];
    return { xPx: (x + innerX) / 2, yPx: (y + innerY) / 2 };
  });
  const [first, last] = [middles.at(0), middles.at(-1)];
  const [from, to] = [object.tick_values_mm.at(0), object.tick_values_mm.at(-1)];
  if (!first || !last || from === undefined || to === undefined) throw new Error('Expected the rule to have ticks');
  const twoClicks = { ends: [first, last], distanceMm: to - from } as const;
  const byPx = HANDLE_ERROR * distance(first, last);
  const ends: [ImagePoint, ImagePoint] = [rough(first, byPx, random), rough(last, byPx, random)];
  const refined = refine(photo, { kind: 'rule', ends, graduation: 'millimeter', heightMm: object.thickness_mm });
  if (!refined.ok) return { kind: 'rule', marks: null, trouble: refined.failure.code, offPx: [], twoClicks };
  const { marks } = refined.value;
  if (marks.kind !== 'rule-ticks') throw new TypeError(`Expected ticks but ${marks.kind} was refined`);
  const truePoints = [...object.ticks_at_edge_px, ...object.ticks_inner_end_px].map(imagePoint);
  const offPx = truePoints.map((at) => Math.min(...marks.ticks.map((tick) => offLinePx(at, tick.from, tick.to))));
  return { kind: 'rule', marks, trouble: null, offPx, twoClicks };
}

function offLinePx(at: ImagePoint, from: ImagePoint, to: ImagePoint): number {
  const [dx, dy] = [to.xPx - from.xPx, to.yPx - from.yPx];
  return Math.abs((at.xPx - from.xPx) * dy - (at.yPx - from.yPx) * dx) / Math.hypot(dx, dy);
}

const RIM_POINTS = 90;

export function trueRim(object: Of<'coin'>): Ellipse {
  const { centre, semi_major, semi_minor, angle_deg } = object.ellipse_top_edge_px;
  return { centre: imagePoint(centre), semiMajorPx: semi_major, semiMinorPx: semi_minor, angleRad: (angle_deg * Math.PI) / 180 };
}

function coin(photo: SeenPhoto, object: Of<'coin'>, random: RandomSource): FoundScale {
  const truth = trueRim(object);
  const twoClicks = { ends: [pointOn(truth, 0), pointOn(truth, Math.PI)], distanceMm: object.diameter_mm } as const;
  const refined = refine(photo, {
    kind: 'coin',
    disk: {
      coin: 'own',
      diameterMm: object.diameter_mm,
      diameterStandardUncertaintyMm: rectangularStandardUncertainty(COIN_DIAMETER_HALF_WIDTH_MM),
      thicknessMm: object.thickness_mm,
    },
    at: [rough(truth.centre, HANDLE_ERROR * 2 * truth.semiMajorPx, random)],
  });
  if (!refined.ok) return { kind: 'coin', marks: null, trouble: refined.failure.code, offPx: [], twoClicks };
  const { marks } = refined.value;
  if (marks.kind !== 'coin') throw new TypeError(`Expected a rim but ${marks.kind} was refined`);
  const offPx = Array.from({ length: RIM_POINTS }, (_, index) =>
    Math.abs(distanceFrom(truth, pointOn(marks.rim, (2 * Math.PI * index) / RIM_POINTS))),
  );
  return { kind: 'coin', marks: { ...marks, nearEdgeRad: nearEdge(marks, photo) }, trouble: null, offPx, twoClicks };
}

/** A keeper who is asked answers rightly: by the true plane of the table, else by its tilt. */
function nearEdge(marks: CoinScale, { picture, truth }: SeenPhoto): number | null {
  const [x, y, z] = truth.camera.R_world_to_cam;
  const table = viewOfPlane(planeThrough([0, 0, 1], [-x[2], -y[2], -z[2]]), lensOf(picture));
  const told = nearEdgeBySecondObject(marks, picture, { view: table, excursions: [], tiltDeg: truth.camera.tilt_deg });
  const solutions = coinSolutions(marks, picture);
  if (told !== null || !solutions) return told;
  const off = (tiltDeg: number): number => Math.abs(tiltDeg - truth.camera.tilt_deg);
  return off(solutions[0].tiltDeg) <= off(solutions[1].tiltDeg) ? solutions[0].nearEdgeRad : solutions[1].nearEdgeRad;
}
