import type { RectangleScale } from '../../../../domain/measuring/calibration.ts';
import { fitHomography } from '../../../../domain/measuring/homography.ts';
import { KNOWN_RECTANGLES } from '../../../../domain/measuring/knownRectangles.ts';
import type { ImagePoint, PlanePoint } from '../../../../domain/measuring/points.ts';
import { rectangleOutline } from '../../../../domain/measuring/rectangleView.ts';
import { transform } from '../../../../domain/numerics/matrix3.ts';

const POINTS_PER_CORNER = 8;

/**
 * How the edge of a card with rounded corners should run in the photo if its constructed corners lie where they are
 * marked; null for objects with sharp corners and for corners that span no rectangle.
 */
export function roundedOutlineOf(marks: RectangleScale): ImagePoint[] | null {
  const radiusMm = marks.object === 'own' ? 0 : KNOWN_RECTANGLES[marks.object].cornerRadiusMm;
  if (radiusMm === 0) return null;
  const fitted = fitHomography(rectangleOutline(marks), marks.corners);
  if (fitted === null) return null;
  return roundedRectangle(marks.widthMm, marks.heightMm, radiusMm).map(({ xMm, yMm }) => {
    const [x, y, factor] = transform(fitted.matrix, xMm, yMm, 1);
    return { xPx: x / factor, yPx: y / factor };
  });
}

function roundedRectangle(widthMm: number, heightMm: number, radiusMm: number): PlanePoint[] {
  const centers: [number, number][] = [
    [radiusMm, radiusMm],
    [widthMm - radiusMm, radiusMm],
    [widthMm - radiusMm, heightMm - radiusMm],
    [radiusMm, heightMm - radiusMm],
  ];
  return centers.flatMap(([x, y], corner) =>
    Array.from({ length: POINTS_PER_CORNER + 1 }, (_, step) => {
      const angle = Math.PI + (Math.PI / 2) * (corner + step / POINTS_PER_CORNER);
      return { xMm: x + radiusMm * Math.cos(angle), yMm: y + radiusMm * Math.sin(angle) };
    }),
  );
}
