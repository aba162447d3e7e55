import { createRequire } from 'node:module';
import type { Ellipse } from '../../src/domain/measuring/ellipse.ts';
import type { ImagePoint, PlanePoint } from '../../src/domain/measuring/points.ts';
import type { Matrix3 } from '../../src/domain/numerics/matrix3.ts';

/** The part of OpenCV used as a reference (version 5.0.0, through @techstark/opencv-js). */
interface OpenCv {
  readonly CV_64F: number;
  readonly CV_32F: number;
  readonly DICT_4X4_50: number;
  readonly Mat: new () => { readonly data: Uint8Array; readonly data64F: Float64Array; delete(): void };
  getPredefinedDictionary(name: number): {
    generateImageMarker(id: number, sidePx: number, drawn: object, border: number): void;
    delete(): void;
  };
  matFromArray(rows: number, columns: number, type: number, values: readonly number[]): { delete(): void };
  findHomography(from: object, to: object): { readonly data64F: Float64Array; delete(): void };
  solvePnP(object: object, image: object, camera: object, distortion: object, rotation: object, translation: object): boolean;
  Rodrigues(rotation: object, matrix: object): void;
  projectPoints(object: object, rotation: object, translation: object, camera: object, distortion: object, image: object): void;
  fitEllipseDirect(points: object): { center: { x: number; y: number }; size: { width: number; height: number }; angle: number };
}

/** Cells of a marker of DICT_4X4_50 with its border, row by row, true for white, as OpenCV draws them. */
export async function openCvMarkerCells(): Promise<(markerId: number) => readonly boolean[]> {
  const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');
  const cv = await loading;
  return (markerId) => {
    const dictionary = cv.getPredefinedDictionary(cv.DICT_4X4_50);
    const drawn = new cv.Mat();
    dictionary.generateImageMarker(markerId, 6, drawn, 1);
    const cells = Array.from(drawn.data, (value) => value > 127);
    for (const made of [drawn, dictionary]) made.delete();
    return cells;
  };
}

/** OpenCV's fitEllipseDirect, in single precision; its sizes are whole axes and its angle belongs to the width. */
export async function openCvEllipse(): Promise<(points: readonly ImagePoint[]) => Ellipse> {
  const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');
  const cv = await loading;
  return (points) => {
    const matrix = cv.matFromArray(
      points.length,
      2,
      cv.CV_32F,
      points.flatMap(({ xPx, yPx }) => [xPx, yPx]),
    );
    const { center, size, angle } = cv.fitEllipseDirect(matrix);
    matrix.delete();
    const along = size.width >= size.height ? angle : angle + 90;
    return {
      centre: { xPx: center.x, yPx: center.y },
      semiMajorPx: Math.max(size.width, size.height) / 2,
      semiMinorPx: Math.min(size.width, size.height) / 2,
      angleRad: ((along % 180) * Math.PI) / 180,
    };
  };
}

/** OpenCV's findHomography over all points (method 0), row by row. It works on single precision coordinates. */
export async function openCvHomography(): Promise<(plane: readonly PlanePoint[], image: readonly ImagePoint[]) => Matrix3> {
  const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');
  const cv = await loading;
  return (plane, image) => {
    const from = cv.matFromArray(
      plane.length,
      2,
      cv.CV_64F,
      plane.flatMap(({ xMm, yMm }) => [xMm, yMm]),
    );
    const to = cv.matFromArray(
      image.length,
      2,
      cv.CV_64F,
      image.flatMap(({ xPx, yPx }) => [xPx, yPx]),
    );
    const found = cv.findHomography(from, to);
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0] = found.data64F;
    for (const matrix of [from, to, found]) matrix.delete();
    return [a, b, c, d, e, f, g, h, i];
  };
}

export interface ReferencePose {
  readonly tiltDeg: number;
  /** Of the camera over the plane. */
  readonly heightMm: number;
}

/** OpenCV's solvePnP (iterative) for points of a plane seen without distortion; its pixel centers are whole numbers. */
export async function openCvPose(): Promise<
  (plane: readonly PlanePoint[], image: readonly ImagePoint[], focalPx: number, centre: ImagePoint) => ReferencePose
> {
  const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');
  const cv = await loading;
  return (plane, image, focalPx, centre) => {
    const object = cv.matFromArray(
      plane.length,
      3,
      cv.CV_64F,
      plane.flatMap(({ xMm, yMm }) => [xMm, yMm, 0]),
    );
    const seen = cv.matFromArray(
      image.length,
      2,
      cv.CV_64F,
      image.flatMap(({ xPx, yPx }) => [xPx - 0.5, yPx - 0.5]),
    );
    const camera = cv.matFromArray(3, 3, cv.CV_64F, [focalPx, 0, centre.xPx - 0.5, 0, focalPx, centre.yPx - 0.5, 0, 0, 1]);
    const distortion = cv.matFromArray(1, 4, cv.CV_64F, [0, 0, 0, 0]);
    const [turned, moved, matrix] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
    if (!cv.solvePnP(object, seen, camera, distortion, turned, moved)) throw new Error('Expected OpenCV to find a pose');
    cv.Rodrigues(turned, matrix);
    const [, , c = 0, , , f = 0, , , i = 0] = matrix.data64F;
    const [x = 0, y = 0, z = 0] = moved.data64F;
    for (const made of [object, seen, camera, distortion, turned, moved, matrix]) made.delete();
    return { tiltDeg: (Math.acos(Math.min(1, Math.abs(i))) * 180) / Math.PI, heightMm: Math.abs(c * x + f * y + i * z) };
  };
}

/** OpenCV's projectPoints for points (x, y, 1) before a lens with the radial coefficient k1 alone; its pixel centers are whole numbers. */
export async function openCvDistortion(): Promise<
  (rays: readonly { readonly x: number; readonly y: number }[], k1: number, focalPx: number, centre: ImagePoint) => readonly ImagePoint[]
> {
  const loading: Promise<OpenCv> = createRequire(import.meta.url)('@techstark/opencv-js');
  const cv = await loading;
  return (rays, k1, focalPx, centre) => {
    const object = cv.matFromArray(
      rays.length,
      3,
      cv.CV_64F,
      rays.flatMap(({ x, y }) => [x, y, 1]),
    );
    const still = cv.matFromArray(3, 1, cv.CV_64F, [0, 0, 0]);
    const camera = cv.matFromArray(3, 3, cv.CV_64F, [focalPx, 0, centre.xPx - 0.5, 0, focalPx, centre.yPx - 0.5, 0, 0, 1]);
    const distortion = cv.matFromArray(1, 4, cv.CV_64F, [k1, 0, 0, 0]);
    const image = new cv.Mat();
    cv.projectPoints(object, still, still, camera, distortion, image);
    const seen = rays.map((_, index) => ({
      xPx: (image.data64F[2 * index] ?? Number.NaN) + 0.5,
      yPx: (image.data64F[2 * index + 1] ?? Number.NaN) + 0.5,
    }));
    for (const made of [object, still, camera, distortion, image]) made.delete();
    return seen;
  };
}
