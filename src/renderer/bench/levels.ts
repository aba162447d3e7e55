import type { Size } from './view.ts';

/** A copy of the picture at `scale` of its size: 1, 1/2, 1/4 ... */
export interface LevelSize extends Size {
  readonly scale: number;
}

/** A piece of a level, in pixels of that level. */
export interface TileFrame extends Size {
  readonly x: number;
  readonly y: number;
}

/** A level no larger than this on its longest side needs no smaller one. */
const SMALLEST_LONGEST_PX = 1024;

/** Side of a tile: no graphics card has to take a 48 megapixel picture in one piece. */
export const TILE_PX = 2048;

/** The picture and its halvings, down to about a screenful. */
export function levelSizesOf(picture: Size): LevelSize[] {
  const levels: LevelSize[] = [{ ...picture, scale: 1 }];
  for (let last = picture, scale = 1; Math.max(last.width, last.height) > SMALLEST_LONGEST_PX; ) {
    scale /= 2;
    last = { width: Math.max(1, Math.round(picture.width * scale)), height: Math.max(1, Math.round(picture.height * scale)) };
    levels.push({ ...last, scale });
  }
  return levels;
}

/** Cuts a level into tiles that overlap by one pixel, so that no seam shows where two of them meet between device pixels. */
export function tileFramesOf(level: Size): TileFrame[] {
  const frames: TileFrame[] = [];
  for (let y = 0; y < level.height; y += TILE_PX) {
    for (let x = 0; x < level.width; x += TILE_PX) {
      frames.push({ x, y, width: Math.min(TILE_PX + 1, level.width - x), height: Math.min(TILE_PX + 1, level.height - y) });
    }
  }
  return frames;
}

/** The coarsest level that still has a pixel for each device pixel; the finest there is if none has. */
export function levelFor<Level extends { readonly scale: number }>(
  levels: readonly Level[],
  devicePixelsPerImagePixel: number,
): Level | null {
  const byScale = levels.toSorted((one, other) => one.scale - other.scale);
  return byScale.find((level) => level.scale >= devicePixelsPerImagePixel) ?? byScale.at(-1) ?? null;
}

/** Whether the level shows all that the screen can show of the picture: no finer one would look sharper. */
export function isSharp(level: { readonly scale: number }, devicePixelsPerImagePixel: number): boolean {
  return level.scale >= Math.min(1, devicePixelsPerImagePixel);
}
