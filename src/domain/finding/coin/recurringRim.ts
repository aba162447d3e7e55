import { type Ellipse, pointOn } from '../../measuring/ellipse.ts';
import { misfitPx } from './consensus.ts';
import type { Rim } from './rim.ts';

/** Looked for anew from middles this far off, as a share of the lesser radius, each second time larger and smaller by that share. */
const MOVED_SHARE = 0.08;
const STARTS = 8;
/** Outlines that keep this near to each other, as a share of the lesser radius, are one. */
const ALIKE_SHARE = 0.03;
/** Of outlines that come again, those that do so this often, as a share of the most frequent one, count as well. */
const OFTEN_SHARE = 0.5;

/**
 * Of outlines that were seen about one place from many rough ones, that which came out again and again: edges that meet by chance
 * are seen from one start and not from the next. Of two that recur the outer one is the rim, for rings are engraved inside.
 *
 * @param search from a rough outline to a believed one, null when there is none.
 * @returns null when none came out twice.
 */
export function recurringRim(seen: readonly Rim[], rough: Ellipse, search: (rough: Ellipse) => Rim | null): Rim | null {
  const found = [...seen, ...startsAbout(rough).flatMap((start) => search(start) ?? [])];
  const counted = found.map((rim) => ({ rim, times: found.filter((other) => isAlike(rim.ellipse, other.ellipse)).length }));
  const most = Math.max(0, ...counted.map(({ times }) => times));
  if (most < 2) return null;
  const [outermost] = counted
    .filter(({ times }) => times >= Math.max(2, OFTEN_SHARE * most))
    .toSorted((one, other) => other.rim.ellipse.semiMinorPx - one.rim.ellipse.semiMinorPx);
  // Of those that are one with it, the clearest.
  const [clearest] = found
    .filter((rim) => outermost && isAlike(rim.ellipse, outermost.rim.ellipse))
    .toSorted((one, other) => other.agreement * other.coverage - one.agreement * one.coverage);
  return clearest ?? null;
}

function startsAbout({ centre, semiMajorPx, semiMinorPx, angleRad }: Ellipse): readonly Ellipse[] {
  return Array.from({ length: STARTS }, (_, index) => {
    const direction = (2 * Math.PI * index) / STARTS;
    const byPx = MOVED_SHARE * semiMinorPx;
    const larger = 1 + (index % 2 === 0 ? MOVED_SHARE : -MOVED_SHARE);
    return {
      centre: { xPx: centre.xPx + byPx * Math.cos(direction), yPx: centre.yPx + byPx * Math.sin(direction) },
      semiMajorPx: larger * semiMajorPx,
      semiMinorPx: larger * semiMinorPx,
      angleRad,
    };
  });
}

const COMPARED_POINTS = 24;

function isAlike(one: Ellipse, other: Ellipse): boolean {
  const leastPx = ALIKE_SHARE * one.semiMinorPx;
  return Array.from({ length: COMPARED_POINTS }, (_, index) => pointOn(other, (2 * Math.PI * index) / COMPARED_POINTS)).every(
    (at) => Math.abs(misfitPx(one, at)) < leastPx,
  );
}
