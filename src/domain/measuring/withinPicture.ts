import { assertNever, fail, type Result, succeed } from '../result.ts';
import type { ScaleMarks } from './calibration.ts';
import type { PictureFacts } from './camera.ts';
import { ALL_LANDMARKS, type Landmarks, pointOf } from './landmarks.ts';
import type { ImagePoint } from './points.ts';

type PictureSize = Pick<PictureFacts, 'widthPx' | 'heightPx'>;

/** A corner of a card that was cut off by the frame may lie this share of the picture's longest side outside. */
const CORNER_OUTSIDE_SHARE = 0.25;
/** Ticks and points that were fitted at the border may lie this far beyond it. */
const FITTED_OUTSIDE_PX = 2;

/** The numbers of those points that lie outside by more than `marginPx`; its borders belong to the picture. */
export function numbersOutside(points: readonly ImagePoint[], { widthPx, heightPx }: PictureSize, marginPx = 0): number[] {
  const isOutside = ({ xPx, yPx }: ImagePoint): boolean => !(Math.max(-xPx, xPx - widthPx, -yPx, yPx - heightPx) <= marginPx);
  return points.flatMap((point, index) => (isOutside(point) ? [index] : []));
}

/** @returns `points-outside-picture` with their numbers. */
export function checkWithinPicture(points: readonly ImagePoint[], picture: PictureSize, marginPx = 0): Result<null> {
  const outside = numbersOutside(points, picture, marginPx);
  if (outside.length === 0) return succeed(null);
  const { widthPx, heightPx } = picture;
  return fail({ code: 'points-outside-picture', points: outside, widthPx, heightPx });
}

/** How far beside the picture a corner may lie where the sides of a rectangle meet outside. */
export function cornerMarginPx({ widthPx, heightPx }: PictureSize): number {
  return CORNER_OUTSIDE_SHARE * Math.max(widthPx, heightPx);
}

export function checkCornersWithinPicture(corners: readonly ImagePoint[], picture: PictureSize): Result<null> {
  return checkWithinPicture(corners, picture, cornerMarginPx(picture));
}

/** What was marked on a scale object; of a coin its middle, since its rim may leave the picture. */
export function checkMarksWithinPicture(marks: ScaleMarks, picture: PictureSize): Result<null> {
  switch (marks.kind) {
    case 'rectangle':
      return checkCornersWithinPicture(marks.corners, picture);
    case 'two-points':
      return checkWithinPicture(marks.ends, picture);
    case 'coin':
      return checkWithinPicture([marks.rim.centre], picture);
    case 'points':
      return checkWithinPicture(
        marks.points.map(({ at }) => at),
        picture,
        FITTED_OUTSIDE_PX,
      );
    case 'rule-ticks':
      return checkWithinPicture([...marks.ends, ...marks.ticks.flatMap(({ from, to }) => [from, to])], picture, FITTED_OUTSIDE_PX);
    default:
      return assertNever(marks);
  }
}

/** Points of a skin, numbered in the order in which they are asked for. */
export function checkLandmarksWithinPicture(landmarks: Landmarks, picture: PictureSize): Result<null> {
  const inside: ImagePoint = { xPx: 0, yPx: 0 };
  return checkWithinPicture(
    ALL_LANDMARKS.map((name) => pointOf(landmarks[name]) ?? inside),
    picture,
  );
}
