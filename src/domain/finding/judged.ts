import { factorTo, type LightImage, type LightPlanes, reduceLight, reducePlanes } from './light.ts';

/** Corners, ticks and rims are judged in a picture of this size; millimeters are then still 4 px and more. */
const JUDGING_LONGEST_PX = 2048;

/** A picture made small enough to look all over it. */
export interface JudgedPicture {
  readonly image: LightImage;
  readonly colors: LightPlanes;
  /** A point (x, y) of these is (factor x, factor y) of the whole picture. */
  readonly factor: number;
}

/**
 * The picture that objects are looked for in without a click; all kinds share it, for making it costs as much as finding some.
 *
 * @param image luminance; `colors` the same picture in colors.
 */
export function judgedPicture(image: LightImage, colors: LightPlanes): JudgedPicture {
  const factor = factorTo(image, JUDGING_LONGEST_PX);
  return { image: reduceLight(image, factor), colors: reducePlanes(colors, factor), factor };
}
