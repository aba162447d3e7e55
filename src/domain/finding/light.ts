/**
 * The upright photo as the algorithms that find edges see it: luminance in linear light (sRGB decoded, IEC 61966-2-1; weights of
 * ITU-R BT.709), row by row, 0 for black to 1 for white. On encoded values an edge would lie up to a pixel towards the dark side.
 */
export interface LightImage {
  readonly widthPx: number;
  readonly heightPx: number;
  /** `widthPx` x `heightPx` values; the pixel (i, j) stands at `j * widthPx + i` and its center at (i + 0.5, j + 0.5). */
  readonly light: Float32Array;
}

/**
 * The same frame seen in several colors: linear red, green and blue, or luminance alone. A yellow card beside its gray shadow has
 * an edge in blue where luminance shows none.
 */
export type LightPlanes = readonly [LightImage, ...LightImage[]];

/** Whether a point lies in the picture, at least `marginPx` from its border. */
export function isInside({ widthPx, heightPx }: LightImage, xPx: number, yPx: number, marginPx = 0): boolean {
  return xPx >= marginPx && yPx >= marginPx && xPx <= widthPx - marginPx && yPx <= heightPx - marginPx;
}

/** Light at a point, bilinear between the four nearest pixel centers; beyond the border that of the border. */
export function lightAt({ widthPx, heightPx, light }: LightImage, xPx: number, yPx: number): number {
  const x = Math.min(Math.max(xPx - 0.5, 0), widthPx - 1);
  const y = Math.min(Math.max(yPx - 0.5, 0), heightPx - 1);
  const left = Math.min(Math.floor(x), Math.max(widthPx - 2, 0));
  const top = Math.min(Math.floor(y), Math.max(heightPx - 2, 0));
  const right = Math.min(left + 1, widthPx - 1);
  const above = top * widthPx;
  const below = Math.min(top + 1, heightPx - 1) * widthPx;
  const across = x - left;
  const down = y - top;
  const upper = (1 - across) * (light[above + left] ?? 0) + across * (light[above + right] ?? 0);
  const lower = (1 - across) * (light[below + left] ?? 0) + across * (light[below + right] ?? 0);
  return (1 - down) * upper + down * lower;
}

/**
 * The picture made smaller by a whole factor, each new pixel the mean of `factor` x `factor` old ones. A point (x, y) of the
 * smaller picture is (factor x, factor y) of the larger one; columns and rows that do not fill a block fall away.
 */
export function reduceLight(image: LightImage, factor: number): LightImage {
  if (!(Number.isInteger(factor) && factor >= 1)) throw new RangeError(`Expected a whole factor of at least 1, got ${factor}`);
  if (factor === 1) return image;
  const widthPx = Math.floor(image.widthPx / factor);
  const heightPx = Math.floor(image.heightPx / factor);
  const light = new Float32Array(widthPx * heightPx);
  if (factor === 2) averageFours(image, light);
  else averageBlocks(image, light, factor);
  return { widthPx, heightPx, light };
}

/** Half is what most pictures are reduced to before they are looked at: written out, it takes half of the time. */
function averageFours({ widthPx, heightPx, light: full }: LightImage, light: Float32Array): void {
  for (let row = 0, to = 0; row + 1 < heightPx; row += 2) {
    let upper = row * widthPx;
    let lower = upper + widthPx;
    for (let column = 0; column + 1 < widthPx; column += 2, upper += 2, lower += 2, to += 1) {
      light[to] = ((full[upper] ?? 0) + (full[upper + 1] ?? 0) + (full[lower] ?? 0) + (full[lower + 1] ?? 0)) / 4;
    }
  }
}

function averageBlocks({ widthPx: stride, heightPx: rows, light: full }: LightImage, light: Float32Array, factor: number): void {
  const [widthPx, heightPx] = [Math.floor(stride / factor), Math.floor(rows / factor)];
  const share = 1 / (factor * factor);
  for (let y = 0, to = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1, to += 1) {
      let sum = 0;
      for (let row = 0, from = y * factor * stride + x * factor; row < factor; row += 1, from += stride) {
        for (let column = 0; column < factor; column += 1) sum += full[from + column] ?? 0;
      }
      light[to] = sum * share;
    }
  }
}

/** The same for all planes of a picture. */
export function reducePlanes([first, ...others]: LightPlanes, factor: number): LightPlanes {
  return [reduceLight(first, factor), ...others.map((plane) => reduceLight(plane, factor))];
}

/** The picture turned over, left to right: a point (x, y) of it is (width - x, y) of the other. */
export function mirroredLight({ widthPx, heightPx, light }: LightImage): LightImage {
  const mirrored = new Float32Array(light.length);
  for (let row = 0, to = 0; row < heightPx; row += 1) {
    for (let from = (row + 1) * widthPx - 1; from >= row * widthPx; from -= 1, to += 1) mirrored[to] = light[from] ?? 0;
  }
  return { widthPx, heightPx, light: mirrored };
}

/** The same for all planes of a picture. */
export function mirroredPlanes([first, ...others]: LightPlanes): LightPlanes {
  return [mirroredLight(first), ...others.map(mirroredLight)];
}

/** The least whole factor that brings the longest side of a picture down to `longestPx`. */
export function factorTo({ widthPx, heightPx }: Pick<LightImage, 'widthPx' | 'heightPx'>, longestPx: number): number {
  return Math.max(1, Math.ceil(Math.max(widthPx, heightPx) / longestPx));
}
