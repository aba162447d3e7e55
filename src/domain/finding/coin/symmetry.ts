import type { LightImage, LightPlanes } from '../light.ts';

/** A place about which edges stand as about the middle of a disk. */
export interface RoundPlace {
  readonly xPx: number;
  readonly yPx: number;
  readonly radiusPx: number;
  /** Of the votes; comparable within one picture only. */
  readonly score: number;
}

/** Edge points are the strongest part of all pixels. */
const EDGE_SHARE = 0.12;
/** Votes for the middle of a disk seen tilted scatter over this share of its radius. */
const SCATTER = 0.14;
const RADIUS_STEP = 1.15;

/**
 * Places with the radial symmetry of a disk: every edge point votes for the two middles it could belong to, a radius along its
 * gradient to both sides (Loy & Zelinsky 2003, IEEE PAMI 25:959, without their orientation weights).
 *
 * @param planes a picture reduced to a few hundred pixels; each plane votes on its own.
 * @returns best first, at most `most`, no two alike.
 */
export function roundPlaces(
  planes: LightPlanes,
  radiiPx: { readonly least: number; readonly most: number },
  most: number,
): readonly RoundPlace[] {
  const found: RoundPlace[] = [];
  for (const plane of planes) {
    const edges = edgePoints(plane);
    for (let radiusPx = radiiPx.least; radiusPx <= radiiPx.most; radiusPx *= RADIUS_STEP) {
      found.push(...peaksOf(votesFor(edges, plane, radiusPx), radiusPx));
    }
  }
  const kept: RoundPlace[] = [];
  for (const place of found.toSorted((one, other) => other.score - one.score)) {
    const alike = kept.some(
      (other) =>
        Math.hypot(other.xPx - place.xPx, other.yPx - place.yPx) < 0.3 * other.radiusPx &&
        Math.abs(Math.log(other.radiusPx / place.radiusPx)) < 0.2,
    );
    if (!alike) kept.push(place);
    if (kept.length >= most) break;
  }
  return kept;
}

interface EdgePoints {
  readonly x: Float32Array;
  readonly y: Float32Array;
  readonly normalX: Float32Array;
  readonly normalY: Float32Array;
}

/** Of the pixels, each so many-th is asked how strong the strongest part is. */
const ASKED = 7;

function edgePoints({ widthPx, heightPx, light }: LightImage): EdgePoints {
  const at = (x: number, y: number): number => light[y * widthPx + x] ?? 0;
  const horizontal = new Float32Array(light.length);
  const vertical = new Float32Array(light.length);
  const size = new Float32Array(light.length);
  for (let y = 1; y + 1 < heightPx; y += 1) {
    for (let x = 1; x + 1 < widthPx; x += 1) {
      const dx = at(x + 1, y - 1) - at(x - 1, y - 1) + 2 * (at(x + 1, y) - at(x - 1, y)) + at(x + 1, y + 1) - at(x - 1, y + 1);
      const dy = at(x - 1, y + 1) - at(x - 1, y - 1) + 2 * (at(x, y + 1) - at(x, y - 1)) + at(x + 1, y + 1) - at(x + 1, y - 1);
      const index = y * widthPx + x;
      horizontal[index] = dx;
      vertical[index] = dy;
      size[index] = Math.sqrt(dx * dx + dy * dy);
    }
  }
  const asked = Float32Array.from({ length: Math.ceil(size.length / ASKED) }, (_, index) => size[index * ASKED] ?? 0).sort();
  const limit = Math.max(asked[Math.floor((1 - EDGE_SHARE) * asked.length)] ?? 0, Number.MIN_VALUE);
  const chosen = new Uint32Array(size.length);
  let count = 0;
  for (let index = 0; index < size.length; index += 1) {
    if ((size[index] ?? 0) < limit) continue;
    chosen[count] = index;
    count += 1;
  }
  const points = {
    x: new Float32Array(count),
    y: new Float32Array(count),
    normalX: new Float32Array(count),
    normalY: new Float32Array(count),
  };
  for (let to = 0; to < count; to += 1) {
    const index = chosen[to] ?? 0;
    points.x[to] = index % widthPx;
    points.y[to] = Math.floor(index / widthPx);
    points.normalX[to] = (horizontal[index] ?? 0) / (size[index] ?? 1);
    points.normalY[to] = (vertical[index] ?? 0) / (size[index] ?? 1);
  }
  return points;
}

/** Votes on cells that grow with the radius: what scatters over many pixels need not be counted on each. */
interface Votes {
  readonly cellPx: number;
  readonly columns: number;
  readonly rows: number;
  readonly cells: Float32Array;
}

/** Cells to both sides of one that its votes are summed over. */
const CELLS_ASIDE = 2;

