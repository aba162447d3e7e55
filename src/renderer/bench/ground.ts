import type { ImagePoint } from '../../domain/measuring/points.ts';
import { cornerMarginPx } from '../../domain/measuring/withinPicture.ts';
import { type HandleId, isLandmarkName, scaleHandlesOf } from './handles.ts';
import type { BenchState } from './store.ts';
import type { Ground, Size } from './view.ts';

/** The picture, and the corners of a card that its frame cuts off. */
export function groundOf({ picture, edited, placing }: Pick<BenchState, 'picture' | 'edited' | 'placing'>): Ground {
  const corners = [...scaleHandlesOf(edited.document.scale).map(({ at }) => at), ...(placing?.placed ?? [])];
  const xsPx = corners.map(({ xPx }) => xPx);
  const ysPx = corners.map(({ yPx }) => yPx);
  return {
    topLeft: { xPx: Math.min(0, ...xsPx), yPx: Math.min(0, ...ysPx) },
    bottomRight: { xPx: Math.max(picture.width, ...xsPx), yPx: Math.max(picture.height, ...ysPx) },
  };
}

/** The nearest place where this handle may lie: corners of a card also beside the picture. */
export function handlePlace(state: Pick<BenchState, 'picture' | 'edited'>, id: HandleId, at: ImagePoint): ImagePoint {
  const isCorner = !isLandmarkName(id) && state.edited.document.scale?.kind === 'rectangle';
  const marginPx = isCorner ? marginOf(state.picture) : 0;
  return {
    xPx: Math.min(state.picture.width + marginPx, Math.max(0 - marginPx, at.xPx)),
    yPx: Math.min(state.picture.height + marginPx, Math.max(0 - marginPx, at.yPx)),
  };
}

/** Whether a click there can place what is asked for. */
export function takesClick({ picture, placing }: Pick<BenchState, 'picture' | 'placing'>, { xPx, yPx }: ImagePoint): boolean {
  const marginPx = placing?.kind === 'placingCorners' ? marginOf(picture) : 0;
  return Math.max(-xPx, xPx - picture.width, -yPx, yPx - picture.height) <= marginPx;
}

function marginOf({ width, height }: Size): number {
  return cornerMarginPx({ widthPx: width, heightPx: height });
}
