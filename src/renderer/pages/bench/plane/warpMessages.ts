import type { PhotoMap } from '../../../../domain/measuring/photoMap.ts';
import type { Tile } from '../picture/levelMessages.ts';

/** To the worker: a level of the photo in pieces, and the map from the wanted picture to pixels of that level. */
export interface WarpWanted {
  readonly tiles: readonly Tile[];
  readonly source: { readonly width: number; readonly height: number };
  readonly toSource: PhotoMap;
  readonly width: number;
  readonly height: number;
}

/** From the worker. The receiver owns the bitmap and closes it. */
export type WarpNews = { readonly kind: 'done'; readonly bitmap: ImageBitmap } | { readonly kind: 'failed'; readonly reason: string };
