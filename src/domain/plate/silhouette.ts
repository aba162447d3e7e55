import { medianOf } from '../numerics/median.ts';

/** A small picture, rows from the top, four bytes (sRGB and cover) for each pixel. */
export interface SmallPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rgba: Uint8ClampedArray;
}

/** A disk that surely lies on the skin: the middle of its carapace. */
export interface Seed {
  readonly xPx: number;
  readonly yPx: number;
  readonly radiusPx: number;
}

type Surface = readonly [number[], number[], number[]];

const FIT_ROUNDS = 6;
/** The skin, its shadow and a corner of the scale object cover less than the rest of a plate. */
const GROUND_SHARE = 0.6;
/** Samples along the longer side are enough for a surface of second order. */
const SAMPLES_ALONG = 60;
/** Of 255: what looks alike on paper, and how far above the ground's own scatter a skin has to stand. Tried on photos, no source. */
const LEAST_DIFFERENCE = 22;
const SCATTER_FACTOR = 3.2;
/** Share of the ground's brightness (sRGB values) that a shadow takes at most. Tried on photos, no source. */
const SHADOW = 0.28;
/** Joints may be as pale as the ground: so far is reached over them. */
const REACH_PX = 2;
/** A shape larger than this is the table, not a skin. */
const LARGEST_SHARE = 0.55;
const MAD_TO_SIGMA = 1.4826;

/**
 * What of a picture is the skin: all that differs in color from the ground (a smooth surface of second order, fitted to the most
 * alike 60 % of the pixels) and hangs together with the seed. For looking at only: nothing is measured on it.
 *
 * @returns cover of each pixel, 0 to 255; null where the skin does not stand apart from its ground.
 */
export function silhouetteOf(picture: SmallPicture, seed: Seed): Uint8ClampedArray<ArrayBuffer> | null {
  const { widthPx, heightPx } = picture;
  const samples = samplesOf(picture);
  if (samples.length < 100) return null;
  const { surface, sigma } = fitGround(picture, samples);
  const threshold = Math.max(LEAST_DIFFERENCE, SCATTER_FACTOR * sigma);
  const difference = new Float32Array(widthPx * heightPx);
  for (let at = 0; at < difference.length; at += 1) difference[at] = differenceAt(picture, surface, at, SHADOW);
  const shape = reachedFrom(seed, { widthPx, heightPx, stands: (at) => (difference[at] ?? 0) > threshold });
  let covered = 0;
  for (const part of shape) covered += part;
  const seedArea = Math.PI * seed.radiusPx ** 2;
  if (covered > LARGEST_SHARE * difference.length || covered < 1.5 * seedArea) return null;
  return softened(shape, widthPx, heightPx);
}

function samplesOf({ widthPx, heightPx, rgba }: SmallPicture): number[] {
  const step = Math.max(1, Math.round(Math.max(widthPx, heightPx) / SAMPLES_ALONG));
  const samples: number[] = [];
  for (let y = 0; y < heightPx; y += step) {
    for (let x = 0; x < widthPx; x += step) {
      const at = y * widthPx + x;
      if (rgba[4 * at + 3] === 255) samples.push(at);
    }
  }
  return samples;
}

/** Least trimmed squares by concentration steps (Rousseeuw and Van Driessen 2006): fit, keep the most alike, fit again. */
function fitGround(picture: SmallPicture, samples: readonly number[]): { surface: Surface; sigma: number } {
  const channel = (c: number) => medianOf(samples.map((at) => picture.rgba[4 * at + c] ?? 0));
  let surface: Surface = [[channel(0)], [channel(1)], [channel(2)]];
  let kept: number[] = [...samples];
  for (let round = 0; round < FIT_ROUNDS; round += 1) {
    const ranked = samples.map((at) => ({ at, apart: differenceAt(picture, surface, at, 0) })).sort((a, b) => a.apart - b.apart);
    kept = ranked.slice(0, Math.ceil(GROUND_SHARE * samples.length)).map(({ at }) => at);
    surface = [0, 1, 2].map((c) => fitSurface(picture, kept, c)) as [number[], number[], number[]];
  }
  return { surface, sigma: MAD_TO_SIGMA * medianOf(kept.map((at) => differenceAt(picture, surface, at, 0))) };
}

function basisAt({ widthPx, heightPx }: SmallPicture, at: number): number[] {
  const x = (2 * (at % widthPx)) / widthPx - 1;
  const y = (2 * Math.floor(at / widthPx)) / heightPx - 1;
  return [1, x, y, x * x, x * y, y * y];
}

