import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import { type LightPlanes, lightAt } from '../light.ts';
import type { Rim } from './rim.ts';

/** Looked at so far to both sides, as a share of the lesser radius, in so many steps to each. */
const REACH = 0.15;
const STEPS = 15;
const POINTS = 120;
/** Of a whole change, what lies farther out than one standard deviation of a Gaussian blur, to each side. */
const TAIL = 0.16;
/** Where light changes less alike all around, the mean of the changes says nothing. Own assumption. */
const LEAST_COHERENCE = 0.5;

/**
 * A rim that was not told from what lies about it, less certain by half of the way along which light changes there: where a coin fades
 * into its own soft shadow, any place of this way may be the rim.
 */
export function withTransition(planes: LightPlanes, rim: Rim): Rim {
  if (rim.settled || rim.coherence < LEAST_COHERENCE) return rim;
  return { ...rim, standardUncertaintyPx: Math.hypot(rim.standardUncertaintyPx, transitionPx(planes, rim.ellipse) / 2) };
}

/** How far light takes, px, for all but the first and the last sixth of its mean change across an outline. */
function transitionPx(planes: LightPlanes, ellipse: Ellipse): number {
  const stepPx = (REACH * ellipse.semiMinorPx) / STEPS;
  const means = Array.from({ length: 2 * STEPS + 1 }, (_, index) => meanAround(planes, ellipse, (index - STEPS) * stepPx));
  const [inside = [], outside = []] = [means.at(0), means.at(-1)];
  const change = outside.map((value, plane) => value - (inside[plane] ?? 0));
  const along = means.map((mean) => mean.reduce((sum, value, plane) => sum + (value - (inside[plane] ?? 0)) * (change[plane] ?? 0), 0));
  const whole = along.at(-1) ?? 0;
  const from = along.findIndex((value) => value > TAIL * whole);
  const to = along.findLastIndex((value) => value < (1 - TAIL) * whole);
  return Math.max(0, to - from + 1) * stepPx;
}

function meanAround(planes: LightPlanes, ellipse: Ellipse, byPx: number): readonly number[] {
  const moved = { ...ellipse, semiMajorPx: ellipse.semiMajorPx + byPx, semiMinorPx: ellipse.semiMinorPx + byPx };
  const points = Array.from({ length: POINTS }, (_, index) => pointOn(moved, (2 * Math.PI * index) / POINTS));
  return planes.map((plane) => points.reduce((sum, { xPx, yPx }) => sum + lightAt(plane, xPx, yPx), 0) / POINTS);
}
