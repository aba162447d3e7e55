import type { Size } from '../../../bench/view.ts';

/** To the worker: the bytes of the photo and the size they must have when decoded upright. */
export interface LevelsWanted {
  readonly bytes: Blob;
  readonly picture: Size;
}

/** A piece of a level; `x`, `y` in pixels of the level. The receiver owns the bitmap and closes it. */
export interface Tile {
  readonly x: number;
  readonly y: number;
  readonly bitmap: ImageBitmap;
}

export interface PictureLevel {
  readonly scale: number;
  readonly tiles: readonly Tile[];
}

/** From the worker: each level as soon as it is made, coarse ones first, then the end. */
export type LevelNews =
  | { readonly kind: 'level'; readonly level: PictureLevel }
  | { readonly kind: 'done' }
  | { readonly kind: 'wrong-size'; readonly found: Size }
  | { readonly kind: 'not-decoded'; readonly reason: string };
