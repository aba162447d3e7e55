import type { LightImage, LightPlanes } from '../../src/domain/finding/light.ts';
import type { Ellipse } from '../../src/domain/measuring/ellipse.ts';
import { decodeSrgb, encodeSrgb } from '../../src/domain/numerics/srgb.ts';

/** A picture and an outline in it, both changed alike. */
export interface Changed {
  readonly planes: LightPlanes;
  readonly rim: Ellipse;
}

/** Turned by a quarter, clockwise on the screen. */
export function quarterTurned({ planes, rim }: Changed): Changed {
  const { centre } = rim;
  const [{ heightPx }] = planes;
  return {
    planes: mapped(planes, turned),
    rim: { ...rim, centre: { xPx: heightPx - centre.yPx, yPx: centre.xPx }, angleRad: rim.angleRad + Math.PI / 2 },
  };
}

function turned({ widthPx, heightPx, light }: LightImage): LightImage {
  const result = new Float32Array(light.length);
  for (let y = 0; y < heightPx; y += 1) {
    for (let x = 0; x < widthPx; x += 1) result[x * heightPx + heightPx - 1 - y] = light[y * widthPx + x] ?? 0;
  }
  return { widthPx: heightPx, heightPx: widthPx, light: result };
}

/** As a negative of the encoded values. */
export function inverted({ planes, rim }: Changed): Changed {
  return { planes: mapped(planes, (plane) => lightMapped(plane, (value) => decodeSrgb(1 - encodeSrgb(value)))), rim };
}

/** Brighter, what is too bright cut off. */
export function brightened({ planes, rim }: Changed, factor: number): Changed {
  return { planes: mapped(planes, (plane) => lightMapped(plane, (value) => Math.min(1, factor * value))), rim };
}

/** Without its colors. */
export function gray({ planes, rim }: Changed): Changed {
  const [red, green, blue] = planes;
  if (!green || !blue) return { planes, rim };
  const light = red.light.map((value, index) => 0.2126 * value + 0.7152 * (green.light[index] ?? 0) + 0.0722 * (blue.light[index] ?? 0));
  return { planes: [{ ...red, light }], rim };
}

function mapped([first, ...others]: LightPlanes, change: (plane: LightImage) => LightImage): LightPlanes {
  return [change(first), ...others.map(change)];
}

function lightMapped(plane: LightImage, change: (value: number) => number): LightImage {
  return { ...plane, light: plane.light.map(change) };
}
