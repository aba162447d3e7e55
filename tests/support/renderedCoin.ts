import { directEllipse } from '../../src/domain/finding/coin/fitEllipse.ts';
import type { LightImage, LightPlanes } from '../../src/domain/finding/light.ts';
import type { Ellipse } from '../../src/domain/measuring/ellipse.ts';
import { fitHomography } from '../../src/domain/measuring/homography.ts';
import type { PlanePoint } from '../../src/domain/measuring/points.ts';
import { invertHomography, planePointOf } from '../../src/domain/measuring/view.ts';
import { type Pinhole, pinhole } from './pinhole.ts';
import { randomSource } from './random.ts';

/** Linear red, green, blue. */
export type Color = readonly [number, number, number];

/** A coin with a wall on a table, its middle above the origin; seen obliquely, lit by a lamp that is not a point. */
export interface CoinScene {
  readonly radiusMm: number;
  readonly thicknessMm: number;
  readonly metal: Color;
  readonly ground: Color;
  readonly tiltDeg: number;
  readonly axisDeg: number;
  /** Direction in the plane towards the lamp, and its height above the horizon. */
  readonly lampDeg: number;
  readonly lampHeightDeg: number;
  /** Light on the table in full shadow, as a share of that in full light. */
  readonly ambient: number;
  /** How strongly the raised border, the relief and what the metal mirrors change its light, 0 for a dull disk. */
  readonly relief: number;
  /** A middle of another metal, as far as this share of the radius. */
  readonly core?: { readonly share: number; readonly metal: Color };
  /** Adds a white glare on the face. */
  readonly glare?: boolean;
  /** What lies under the middle of the picture; moves the coin towards the frame. */
  readonly aim?: PlanePoint;
  readonly noise?: number;
}

export const COIN_PICTURE = { widthPx: 400, heightPx: 340 };
const FOCAL_PX = 1500;
const DISTANCE_MM = 200;
const BEVEL_MM = 0.12;
/** The raised border starts at this share of the radius. */
const BORDER_SHARE = 0.92;
const SAMPLES = 3;
const LAMP_POINTS = 16;
/** Half of the angle under which the lamp is seen, rad: makes a penumbra. */
const LAMP_SPREAD = 0.12;
const RADIANS = Math.PI / 180;

export function cameraOver({ tiltDeg, axisDeg, aim = { xMm: 0, yMm: 0 } }: CoinScene): Pinhole {
  return pinhole({ tiltDeg, axisDeg, rollDeg: 4, distanceMm: DISTANCE_MM, aim, focalPx: FOCAL_PX, ...COIN_PICTURE });
}

/** The true outline of the upper edge, exact up to rounding. */
export function trueRimOf(scene: CoinScene): Ellipse {
  const { see } = cameraOver(scene);
  const points = Array.from({ length: 24 }, (_, index) => {
    const angle = (index * Math.PI) / 12;
    return see(scene.radiusMm * Math.cos(angle), scene.radiusMm * Math.sin(angle), scene.thicknessMm);
  });
  const rim = directEllipse(points);
  if (!rim) throw new Error('Expected the rim to be seen as an ellipse');
  return rim;
}

/** What the camera sees in linear light: each pixel the mean of nine points, a blur of 1-2-1, color at half the resolution, grain. */
export function renderedCoin(scene: CoinScene): LightPlanes {
  const { widthPx, heightPx } = COIN_PICTURE;
  const lightOf = shading(scene);
  const planes = [0, 1, 2].map(() => new Float64Array(widthPx * heightPx));
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      for (let index = 0; index < SAMPLES * SAMPLES; index += 1) {
        const color = lightOf(x + ((index % SAMPLES) + 0.5) / SAMPLES, y + (Math.floor(index / SAMPLES) + 0.5) / SAMPLES);
        planes.forEach((plane, channel) => {
          plane[y * widthPx + x] = (plane[y * widthPx + x] ?? 0) + (color[channel] ?? 0) / (SAMPLES * SAMPLES);
        });
      }
    }
  }
  const [red, green, blue] = planes.map((plane) => blurred(plane, widthPx, heightPx));
  if (!red || !green || !blue) throw new Error('Expected three colors');
  const brightness = red.map((value, index) => 0.2126 * value + 0.7152 * (green[index] ?? 0) + 0.0722 * (blue[index] ?? 0));
  const chance = randomSource(17);
  const seen = (plane: Float64Array): LightImage => {
    const color = coarse(
      plane.map((value, index) => value - (brightness[index] ?? 0)),
      widthPx,
      heightPx,
    );
    const light = Float32Array.from(color, (value, index) =>
      Math.min(1, Math.max(0, value + (brightness[index] ?? 0) + chance.normal(scene.noise ?? 0.006))),
    );
    return { widthPx, heightPx, light };
  };
  return [seen(red), seen(green), seen(blue)];
}

