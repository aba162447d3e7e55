import { cross, dot, type Matrix3, norm, type Vector3 } from '../numerics/matrix3.ts';
import type { CameraFacts } from '../photo/photo.ts';
import type { ImagePoint, PlanePoint } from './points.ts';
import type { CameraStation } from './view.ts';

/** The upright picture as far as calibrating needs it. */
export interface PictureFacts {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly facts: Pick<CameraFacts, 'focalLength35Mm'>;
}

/** A pinhole with square pixels, its axis through the middle of the picture. */
export interface Lens {
  readonly focalPx: number;
  readonly centre: ImagePoint;
  /** False when the picture does not tell its focal length and that of a common phone stands in. */
  readonly known: boolean;
}

/** Diagonal of the 36 mm x 24 mm frame that 35 mm equivalents refer to. */
const FULL_FRAME_DIAGONAL_MM = Math.hypot(36, 24);

/** Main camera of common phones; own assumption, used only to judge how large an effect could be. */
const COMMON_FOCAL_LENGTH_35_MM = 26;

/**
 * Relative standard uncertainty of a focal length from EXIF, besides its rounding: focusing close lengthens the image
 * distance, of phones by a few hundredths. Own assumption; a long lens near a skin needs more, which is why the mere focal length in mm
 * of a system camera is not used.
 */
const FOCUSING_RELATIVE_UNCERTAINTY = 0.02;

/** 35 mm equivalents are whole millimeters. */
const FOCAL_ROUNDING_HALF_WIDTH_MM = 0.5;

/** The 35 mm equivalent has the same angle over the *diagonal* (CIPA DCG-001); by the width a 4:3 picture would come out 4 % too near. */
export function lensOf(picture: PictureFacts): Lens {
  const equivalentMm = picture.facts.focalLength35Mm ?? COMMON_FOCAL_LENGTH_35_MM;
  return {
    focalPx: (equivalentMm * Math.hypot(picture.widthPx, picture.heightPx)) / FULL_FRAME_DIAGONAL_MM,
    centre: { xPx: picture.widthPx / 2, yPx: picture.heightPx / 2 },
    known: picture.facts.focalLength35Mm !== null,
  };
}

/**
 * How far the stand-in may be from the true focal length, as one standard deviation of its natural logarithm: main cameras of phones have
 * 24 to 28 mm, their telephoto cameras 50 to 77, others 35 to 100. Own judgment.
 */
const STAND_IN_DEVIATION = Math.log(2);

/** A lens with a focal length so many standard uncertainties longer; of a stand-in, by its own, wide one. */
export function refocused(lens: Lens, picture: PictureFacts, deviations: number): Lens {
  const focalPx = lens.known
    ? lens.focalPx + deviations * focalStandardUncertaintyPx(lens, picture)
    : lens.focalPx * Math.exp(deviations * STAND_IN_DEVIATION);
  return { ...lens, focalPx };
}

export function focalStandardUncertaintyPx(lens: Lens, picture: PictureFacts): number {
  const { focalLength35Mm } = picture.facts;
  if (focalLength35Mm === null) return 0;
  const rounding = FOCAL_ROUNDING_HALF_WIDTH_MM / Math.sqrt(3) / focalLength35Mm;
  return lens.focalPx * Math.hypot(rounding, FOCUSING_RELATIVE_UNCERTAINTY);
}

/** The plane as the camera sees it (x right, y down, z forward): its anchor in mm, and its two axes as unit vectors at right angles. */
export interface PlaneFrame {
  readonly anchor: PlanePoint;
  readonly position: Vector3;
  readonly right: Vector3;
  readonly down: Vector3;
}

/** The camera as a rigid body over the plane, and how far the picture of the plane is from that of any rigid plane. */
export interface CameraPose {
  readonly station: CameraStation;
  /** Between the optical axis and the plane's normal. */
  readonly tiltDeg: number;
  /** Length of the plane's first axis in the picture over its second, as a camera with this lens sees it: 1 if all fits. */
  readonly aspect: number;
  /** Cosine of the angle between the two axes: 0 if all fits. */
  readonly skew: number;
  readonly frame: PlaneFrame;
}

/**
 * Pose from the map of a plane (Zhang 2000, IEEE PAMI 22:1330, section 3.1): the first two columns of K^-1 H are the plane's
 * axes in the camera, brought to the nearest orthonormal pair.
 *
 * @param planeToImage mm to px.
 * @param anchor a point in the middle of what was marked: errors of the rotation turn about it.
 */
export function poseOf(planeToImage: Matrix3, lens: Lens, anchor: PlanePoint): CameraPose {
  const [first, second, third] = columnsInCamera(planeToImage, lens);
  const origin: Vector3 = [
    third[0] + first[0] * anchor.xMm + second[0] * anchor.yMm,
    third[1] + first[1] * anchor.xMm + second[1] * anchor.yMm,
    third[2] + first[2] * anchor.xMm + second[2] * anchor.yMm,
  ];
  const firstLength = norm(first);
  const secondLength = norm(second);
  // The plane lies before the camera, so the anchor's depth is positive.
  const toMm = (2 / (firstLength + secondLength)) * Math.sign(origin[2]);
  const [right, down] = nearestOrthonormalPair(first, second, Math.sign(origin[2]));
  const normal = cross(right, down);
  const position: Vector3 = [origin[0] * toMm, origin[1] * toMm, origin[2] * toMm];
  return {
    station: {
      foot: { xMm: anchor.xMm - dot(right, position), yMm: anchor.yMm - dot(down, position) },
      heightMm: Math.abs(dot(normal, position)),
    },
    tiltDeg: (Math.acos(Math.min(1, Math.abs(normal[2]))) * 180) / Math.PI,
    aspect: firstLength / secondLength,
    skew: dot(first, second) / (firstLength * secondLength),
    frame: { anchor, position, right, down },
  };
}

/** The columns of K^-1 H. */
function columnsInCamera(h: Matrix3, { focalPx, centre }: Lens): readonly [Vector3, Vector3, Vector3] {
  const column = (x: number, y: number, w: number): Vector3 => [(x - centre.xPx * w) / focalPx, (y - centre.yPx * w) / focalPx, w];
  return [column(h[0], h[3], h[6]), column(h[1], h[4], h[7]), column(h[2], h[5], h[8])];
}

/** [a b] (G)^(-1/2) with G the matrix of their inner products: the polar factor, in closed form for two columns. */
function nearestOrthonormalPair(a: Vector3, b: Vector3, sign: number): readonly [Vector3, Vector3] {
  const aa = dot(a, a);
  const bb = dot(b, b);
  const ab = dot(a, b);
  const root = Math.sqrt(aa * bb - ab * ab);
  // sqrt(G) = (G + root I) / trace', so its inverse is (adjugate of that) over its determinant, which is `root`.
  const trace = Math.sqrt(aa + bb + 2 * root);
  const p = (bb + root) / (trace * root);
  const q = -ab / (trace * root);
  const r = (aa + root) / (trace * root);
  const combine = (x: number, y: number): Vector3 => [
    sign * (x * a[0] + y * b[0]),
    sign * (x * a[1] + y * b[1]),
    sign * (x * a[2] + y * b[2]),
  ];
  return [combine(p, q), combine(q, r)];
}
