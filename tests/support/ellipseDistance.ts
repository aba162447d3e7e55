import { type Ellipse, nearestAngle, normalAt, pointOn } from '../../src/domain/measuring/ellipse.ts';
import type { ImagePoint } from '../../src/domain/measuring/points.ts';

/** Signed distance from the ellipse, px: positive outside. */
export function distanceFrom(ellipse: Ellipse, at: ImagePoint): number {
  const angle = nearestAngle(ellipse, at);
  const foot = pointOn(ellipse, angle);
  const normal = normalAt(ellipse, angle);
  return (at.xPx - foot.xPx) * normal.x + (at.yPx - foot.yPx) * normal.y;
}
