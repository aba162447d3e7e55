import type { PictureFacts } from '../../src/domain/measuring/camera.ts';
import type { ImagePoint, PlanePoint } from '../../src/domain/measuring/points.ts';

/** A simulated camera over a plane whose axes run clockwise as the camera sees them; z above the plane, mm. */
export interface Pinhole {
  readonly picture: PictureFacts;
  readonly see: (xMm: number, yMm: number, zMm?: number) => ImagePoint;
}

export interface PinholePlacement {
  readonly tiltDeg: number;
  /** Direction in the plane of the axis the camera is tilted about. */
  readonly axisDeg: number;
  readonly rollDeg: number;
  /** Along the optical axis to `aim`. */
  readonly distanceMm: number;
  readonly aim: PlanePoint;
  readonly focalPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
}

const RADIANS = Math.PI / 180;

/** A camera with square pixels and no distortion; written apart from the code under test. */
export function pinhole({ tiltDeg, axisDeg, rollDeg, distanceMm, aim, focalPx, widthPx, heightPx }: PinholePlacement): Pinhole {
  const [sinTilt, cosTilt] = [Math.sin(tiltDeg * RADIANS), Math.cos(tiltDeg * RADIANS)];
  const [axisX, axisY] = [Math.cos(axisDeg * RADIANS), Math.sin(axisDeg * RADIANS)];
  const [sinRoll, cosRoll] = [Math.sin(rollDeg * RADIANS), Math.cos(rollDeg * RADIANS)];
  return {
    picture: { widthPx, heightPx, facts: { focalLength35Mm: (focalPx * Math.hypot(36, 24)) / Math.hypot(widthPx, heightPx) } },
    see: (xMm, yMm, zMm = 0) => {
      const [x, y, z] = [xMm - aim.xMm, yMm - aim.yMm, -zMm];
      // Rodrigues' rotation about the axis in the plane, then the roll about the optical axis.
      const along = (axisX * x + axisY * y) * (1 - cosTilt);
      const tiltedX = x * cosTilt + axisY * z * sinTilt + axisX * along;
      const tiltedY = y * cosTilt - axisX * z * sinTilt + axisY * along;
      const tiltedZ = z * cosTilt + (axisX * y - axisY * x) * sinTilt;
      const depth = tiltedZ + distanceMm;
      return {
        xPx: widthPx / 2 + (focalPx * (cosRoll * tiltedX - sinRoll * tiltedY)) / depth,
        yPx: heightPx / 2 + (focalPx * (sinRoll * tiltedX + cosRoll * tiltedY)) / depth,
      };
    },
  };
}

/** The camera of fixture A: an ID-1 card 300 mm away, tilted 15 degrees, 12 megapixels. */
export const FIXTURE_A: PinholePlacement = {
  tiltDeg: 15,
  axisDeg: 30,
  rollDeg: 5,
  distanceMm: 300,
  aim: { xMm: 42.8, yMm: 26.99 },
  focalPx: 3000,
  widthPx: 4032,
  heightPx: 3024,
};
