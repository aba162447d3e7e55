import { isSharp, levelFor } from '../../../bench/levels.ts';
import type { Size, View } from '../../../bench/view.ts';
import type { PictureState } from './picture.ts';

/** What of the picture got on the canvas: `screen` while a finer drawing is still to come. */
export type Shown = 'nothing' | 'screen' | 'original';

export function paintPicture(
  context: CanvasRenderingContext2D,
  picture: PictureState,
  view: View,
  canvas: Size,
  pixelRatio: number,
  ground: string,
): Shown {
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = ground;
  context.fillRect(0, 0, context.canvas.width, context.canvas.height);
  const devicePixels = view.zoom * pixelRatio;
  const fromOriginal = levelFor(picture.levels, devicePixels);
  const sharp = fromOriginal !== null && (picture.complete || isSharp(fromOriginal, devicePixels));
  // A level of the photo that is still too coarse for this zoom gives way to the smaller copy where that is finer.
  const level = !sharp && picture.screen !== null && picture.screen.scale > (fromOriginal?.scale ?? 0) ? picture.screen : fromOriginal;
  if (level === null) return 'nothing';

  context.setTransform(devicePixels, 0, 0, devicePixels, view.offset.xCss * pixelRatio, view.offset.yCss * pixelRatio);
  context.imageSmoothingQuality = 'low';
  for (const { x, y, bitmap } of level.tiles) {
    const left = x / level.scale;
    const top = y / level.scale;
    const width = bitmap.width / level.scale;
    const height = bitmap.height / level.scale;
    if (isInSight(left, top, width, height, view, canvas)) context.drawImage(bitmap, left, top, width, height);
  }
  return sharp ? 'original' : 'screen';
}

function isInSight(left: number, top: number, width: number, height: number, view: View, canvas: Size): boolean {
  const leftCss = view.offset.xCss + view.zoom * left;
  const topCss = view.offset.yCss + view.zoom * top;
  return leftCss < canvas.width && topCss < canvas.height && leftCss + view.zoom * width > 0 && topCss + view.zoom * height > 0;
}
