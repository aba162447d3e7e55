import { isInside, type LightPlanes, lightAt } from './light.ts';

/** How to look for steps of light along a short line across an edge. All in pixels of the picture. */
export interface EdgeSearch {
  /** Steps are wanted this far to both sides of the middle of the line. */
  readonly reachPx: number;
  /** Between samples. */
  readonly stepPx: number;
  /** Standard deviation of the Gaussian that smooths before differentiating. */
  readonly sigmaPx: number;
  /** Samples are the mean over this length along the edge. */
  readonly alongPx: number;
  /** Samples of the derivative of the Gaussian, times `stepPx`. */
  readonly kernel: Float64Array;
}

/** A step of light across an edge. */
export interface Step {
  /** From the middle of the line, in the direction of the normal. */
  readonly offsetPx: number;
  /** Steepest change of light per pixel, as the length of the vector over the planes (Di Zenzo 1986, CVGIP 33:116). */
  readonly strength: number;
}

export interface Direction {
  readonly x: number;
  readonly y: number;
}

/** Samples of the kernel reach this many standard deviations; beyond lies 0.03 % of a Gaussian. */
const KERNEL_SIGMAS = 3.5;

export function edgeSearch({ reachPx, stepPx, sigmaPx, alongPx }: Omit<EdgeSearch, 'kernel'>): EdgeSearch {
  const half = Math.ceil((KERNEL_SIGMAS * sigmaPx) / stepPx);
  const kernel = Float64Array.from({ length: 2 * half + 1 }, (_, index) => {
    const x = (index - half) * stepPx;
    return ((x * stepPx) / (Math.sqrt(2 * Math.PI) * sigmaPx ** 3)) * Math.exp((-x * x) / (2 * sigmaPx * sigmaPx));
  });
  return { reachPx, stepPx, sigmaPx, alongPx, kernel };
}

/** So far to both sides of the middle of a line the picture is needed, px. */
export function extentPx({ reachPx, stepPx, kernel }: EdgeSearch): number {
  return (Math.ceil(reachPx / stepPx) + 1 + (kernel.length - 1) / 2) * stepPx;
}

/**
 * The steps of light on a line through a point, strongest first.
 *
 * An edge is said to be where the smoothed light changes steepest. For a step between two plain surfaces seen through a
 * symmetric blur that is also where half of the difference of linear light is reached. The place between samples is the
 * vertex of a parabola through the logarithms of three gradients, exact for a Gaussian blur (Naidu & Fisher 1991,
 * "A comparative analysis of algorithms for determining the peak position of a stripe to sub-pixel accuracy").
 *
 * @param normal unit vector across the edge.
 * @returns none when the line leaves the picture.
 */
export function stepsAcross(planes: LightPlanes, xPx: number, yPx: number, normal: Direction, search: EdgeSearch): readonly Step[] {
  const { reachPx, stepPx, kernel } = search;
  const half = (kernel.length - 1) / 2;
  const wanted = Math.ceil(reachPx / stepPx) + 1;
  const extent = extentPx(search);
  const [first] = planes;
  if (!isInside(first, xPx - extent * normal.x, yPx - extent * normal.y, 0.5)) return [];
  if (!isInside(first, xPx + extent * normal.x, yPx + extent * normal.y, 0.5)) return [];
  const squares = new Float64Array(2 * wanted + 1);
  for (const plane of planes) {
    const samples = samplesOf(plane, xPx, yPx, normal, wanted + half, search);
    for (let at = 0; at < squares.length; at += 1) {
      let gradient = 0;
      for (let index = 0; index < kernel.length; index += 1) gradient += (kernel[index] ?? 0) * (samples[at + index] ?? 0);
      squares[at] = (squares[at] ?? 0) + (gradient / stepPx) ** 2;
    }
  }
  return peaksOf(squares, wanted, search).toSorted((one, other) => other.strength - one.strength);
}

function samplesOf(
  plane: LightPlanes[number],
  xPx: number,
  yPx: number,
  normal: Direction,
  half: number,
  { stepPx, alongPx }: EdgeSearch,
): Float64Array {
  const rows = Math.max(1, Math.round(alongPx));
  const samples = new Float64Array(2 * half + 1);
  for (let row = 0; row < rows; row += 1) {
    const along = row - (rows - 1) / 2;
    addRow(samples, plane, xPx - along * normal.y - half * stepPx * normal.x, yPx + along * normal.x - half * stepPx * normal.y, {
      x: stepPx * normal.x,
      y: stepPx * normal.y,
    });
  }
  for (let at = 0; at < samples.length; at += 1) samples[at] = (samples[at] ?? 0) / rows;
  return samples;
}

/** Adds light along a line; well inside of the picture nothing has to be clamped, and nearly all lines are there. */
function addRow(samples: Float64Array, plane: LightPlanes[number], startX: number, startY: number, step: Direction): void {
  const { widthPx, light } = plane;
  const last = samples.length - 1;
  const isClear = isInside(plane, startX, startY, 1) && isInside(plane, startX + last * step.x, startY + last * step.y, 1);
  for (let at = 0; at <= last; at += 1) {
    const [xPx, yPx] = [startX + at * step.x, startY + at * step.y];
    if (!isClear) {
      samples[at] = (samples[at] ?? 0) + lightAt(plane, xPx, yPx);
      continue;
    }
    const left = Math.floor(xPx - 0.5);
    const top = Math.floor(yPx - 0.5);
    const across = xPx - 0.5 - left;
    const from = top * widthPx + left;
    const upper = (1 - across) * (light[from] ?? 0) + across * (light[from + 1] ?? 0);
    const lower = (1 - across) * (light[from + widthPx] ?? 0) + across * (light[from + widthPx + 1] ?? 0);
    samples[at] = (samples[at] ?? 0) + upper + (yPx - 0.5 - top) * (lower - upper);
  }
}

function peaksOf(squares: Float64Array, wanted: number, { stepPx, reachPx }: EdgeSearch): Step[] {
  const steps: Step[] = [];
  for (let at = 1; at + 1 < squares.length; at += 1) {
    const before = squares[at - 1] ?? 0;
    const peak = squares[at] ?? 0;
    const after = squares[at + 1] ?? 0;
    if (!(peak > before && peak >= after && before > 0 && after > 0)) continue;
    const [left, middle, right] = [Math.log(before), Math.log(peak), Math.log(after)];
    const shift = (left - right) / (2 * (left - 2 * middle + right));
    const offsetPx = (at - wanted + shift) * stepPx;
    if (Math.abs(offsetPx) <= reachPx) steps.push({ offsetPx, strength: Math.sqrt(peak) });
  }
  return steps;
}
