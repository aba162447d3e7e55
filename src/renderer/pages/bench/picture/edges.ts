import type { LightImage, LightPlanes } from '../../../../domain/finding/light.ts';
import { snapToEdge } from '../../../../domain/finding/snap.ts';
import { decodeSrgb } from '../../../../domain/numerics/srgb.ts';
import type { EdgeFinder } from '../../../bench/snapping.ts';
import type { PictureLevel } from './levelMessages.ts';
import type { PictureStore } from './picture.ts';

/** Around the point beyond its reach: room for the kernel that smooths, and for rows beside it. */
const MARGIN_PX = 12;
const CHANNELS = 3;

/**
 * Finds edges in the photo as it is decoded here: the patch around one click is small, and no request waits for an answer
 * while the next point is being placed. Says nothing until the photo itself, not a smaller copy, is there.
 */
export function edgeFinderOn(picture: PictureStore): EdgeFinder {
  const linear = Float32Array.from({ length: 256 }, (_, value) => decodeSrgb(value / 255));
  const canvas = new OffscreenCanvas(1, 1);
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('Expected a 2d context to read the photo but the browser gave none.');
  return (at, direction, reachPx) => {
    const level = picture.getState().levels.find(({ scale }) => scale === 1);
    if (level === undefined) return null;
    const half = Math.ceil(reachPx) + MARGIN_PX;
    const side = 2 * half + 1;
    const left = Math.floor(at.xPx) - half;
    const top = Math.floor(at.yPx) - half;
    if (!covers(level, left, top, side)) return null;
    canvas.width = side;
    canvas.height = side;
    for (const { x, y, bitmap } of level.tiles) context.drawImage(bitmap, x - left, y - top);
    const planes = planesOf(context.getImageData(0, 0, side, side), linear);
    const found = snapToEdge(planes, { xPx: at.xPx - left, yPx: at.yPx - top }, direction, reachPx);
    return found && { ...found, at: { xPx: found.at.xPx + left, yPx: found.at.yPx + top } };
  };
}

/** Beyond the photo the canvas stays black, which would look like an edge. */
function covers({ tiles }: PictureLevel, left: number, top: number, side: number): boolean {
  const right = Math.max(...tiles.map(({ x, bitmap }) => x + bitmap.width));
  const bottom = Math.max(...tiles.map(({ y, bitmap }) => y + bitmap.height));
  return left >= 0 && top >= 0 && left + side <= right && top + side <= bottom;
}

function planesOf({ data, width, height }: ImageData, linear: Float32Array): LightPlanes {
  const plane = (channel: number): LightImage => ({
    widthPx: width,
    heightPx: height,
    light: Float32Array.from({ length: width * height }, (_, index) => linear[data[(CHANNELS + 1) * index + channel] ?? 0] ?? 0),
  });
  return [plane(0), plane(1), plane(2)];
}