/** Light that comes from a place of the picture. */
function shading(scene: CoinScene): (xPx: number, yPx: number) => Color {
  const { radiusMm, thicknessMm, metal, ground, ambient } = scene;
  const camera = cameraOver(scene);
  const [toTable, toFace] = [backTo(camera, 0), backTo(camera, thicknessMm)];
  const lamps = lampDirections(scene);
  const lit = (share: number): number => ambient + (1 - ambient) * share;
  return (xPx, yPx) => {
    const face = toFace(xPx, yPx);
    const faceRadius = Math.hypot(face.xMm, face.yMm);
    if (faceRadius <= radiusMm) {
      const factor = faceFactor(scene, face, faceRadius);
      const glare = scene.glare ? 0.5 * Math.exp(-(((face.xMm - 4) / 3) ** 2) - ((face.yMm + 3) / 2) ** 2) : 0;
      const [red, green, blue] = scene.core && faceRadius < scene.core.share * radiusMm ? scene.core.metal : metal;
      return [red * factor + glare, green * factor + glare, blue * factor + glare];
    }
    const table = toTable(xPx, yPx);
    const wall = wallPoint(face, table, radiusMm);
    if (wall) {
      const facing = lamps.reduce((sum, lamp) => sum + Math.max(0, wall.xMm * lamp.x + wall.yMm * lamp.y), 0) / (lamps.length * radiusMm);
      const factor = 0.6 * ambient + 0.9 * facing;
      // Metal mirrors the table it stands on.
      const channel = (index: 0 | 1 | 2): number => metal[index] * (factor + 0.35 * ground[index]);
      return [channel(0), channel(1), channel(2)];
    }
    const free = lamps.filter((lamp) => !wallPoint(shadeEnd(table, lamp, thicknessMm), table, radiusMm)).length / lamps.length;
    const beside = Math.hypot(table.xMm, table.yMm) - radiusMm;
    const factor = lit(free) * (1 - 0.3 * Math.exp(-beside / 0.8)) * (1 + 0.06 * waves(0.7 * table.xMm, 0.7 * table.yMm));
    return [ground[0] * factor, ground[1] * factor, ground[2] * factor];
  };
}

interface LampDirection {
  /** Horizontal part of the unit vector towards a point of the lamp; `rise` is the vertical one. */
  readonly x: number;
  readonly y: number;
  readonly rise: number;
}

function lampDirections({ lampDeg, lampHeightDeg }: CoinScene): readonly LampDirection[] {
  return Array.from({ length: LAMP_POINTS }, (_, index) => {
    const spread = LAMP_SPREAD * Math.sqrt((index + 0.5) / LAMP_POINTS);
    const turn = index * 2.399963;
    const height = lampHeightDeg * RADIANS + spread * Math.sin(turn);
    const direction = lampDeg * RADIANS + spread * Math.cos(turn);
    return { x: Math.cos(height) * Math.cos(direction), y: Math.cos(height) * Math.sin(direction), rise: Math.sin(height) };
  });
}

/** Where a ray from the table to the lamp is as high as the coin. */
function shadeEnd({ xMm, yMm }: PlanePoint, { x, y, rise }: LampDirection, thicknessMm: number): PlanePoint {
  return { xMm: xMm + (x / rise) * thicknessMm, yMm: yMm + (y / rise) * thicknessMm };
}