/** How far a color is from its ground; darker alone, as in a shadow, counts only beyond what shadows do. */
function differenceAt(picture: SmallPicture, surface: Surface, at: number, shadow: number): number {
  const { widthPx, heightPx, rgba } = picture;
  if (rgba[4 * at + 3] !== 255) return 0;
  const x = (2 * (at % widthPx)) / widthPx - 1;
  const y = (2 * Math.floor(at / widthPx)) / heightPx - 1;
  let [squared, along, ground] = [0, 0, 0];
  for (let channel = 0; channel < 3; channel += 1) {
    const [c0 = 0, c1 = 0, c2 = 0, c3 = 0, c4 = 0, c5 = 0] = surface[channel] ?? [];
    const expected = c0 + c1 * x + c2 * y + c3 * x * x + c4 * x * y + c5 * y * y;
    const apart = (rgba[4 * at + channel] ?? 0) - expected;
    squared += apart * apart;
    along += apart * expected;
    ground += expected * expected;
  }
  const brighter = along / Math.sqrt(Math.max(1, ground));
  const aside = Math.max(0, squared - brighter * brighter);
  const beyond = brighter < 0 ? Math.max(0, -brighter - shadow * Math.sqrt(ground)) : brighter;
  return Math.sqrt(aside + beyond * beyond);
}

/** Least squares by the normal equations, six unknowns. */
function fitSurface(picture: SmallPicture, kept: readonly number[], channel: number): number[] {
  const rows = 6;
  const system = Array.from({ length: rows }, () => new Array<number>(rows + 1).fill(0));
  for (const at of kept) {
    const basis = [...basisAt(picture, at), picture.rgba[4 * at + channel] ?? 0];
    for (const [i, row] of system.entries()) for (const [j, value] of basis.entries()) row[j] = (row[j] ?? 0) + (basis[i] ?? 0) * value;
  }
  return solved(system);
}

/** Gauss and Jordan with pivots; a direction that the points do not tell stays 0. */
function solved(system: number[][]): number[] {
  for (const [column] of system.entries()) {
    const pivot = system.slice(column).reduce((best, row) => (Math.abs(row[column] ?? 0) > Math.abs(best[column] ?? 0) ? row : best));
    const at = system.indexOf(pivot);
    const head = pivot[column] ?? 0;
    if (Math.abs(head) < 1e-9) continue;
    [system[at], system[column]] = [system[column] ?? pivot, pivot];
    for (const row of system) {
      if (row === pivot) continue;
      const factor = (row[column] ?? 0) / head;
      for (const [index, value] of pivot.entries()) row[index] = (row[index] ?? 0) - factor * value;
    }
  }
  return system.map((row, index) => (row[index] ? (row.at(-1) ?? 0) / row[index] : 0));
}

interface Field {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly stands: (at: number) => boolean;
}

/** 1 where the shape is: the seed and all that is reached from it. */
function reachedFrom(seed: Seed, { widthPx, heightPx, stands }: Field): Uint8Array {
  const shape = new Uint8Array(widthPx * heightPx);
  const open: number[] = [];
  const take = (at: number) => {
    if (shape[at]) return;
    shape[at] = 1;
    open.push(at);
  };
  for (let y = Math.max(0, Math.floor(seed.yPx - seed.radiusPx)); y < Math.min(heightPx, seed.yPx + seed.radiusPx); y += 1) {
    for (let x = Math.max(0, Math.floor(seed.xPx - seed.radiusPx)); x < Math.min(widthPx, seed.xPx + seed.radiusPx); x += 1) {
      if (Math.hypot(x - seed.xPx, y - seed.yPx) <= seed.radiusPx) take(y * widthPx + x);
    }
  }
  for (let at = open.pop(); at !== undefined; at = open.pop()) {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    for (let ny = Math.max(0, y - REACH_PX); ny <= Math.min(heightPx - 1, y + REACH_PX); ny += 1) {
      for (let nx = Math.max(0, x - REACH_PX); nx <= Math.min(widthPx - 1, x + REACH_PX); nx += 1) {
        const next = ny * widthPx + nx;
        if (!shape[next] && stands(next)) take(next);
      }
    }
  }
  return shape;
}

/** Mean over a square of five pixels, a little more than covered: the rim of a skin is part of it. */
function softened(shape: Uint8Array, widthPx: number, heightPx: number): Uint8ClampedArray<ArrayBuffer> {
  const soft = new Uint8ClampedArray(shape.length);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) {
      let sum = 0;
      for (let dy = -2; dy <= 2; dy += 1) {
        for (let dx = -2; dx <= 2; dx += 1) {
          const [nx, ny] = [x + dx, y + dy];
          if (nx >= 0 && ny >= 0 && nx < widthPx && ny < heightPx) sum += shape[ny * widthPx + nx] ?? 0;
        }
      }
      soft[y * widthPx + x] = (255 * 2 * sum) / 25;
    }
  }
  return soft;
}
