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
      found.push(...peaksOf(votesFor(edges, plane, radiusPx), plane, radiusPx));
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
  const sorted = size.toSorted();
  const limit = Math.max(sorted[Math.floor((1 - EDGE_SHARE) * sorted.length)] ?? 0, Number.MIN_VALUE);
  const chosen = Array.from(size.keys()).filter((index) => (size[index] ?? 0) >= limit);
  const of = (value: (index: number) => number): Float32Array => Float32Array.from(chosen, value);
  return {
    x: of((index) => index % widthPx),
    y: of((index) => Math.floor(index / widthPx)),
    normalX: of((index) => (horizontal[index] ?? 0) / (size[index] ?? 1)),
    normalY: of((index) => (vertical[index] ?? 0) / (size[index] ?? 1)),
  };
}

/** Votes per pixel, smoothed over the scatter and divided by the circumference. */
function votesFor(edges: EdgePoints, { widthPx, heightPx }: LightImage, radiusPx: number): Float32Array {
  const votes = new Float32Array(widthPx * heightPx);
  for (let index = 0; index < edges.x.length; index += 1) {
    for (const side of [-radiusPx, radiusPx]) {
      const x = Math.round((edges.x[index] ?? 0) + side * (edges.normalX[index] ?? 0));
      const y = Math.round((edges.y[index] ?? 0) + side * (edges.normalY[index] ?? 0));
      if (x >= 0 && y >= 0 && x < widthPx && y < heightPx) votes[y * widthPx + x] = (votes[y * widthPx + x] ?? 0) + 1;
    }
  }
  const half = Math.max(1, Math.round(SCATTER * radiusPx));
  const smooth = boxAlong(boxAlong(votes, widthPx, heightPx, half, 1), widthPx, heightPx, half, widthPx);
  for (let index = 0; index < smooth.length; index += 1) smooth[index] = (smooth[index] ?? 0) / radiusPx;
  return smooth;
}

/** Sums over 2 half + 1 neighbours along rows (stride 1) or columns (stride = width). */
function boxAlong(values: Float32Array, widthPx: number, heightPx: number, half: number, stride: number): Float32Array {
  const result = new Float32Array(values.length);
  const lines = stride === 1 ? heightPx : widthPx;
  const length = stride === 1 ? widthPx : heightPx;
  for (let line = 0; line < lines; line += 1) {
    const start = stride === 1 ? line * widthPx : line;
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

function peaksOf(votes: Float32Array, { widthPx, heightPx }: LightImage, radiusPx: number): readonly RoundPlace[] {
  const peaks: RoundPlace[] = [];
  const reach = Math.max(2, Math.round(radiusPx / 2));
  const step = Math.max(1, Math.round(radiusPx / 4));
  // The best of each cell, then those that no better one stands near.
  for (let top = 0; top < heightPx; top += step) {
    for (let left = 0; left < widthPx; left += step) {
      let best = 0;
      let bestX = left;
      let bestY = top;
      for (let y = top; y < Math.min(top + step, heightPx); y += 1) {
        for (let x = left; x < Math.min(left + step, widthPx); x += 1) {
          const value = votes[y * widthPx + x] ?? 0;
          if (value <= best) continue;
          best = value;
          bestX = x;
          bestY = y;
        }
      }
      if (best > 0) peaks.push({ xPx: bestX + 0.5, yPx: bestY + 0.5, radiusPx, score: best });
    }
  }
  const kept: RoundPlace[] = [];
  for (const peak of peaks.toSorted((one, other) => other.score - one.score)) {
    if (kept.every((other) => Math.hypot(other.xPx - peak.xPx, other.yPx - peak.yPx) > reach)) kept.push(peak);
    if (kept.length >= PEAKS_PER_RADIUS) break;
  }
  return kept;
}
