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

/** @returns `points-outside-picture` with the numbers of those that lie outside; its borders belong to the picture. */
export function checkWithinPicture(points: readonly ImagePoint[], { widthPx, heightPx }: PictureSize, marginPx = 0): Result<null> {
  const isOutside = ({ xPx, yPx }: ImagePoint): boolean => !(Math.max(-xPx, xPx - widthPx, -yPx, yPx - heightPx) <= marginPx);
  const outside = points.flatMap((point, index) => (isOutside(point) ? [index] : []));
  return outside.length === 0 ? succeed(null) : fail({ code: 'points-outside-picture', points: outside, widthPx, heightPx });
}

/** The corners of a rectangle may follow from sides that meet outside. */
export function checkCornersWithinPicture(corners: readonly ImagePoint[], picture: PictureSize): Result<null> {
  return checkWithinPicture(corners, picture, CORNER_OUTSIDE_SHARE * Math.max(picture.widthPx, picture.heightPx));
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