/** Where the line from above the coin's face down to the table first meets the wall; null where it passes. */
function wallPoint(from: PlanePoint, to: PlanePoint, radiusMm: number): PlanePoint | null {
  const [dx, dy] = [to.xMm - from.xMm, to.yMm - from.yMm];
  const a = dx * dx + dy * dy;
  const b = from.xMm * dx + from.yMm * dy;
  const c = from.xMm * from.xMm + from.yMm * from.yMm - radiusMm * radiusMm;
  if (c <= 0) return from;
  const root = b * b - a * c;
  if (root < 0 || a === 0) return null;
  const share = (-b - Math.sqrt(root)) / a;
  return share < 0 || share > 1 ? null : { xMm: from.xMm + share * dx, yMm: from.yMm + share * dy };
}

/** Bevel and raised border turn towards or away from the lamp; the field shows relief and what it mirrors. */
function faceFactor({ radiusMm, lampDeg, relief }: CoinScene, { xMm, yMm }: PlanePoint, fromMiddleMm: number): number {
  const towardsLamp = Math.cos(Math.atan2(yMm, xMm) - lampDeg * RADIANS);
  const inner = (fromMiddleMm - BORDER_SHARE * radiusMm) / 0.25;
  const border = -1.1 * towardsLamp * Math.exp(-inner * inner) - 0.35 * Math.exp(-((inner + 1.6) ** 2));
  const bevel = fromMiddleMm > radiusMm - BEVEL_MM ? 0.7 * towardsLamp - 0.1 : 0;
  const petals = 0.5 + 0.2 * Math.cos(5 * Math.atan2(yMm, xMm));
  const flower = (fromMiddleMm / radiusMm - petals) / 0.05;
  const mirrored = 0.35 * waves(0.35 * xMm + 2, 0.35 * yMm);
  return Math.max(0.05, 1 + relief * (border + bevel + mirrored - 0.6 * towardsLamp * Math.exp(-flower * flower)));
}

/** A mottling between about -1 and 1. */
function waves(x: number, y: number): number {
  return Math.tanh(2 * Math.sin(1.3 * x + 1.9 * Math.sin(0.9 * y)) * Math.sin(1.1 * y + 1.4 * Math.sin(0.7 * x + 1)));
}

function backTo({ see }: Pinhole, heightMm: number): (xPx: number, yPx: number) => PlanePoint {
  const plane = [
    { xMm: -20, yMm: -20 },
    { xMm: 20, yMm: -20 },
    { xMm: 20, yMm: 20 },
    { xMm: -20, yMm: 20 },
  ];
  const fit = fitHomography(
    plane,
    plane.map(({ xMm, yMm }) => see(xMm, yMm, heightMm)),
  );
  if (!fit) throw new Error('Expected a camera that sees the table');
  const inverse = invertHomography(fit.matrix, see(0, 0, heightMm));
  return (xPx, yPx) => planePointOf(inverse, { xPx, yPx }) ?? { xMm: 1e3, yMm: 1e3 };
}

function blurred(plane: Float64Array, widthPx: number, heightPx: number): Float64Array {
  const clamped = (value: number, length: number): number => Math.min(Math.max(value, 0), length - 1);
  return plane.map((_, index) => {
    const [x, y] = [index % widthPx, Math.floor(index / widthPx)];
    let sum = 0;
    for (let dy = -1; dy <= 1; dy += 1) {
      for (let dx = -1; dx <= 1; dx += 1) {
        const weight = (2 - Math.abs(dx)) * (2 - Math.abs(dy));
        sum += (weight * (plane[clamped(y + dy, heightPx) * widthPx + clamped(x + dx, widthPx)] ?? 0)) / 16;
      }
    }
    return sum;
  });
}

/** Each block of 2 x 2 has one value. */
function coarse(plane: Float64Array, widthPx: number, heightPx: number): Float64Array {
  return plane.map((_, index) => {
    const x = (index % widthPx) & ~1;
    const y = Math.floor(index / widthPx) & ~1;
    const [right, below] = [Math.min(x + 1, widthPx - 1), Math.min(y + 1, heightPx - 1)];
    const at = (column: number, row: number): number => plane[row * widthPx + column] ?? 0;
    return (at(x, y) + at(right, y) + at(x, below) + at(right, below)) / 4;
  });
}
