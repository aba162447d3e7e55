import { type EdgeForm, normalDistribution } from './edgeModel.ts';

/** A function of the distance across in steps of `TABLE_STEP_PX`, constant beyond its ends. */
export interface AcrossTable {
  readonly fromPx: number;
  readonly values: Float64Array;
}

const TABLE_STEP_PX = 1 / 16;
/** Beyond this many deviations a normal distribution is 0 or 1 to 3e-7. */
const FAR_DEVIATIONS = 5;
/** Nodes of the quadrature over the disk for each deviation of its soft rim. */
const NODES = 3;
/** Middles of twelve equally likely parts of the standard normal distribution. */
const NORMAL_MIDDLES = [-1.7317, -1.1503, -0.8122, -0.5485, -0.3186, -0.1046, 0.1046, 0.3186, 0.5485, 0.8122, 1.1503, 1.7317];

/** The value between two entries. */
export function tableAt({ fromPx, values }: AcrossTable, acrossPx: number): number {
  const place = (acrossPx - fromPx) / TABLE_STEP_PX;
  const last = values.length - 1;
  if (!(place > 0)) return values[0] ?? 0;
  if (place >= last) return values[last] ?? 0;
  const left = Math.floor(place);
  const before = values[left] ?? 0;
  return before + (place - left) * ((values[left + 1] ?? 0) - before);
}

/**
 * A step through a lens out of focus, whose points are evenly lit disks, and the Gaussian blur of pixels: the disk's integral by
 * Gauss-Chebyshev quadrature of the second kind (Abramowitz & Stegun 1964, 25.4.40).
 */
export function defocusedEdge(diskRadiusPx: number, sigmaPx: number): AcrossTable {
  const extent = Math.ceil((diskRadiusPx + FAR_DEVIATIONS * sigmaPx) / TABLE_STEP_PX);
  const count = diskRadiusPx > 0 ? Math.max(2, Math.ceil((NODES * diskRadiusPx) / sigmaPx)) : 1;
  const nodes = Array.from({ length: count }, (_, index) => {
    const angle = ((index + 1) * Math.PI) / (count + 1);
    return { atPx: diskRadiusPx * Math.cos(angle), weight: count === 1 ? 1 : (2 / (count + 1)) * Math.sin(angle) ** 2 };
  });
  const values = Float64Array.from({ length: 2 * extent + 1 }, (_, index) => {
    const across = (index - extent) * TABLE_STEP_PX;
    let sum = 0;
    for (const { atPx, weight } of nodes) sum += weight * normalDistribution((across - atPx) / sigmaPx);
    return sum;
  });
  return { fromPx: -extent * TABLE_STEP_PX, values };
}

/**
 * Direct light on the ground beside an object, seen through the blur of `edge`. A lamp of some size, its brightness over the
 * direction a Gaussian, lights the share F((t - middle) / spread) of full light at t outside the edge, F the normal distribution
 * function; inside the edge the ground is hidden. `middlePx` is negative where the light comes from this side.
 */
export function litGround(edge: AcrossTable, middlePx: number, spreadPx: number): AcrossTable {
  const starts = NORMAL_MIDDLES.map((middle) => Math.max(0, middlePx + spreadPx * middle));
  const furthest = starts.at(-1) ?? 0;
  const length = edge.values.length + Math.ceil(furthest / TABLE_STEP_PX);
  const values = new Float64Array(length);
  for (const start of starts) {
    for (let index = 0; index < length; index += 1) {
      values[index] = (values[index] ?? 0) + tableAt(edge, edge.fromPx + index * TABLE_STEP_PX - start) / starts.length;
    }
  }
  return { fromPx: edge.fromPx, values };
}

/** Ground in the light of one lamp and, to the share `ambient`, of everything round about. */
export function shadedForm(edge: AcrossTable, direct: AcrossTable, ambient: number, sigmaPx: number): EdgeForm {
  const edgeAt = (acrossPx: number): number => tableAt(edge, acrossPx);
  return { sigmaPx, edgeAt, groundAt: (acrossPx) => ambient * edgeAt(acrossPx) + (1 - ambient) * tableAt(direct, acrossPx) };
}
