import type { Mark } from '../chart/mark.ts';

/** How one animal's line and points look; no two animals beside each other look alike, whatever colors are seen. */
export interface LineLook {
  readonly shape: Mark['shape'];
  /** SVG's stroke-dasharray; undefined for an unbroken line, which is the animal's own. */
  readonly dash: string | undefined;
}

const DASHES = ['8 4', '2 3', '12 3 2 3', '5 2'] as const;
const SHAPES = ['ring', 'square', 'triangle', 'cross', 'diamond'] as const;

/** @param place among the animals beside, from 0; null for the animal itself. */
export function lookOf(place: number | null): LineLook {
  if (place === null) return { shape: 'dot', dash: undefined };
  return { shape: SHAPES[place % SHAPES.length] ?? 'ring', dash: DASHES[(place + Math.floor(place / 20)) % DASHES.length] };
}
