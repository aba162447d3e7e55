import type { ImagePoint } from '../../domain/measuring/points.ts';
import { type BenchState, handlesInHand } from './store.ts';
import { type Size, toView, type ViewPoint } from './view.ts';

/** Side of the loupe in CSS pixels, and how far it stands from the edge of the canvas. */
export const LOUPE_CSS = 176;
export const LOUPE_MARGIN_CSS = 12;

export type LoupePlace = `${'top' | 'bottom'}-${'left' | 'right'}`;

/**
 * The corner of the canvas where the loupe stands: on the other side of the place it looks at, and where it hides the fewest
 * handles, which have to be taken hold of beneath it.
 */
export function loupePlace(state: BenchState, looksAt: ImagePoint): LoupePlace {
  const { view, canvas } = state;
  const at = toView(view, looksAt);
  const pointer = state.hover === null ? at : toView(view, state.hover);
  const handles = handlesInHand(state).map((handle) => toView(view, handle.at));
  const [far, near] = at.xCss < canvas.width / 2 ? (['right', 'left'] as const) : (['left', 'right'] as const);
  const candidates: readonly LoupePlace[] = [`top-${far}`, `bottom-${far}`, `top-${near}`, `bottom-${near}`];
  const hidden = (place: LoupePlace, points: readonly ViewPoint[]) => points.filter((point) => isUnder(place, point, canvas)).length;
  // What is looked at and the hand weigh more than all handles together.
  const cost = (place: LoupePlace) => (1 + handles.length) * hidden(place, [at, pointer]) + hidden(place, handles);
  return candidates.reduce((best, place) => (cost(place) < cost(best) ? place : best));
}

function isUnder(place: LoupePlace, { xCss, yCss }: ViewPoint, canvas: Size): boolean {
  const reach = LOUPE_MARGIN_CSS + LOUPE_CSS;
  const across = place.endsWith('left') ? xCss : canvas.width - xCss;
  const down = place.startsWith('top') ? yCss : canvas.height - yCss;
  return across >= 0 && across <= reach && down >= 0 && down <= reach;
}