/** Votes summed over the scatter and divided by the circumference. */
function votesFor(edges: EdgePoints, { widthPx, heightPx }: LightImage, radiusPx: number): Votes {
  const half = Math.max(1, SCATTER * radiusPx);
  const cellPx = Math.max(1, Math.round((2 * half + 1) / (2 * CELLS_ASIDE + 1)));
  const columns = Math.ceil(widthPx / cellPx);
  const rows = Math.ceil(heightPx / cellPx);
  const cells = new Float32Array(columns * rows);
  const perPx = 1 / cellPx;
  const { x, y, normalX, normalY } = edges;
  for (let index = 0; index < x.length; index += 1) {
    const [alongX, alongY] = [radiusPx * (normalX[index] ?? 0), radiusPx * (normalY[index] ?? 0)];
    const [middleX, middleY] = [(x[index] ?? 0) + 0.5, (y[index] ?? 0) + 0.5];
    for (let side = -1; side <= 1; side += 2) {
      const column = Math.floor((middleX + side * alongX) * perPx);
      const row = Math.floor((middleY + side * alongY) * perPx);
      if (column < 0 || row < 0 || column >= columns || row >= rows) continue;
      const cell = row * columns + column;
      cells[cell] = (cells[cell] ?? 0) + 1 / radiusPx;
    }
  }
  const aside = Math.max(1, Math.round((half + 0.5) / cellPx - 0.5));
  return { cellPx, columns, rows, cells: boxAlong(boxAlong(cells, columns, rows, aside, 1), columns, rows, aside, columns) };
}

/** Sums over 2 half + 1 neighbors along rows (stride 1) or columns (stride = width). */
function boxAlong(values: Float32Array, width: number, height: number, half: number, stride: number): Float32Array {
  const result = new Float32Array(values.length);
  const lines = stride === 1 ? height : width;
  const length = stride === 1 ? width : height;
  for (let line = 0; line < lines; line += 1) {
    const start = stride === 1 ? line * width : line;
    let sum = 0;
    for (let at = 0; at < Math.min(half, length); at += 1) sum += values[start + at * stride] ?? 0;
    for (let at = 0; at < length; at += 1) {
      if (at + half < length) sum += values[start + (at + half) * stride] ?? 0;
      if (at - half > 0) sum -= values[start + (at - half - 1) * stride] ?? 0;
      result[start + at * stride] = sum;
    }
  }
  return result;
}

const PEAKS_PER_RADIUS = 6;

/** The most voted cells, no two nearer to each other than half of the radius. */
function peaksOf({ cellPx, columns, rows, cells }: Votes, radiusPx: number): readonly RoundPlace[] {
  const best = bestOfBlocks(cells, columns, rows, Math.max(1, Math.round(radiusPx / (4 * cellPx))));
  const reachPx = Math.max(2, Math.round(radiusPx / 2));
  const kept: RoundPlace[] = [];
  while (kept.length < PEAKS_PER_RADIUS) {
    let score = 0;
    let cell = -1;
    for (let index = 0; index < best.length; index += 1) {
      const candidate = best[index] ?? -1;
      const value = candidate < 0 ? 0 : (cells[candidate] ?? 0);
      if (value <= score) continue;
      score = value;
      cell = candidate;
    }
    if (cell < 0) break;
    const [xPx, yPx] = [((cell % columns) + 0.5) * cellPx, (Math.floor(cell / columns) + 0.5) * cellPx];
    kept.push({ xPx, yPx, radiusPx, score });
    for (let index = 0; index < best.length; index += 1) {
      const other = best[index] ?? -1;
      const [acrossPx, downPx] = [((other % columns) + 0.5) * cellPx - xPx, (Math.floor(other / columns) + 0.5) * cellPx - yPx];
      if (other >= 0 && acrossPx * acrossPx + downPx * downPx <= reachPx * reachPx) best[index] = -1;
    }
  }
  return kept;
}

/** The most voted cell of each block of `size` x `size`; -1 where nobody voted. */
function bestOfBlocks(cells: Float32Array, columns: number, rows: number, size: number): Int32Array {
  const across = Math.ceil(columns / size);
  const best = new Int32Array(across * Math.ceil(rows / size)).fill(-1);
  for (let row = 0, cell = 0; row < rows; row += 1) {
    const start = Math.floor(row / size) * across;
    for (let column = 0; column < columns; column += 1, cell += 1) {
      const block = start + Math.floor(column / size);
      const known = best[block] ?? -1;
      if ((cells[cell] ?? 0) > (known < 0 ? 0 : (cells[known] ?? 0))) best[block] = cell;
    }
  }
  return best;
}
