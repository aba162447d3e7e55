import { type Lens, poseOf } from '../measuring/camera.ts';
import type { Corners } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import type { ImagePoint, PlanePoint } from '../measuring/points.ts';
import { rectangleOutline } from '../measuring/rectangleView.ts';
import { cross } from '../numerics/matrix3.ts';

type Four<Value> = readonly [Value, Value, Value, Value];

interface Plate {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
}

/**
 * How far outside each side of a plate's upper face its lower rim is seen, px at the middle of the side; negative where the face
 * hides it. All zero when the corners are those of no plane.
 */
export function footOf(corners: Corners, plate: Plate, lens: Lens): Four<number> {
  const outline = rectangleOutline(plate);
  const fit = fitHomography(outline, corners);
  if (!fit) return [0, 0, 0, 0];
  const { frame } = poseOf(fit.matrix, lens, { xMm: plate.widthMm / 2, yMm: plate.heightMm / 2 });
  const { anchor, position, right, down } = frame;
  const [x, y, z] = cross(right, down);
  // Corners go clockwise on the screen, so right x down points away from the camera.
  const seen = (at: PlanePoint, depthMm: number): ImagePoint => {
    const [alongX, alongY] = [at.xMm - anchor.xMm, at.yMm - anchor.yMm];
    const depth = position[2] + alongX * right[2] + alongY * down[2] + depthMm * z;
    return {
      xPx: lens.centre.xPx + (lens.focalPx * (position[0] + alongX * right[0] + alongY * down[0] + depthMm * x)) / depth,
      yPx: lens.centre.yPx + (lens.focalPx * (position[1] + alongX * right[1] + alongY * down[1] + depthMm * y)) / depth,
    };
  };
  const side = (from: 0 | 1 | 2 | 3, to: 0 | 1 | 2 | 3): number => {
    const [one, other] = [outline[from], outline[to]];
    if (!one || !other) throw new RangeError('Expected an outline of four corners');
    const middle = { xMm: (one.xMm + other.xMm) / 2, yMm: (one.yMm + other.yMm) / 2 };
    const [upper, lower] = [seen(middle, 0), seen(middle, plate.thicknessMm)];
    const [dx, dy] = [corners[to].xPx - corners[from].xPx, corners[to].yPx - corners[from].yPx];
    return ((lower.xPx - upper.xPx) * dy - (lower.yPx - upper.yPx) * dx) / Math.hypot(dx, dy);
  };
  return [side(0, 1), side(1, 2), side(2, 3), side(3, 0)];
}
