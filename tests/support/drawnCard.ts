import type { LightImage } from '../../src/domain/finding/light.ts';
import type { CardLayout } from '../../src/domain/scaleCard/layout.ts';
import type { Pinhole } from './pinhole.ts';
import { randomSource } from './random.ts';

const PAPER = 0.8;
const INK = 0.04;
const GROUND = 0.25;
/** Everything that measures lies on multiples of a twentieth of a millimeter. */
const CELLS_PER_MM = 20;
/** Per pixel, no two in one row or column: an edge along the pixels is placed to a sixteenth. */
const SAMPLES = 16;

export interface Drawing {
  readonly grain: number;
  /** Parts of the card that something lies on, mm of the card. */
  readonly covered?: readonly { leftMm: number; topMm: number; widthMm: number; heightMm: number }[];
}

/** The card's own geometry in linear light, cell by cell; words are left out. */
function inked(layout: CardLayout): { cells: Float32Array; columns: number; rows: number } {
  const columns = Math.round(layout.widthMm * CELLS_PER_MM);
  const rows = Math.round(layout.heightMm * CELLS_PER_MM);
  const cells = new Float32Array(columns * rows).fill(PAPER);
  for (const shape of layout.shapes) {
    if (shape.kind !== 'fill') continue;
    const left = Math.round(shape.leftMm * CELLS_PER_MM);
    const right = Math.round((shape.leftMm + shape.widthMm) * CELLS_PER_MM);
    const linear = shape.gray <= 0.04045 ? shape.gray / 12.92 : ((shape.gray + 0.055) / 1.055) ** 2.4;
    const light = INK + (PAPER - INK) * linear;
    const bottom = Math.round((shape.topMm + shape.heightMm) * CELLS_PER_MM);
    for (let row = Math.round(shape.topMm * CELLS_PER_MM); row < bottom; row += 1) {
      cells.fill(light, row * columns + left, row * columns + right);
    }
  }
  return { cells, columns, rows };
}

/**
 * The card as a camera sees it: each pixel the mean of sixteen points on the card, then a little blur and grain. Written apart
 * from the code under test; the ray is followed back by Newton on the camera's own map.
 */
export function drawnCard(layout: CardLayout, camera: Pinhole, { grain, covered = [] }: Drawing): LightImage {
  const { widthPx, heightPx } = camera.picture;
  const { cells, columns, rows } = inked(layout);
  const back = inverseOf(camera);
  const lightAtMm = (x: number, y: number): number => {
    if (covered.some(({ leftMm, topMm, widthMm, heightMm }) => x >= leftMm && y >= topMm && x < leftMm + widthMm && y < topMm + heightMm))
      return GROUND;
    const column = Math.floor(x * CELLS_PER_MM);
    const row = Math.floor(y * CELLS_PER_MM);
    return column >= 0 && row >= 0 && column < columns && row < rows ? (cells[row * columns + column] ?? GROUND) : GROUND;
  };
  const sharp = new Float32Array(widthPx * heightPx);
  for (let j = 0; j < heightPx; j += 1) {
    for (let i = 0; i < widthPx; i += 1) {
      let sum = 0;
      for (let sample = 0; sample < SAMPLES; sample += 1) {
        const [x, y] = back(i + (sample + 0.5) / SAMPLES, j + (((7 * sample) % SAMPLES) + 0.5) / SAMPLES);
        sum += lightAtMm(x, y);
      }
      sharp[j * widthPx + i] = sum / SAMPLES;
    }
  }
  const random = randomSource(23);
  const light = blurred(sharp, widthPx, heightPx).map((value) => value + random.normal(grain));
  return { widthPx, heightPx, light };
}

/** The plane's point behind a pixel, from the map's values at four points: a plane's picture is a homography. */
function inverseOf(camera: Pinhole): (xPx: number, yPx: number) => readonly [number, number] {
  // Rows of the map from three finite differences of the projective coordinates; see() divides by depth, so solve for it.
  const a = camera.see(0, 0);
  const b = camera.see(100, 0);
  const c = camera.see(0, 100);
  const d = camera.see(100, 100);
  // Unit square to quadrilateral (Heckbert 1989, Fundamentals of Texture Mapping and Image Warping, 2.2.3).
  const [dx1, dx2, sx] = [b.xPx - d.xPx, c.xPx - d.xPx, a.xPx - b.xPx + d.xPx - c.xPx];
  const [dy1, dy2, sy] = [b.yPx - d.yPx, c.yPx - d.yPx, a.yPx - b.yPx + d.yPx - c.yPx];
  const area = dx1 * dy2 - dx2 * dy1;
  const g = (sx * dy2 - dx2 * sy) / area;
  const h = (dx1 * sy - sx * dy1) / area;
  const m = [
    b.xPx - a.xPx + g * b.xPx,
    c.xPx - a.xPx + h * c.xPx,
    a.xPx,
    b.yPx - a.yPx + g * b.yPx,
    c.yPx - a.yPx + h * c.yPx,
    a.yPx,
  ] as const;
  return (xPx, yPx) => {
    // m0 s + m1 t + m2 = x (g s + h t + 1), and the same for y.
    const [p, q, r] = [m[0] - xPx * g, m[1] - xPx * h, xPx - m[2]];
    const [u, v, w] = [m[3] - yPx * g, m[4] - yPx * h, yPx - m[5]];
    const determinant = p * v - q * u;
    return [(100 * (r * v - q * w)) / determinant, (100 * (p * w - r * u)) / determinant];
  };
}

/** 1 2 1 along rows, then columns. */
function blurred(values: Float32Array, widthPx: number, heightPx: number): Float32Array {
  const along = (source: Float32Array, stride: number): Float32Array =>
    source.map((value, index) => (2 * value + (source[index - stride] ?? value) + (source[index + stride] ?? value)) / 4);
  return widthPx * heightPx === values.length ? along(along(values, 1), widthPx) : values;
}
