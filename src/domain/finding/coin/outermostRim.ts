import type { Ellipse } from '../../measuring/ellipse.ts';
import type { LightPlanes } from '../light.ts';
import { type OuterOutline, outlinesBeyond, strengthOf, timesLarger } from './beyond.ts';
import type { Rim } from './rim.ts';

/** Rings about rings: a core, a border, the rim. */
const MOST_STEPS_OUT = 2;
/** An outline beyond, of this share of the strength of the one within, may be the rim. Own assumption. */
const DOUBTFUL_SHARE = 0.5;

/**
 * The outermost outline about a found one: cores of another metal and engraved rings are clearer than rims. Where it cannot be told
 * which of two is the rim, the found one with half of what lies between them as doubt.
 *
 * @param seen outlines of the same place that were found otherwise.
 * @param lookAt the rim near an outline, null where it cannot be made out.
 */
export function outermostRim(planes: LightPlanes, found: Rim, seen: readonly Rim[], lookAt: (outline: Ellipse) => Rim | null): Rim {
  let rim = found;
  for (let step = 0; step < MOST_STEPS_OUT; step += 1) {
    const beyond = outlinesBeyond(planes, rim.ellipse, seen);
    const within = strengthOf(planes, rim);
    const outer = rimAmong(beyond, within);
    const next = outer && lookAt(outer.ellipse);
    if (next && timesLarger(rim.ellipse, next.ellipse) > 1) {
      rim = next;
      continue;
    }
    const [rival] = beyond.filter(({ edge, strength }) => edge !== 'faint' || strength > DOUBTFUL_SHARE * within).toSorted(stronger);
    return rival ? doubted(rim, rival.ellipse) : rim;
  }
  return rim;
}

/** Of clear outlines the outermost; else the strongest that is stronger than what lies within. */
function rimAmong(beyond: readonly OuterOutline[], within: number): OuterOutline | null {
  const [outermost] = beyond
    .filter(({ edge }) => edge === 'clear')
    .toSorted((one, other) => other.ellipse.semiMinorPx - one.ellipse.semiMinorPx);
  const [strongest] = beyond.filter(({ strength }) => strength > within).toSorted(stronger);
  return outermost ?? strongest ?? null;
}

function stronger(one: OuterOutline, other: OuterOutline): number {
  return other.strength - one.strength;
}

function doubted(rim: Rim, rival: Ellipse): Rim {
  const gapPx = (timesLarger(rim.ellipse, rival) - 1) * Math.sqrt(rim.ellipse.semiMajorPx * rim.ellipse.semiMinorPx);
  return { ...rim, settled: false, standardUncertaintyPx: Math.hypot(rim.standardUncertaintyPx, gapPx / 2) };
}
