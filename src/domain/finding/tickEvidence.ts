import type { LightImage } from './light.ts';
import { type ProjectiveLine, placeOn, spacingAt } from './projectiveLine.ts';
import { BAND_STEP_PX, type Band, bandAt, isBandInside, type Strip } from './tickBands.ts';

/** Where ticks are said to be. */
export interface SaidTicks {
  /** Of the ticks' numbers to px along the strip, in the middle of the row. */
  readonly line: ProjectiveLine;
  readonly first: number;
  readonly last: number;
  /** Across the strip, the row reaches from `vFirst` to `vLast` and has its middle at `vMiddle`. */
  readonly vFirst: number;
  readonly vLast: number;
  readonly vMiddle: number;
  /** How far ticks move along the strip per px across it. */
  readonly lean: number;
  /** 1 for dark lines, -1 for bright ones. */
  readonly sign: 1 | -1;
}

const BAND_HEIGHT_PX = 3;
const SIGMA_PX = 1.1;
/** Places looked at from one tick to the next. */
const PHASES = 12;

/**
 * How far the places of ticks stand out from all places of the row: the mean likeness to a line at the ticks, missing ones too, in
 * standard deviations of that likeness over the whole row. Folding a profile by its period shows what is periodic in it
 * (epoch folding: Leahy et al. 1983, The Astrophysical Journal 266:160); grain has peaks everywhere, so that those that happen
 * to fit are no higher than those that do not, and it changes from one part of a tick's length to the next.
 *
 * @returns about 2 for clean lines, less where some are worn; below 1 for grain. NaN where the row has no relief at all.
 */
export function tickContrast(image: LightImage, strip: Strip, said: SaidTicks): number {
  const { line, first, last, vMiddle, lean, sign } = said;
  // A graduation's lines are longer than their spaces are wide: a row that is thinner than that is looked at beyond its borders.
  const least = 0.5 * spacingAt(line, (first + last) / 2);
  const from = Math.min(said.vFirst, vMiddle - least);
  const to = Math.max(said.vLast, vMiddle + least);
  const count = (last - first) * PHASES + 1;
  const profile = new Float64Array(count);
  let bands = 0;
  for (let v = from; v <= to; v += BAND_HEIGHT_PX) {
    if (!isBandInside(image, strip, v)) continue;
    const band = bandAt(image, strip, v, BAND_HEIGHT_PX, SIGMA_PX, sign, 0);
    bands += 1;
    for (let at = 0; at < count; at += 1) {
      profile[at] = (profile[at] ?? 0) + ridgeAt(band, placeOn(line, first + at / PHASES) + lean * (v - vMiddle));
    }
  }
  if (bands === 0) return Number.NaN;
  const mean = profile.reduce((sum, value) => sum + value, 0) / count;
  const spread = Math.sqrt(profile.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count);
  let onTicks = 0;
  for (let at = 0; at < count; at += PHASES) onTicks += (profile[at] ?? 0) - mean;
  return onTicks / (last - first + 1) / spread;
}

function ridgeAt({ ridge, firstPx }: Band, uPx: number): number {
  const at = Math.min(Math.max((uPx - firstPx) / BAND_STEP_PX, 0), ridge.length - 1);
  const left = Math.floor(at);
  const before = ridge[left] ?? 0;
  return before + (at - left) * ((ridge[left + 1] ?? before) - before);
}
