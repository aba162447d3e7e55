import type { LightPlanes } from './light.ts';

/** Where light changes quickly, and in which direction. */
export interface EdgeMap {
  readonly widthPx: number;
  readonly heightPx: number;
  /** Strength of the edge at each pixel, row by row; 0 where there is none. */
  readonly strength: Float32Array;
  /** Direction across the edge at each pixel, rad in [0, pi): of the normal, x to y clockwise on the screen. */
  readonly angle: Float32Array;
}

/** Light below this hardly differs from black: keeps the noise of shadows from counting as edges. */
const DARK_LIGHT = 0.02;
/** An edge stands out from the noise and texture of the ground, whose gradient the median is. */
const ABOVE_MEDIAN = 2.5;
/** Relative change of light per pixel below which a pixel is never an edge. */
const LEAST_CHANGE = 0.02;

/**
 * Edges by relative change of light, thinned to crests: the gradient of the logarithm, the largest over the planes (Di Zenzo 1986,
 * CVGIP 33:116), kept where it is largest along its own direction (Canny 1986, IEEE PAMI 8:679).
 */
export function edgeMapOf(planes: LightPlanes): EdgeMap {
  const [{ widthPx, heightPx }] = planes;
  const count = widthPx * heightPx;
  const magnitude = new Float32Array(count);
  const angle = new Float32Array(count);
  for (const plane of planes) {
    const logarithm = smooth(
      plane.light.map((value) => Math.log(value + DARK_LIGHT)),
      widthPx,
      heightPx,
    );
    for (let y = 1; y + 1 < heightPx; y += 1) {
      for (let x = 1; x + 1 < widthPx; x += 1) {
        const at = y * widthPx + x;
        const gx = ((logarithm[at + 1] ?? 0) - (logarithm[at - 1] ?? 0)) / 2;
        const gy = ((logarithm[at + widthPx] ?? 0) - (logarithm[at - widthPx] ?? 0)) / 2;
        const size = Math.sqrt(gx * gx + gy * gy);
        if (size <= (magnitude[at] ?? 0)) continue;
        magnitude[at] = size;
        const turned = Math.atan2(gy, gx);
        angle[at] = turned < 0 ? turned + Math.PI : turned >= Math.PI ? 0 : turned;
      }
    }
  }
  return { widthPx, heightPx, strength: crests(magnitude, angle, widthPx, heightPx), angle };
}

/** Binomial blur of 3 x 3. */
function smooth(values: Float32Array, widthPx: number, heightPx: number): Float32Array {
  const across = new Float32Array(values.length);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      const at = y * widthPx + x;
      const left = x > 0 ? at - 1 : at;
      const right = x + 1 < widthPx ? at + 1 : at;
      across[at] = ((values[left] ?? 0) + 2 * (values[at] ?? 0) + (values[right] ?? 0)) / 4;
    }
  }
  const both = new Float32Array(values.length);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      const at = y * widthPx + x;
      const above = y > 0 ? at - widthPx : at;
      const below = y + 1 < heightPx ? at + widthPx : at;
      both[at] = ((across[above] ?? 0) + 2 * (across[at] ?? 0) + (across[below] ?? 0)) / 4;
    }
  }
  return both;
}

function crests(magnitude: Float32Array, angle: Float32Array, widthPx: number, heightPx: number): Float32Array {
  const sorted = magnitude.toSorted();
  const least = Math.max(LEAST_CHANGE, ABOVE_MEDIAN * (sorted[Math.floor(sorted.length / 2)] ?? 0));
  const strength = new Float32Array(magnitude.length);
  for (let y = 1; y + 1 < heightPx; y += 1) {
    for (let x = 1; x + 1 < widthPx; x += 1) {
      const at = y * widthPx + x;
      const size = magnitude[at] ?? 0;
      if (size < least) continue;
      const stepX = Math.round(Math.cos(angle[at] ?? 0));
      const stepY = Math.round(Math.sin(angle[at] ?? 0));
      const beyond = at + stepY * widthPx + stepX;
      const before = at - stepY * widthPx - stepX;
      if (size >= (magnitude[beyond] ?? 0) && size >= (magnitude[before] ?? 0)) strength[at] = size;
    }
  }
  return strength;
}
