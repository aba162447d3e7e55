import type { Moment } from '../dates.ts';
import { isAfter, type LastMolt } from './lastMolt.ts';
import { FangColor, inTimeOrder, isFangColor, type Seen } from './observation.ts';

/** The fangs as last noted since a molt; null when nobody has noted them. */
export interface FangsNoted {
  readonly color: FangColor;
  readonly moment: Moment;
}

export function fangsSince(last: LastMolt, observations: readonly Seen[]): FangsNoted | null {
  return fangsNoted(observations.filter((seen) => isAfter(seen, last))).at(-1) ?? null;
}

/** Two notes of one new instar that cannot both be right, since white turns red-brown and red-brown black; null when none are. */
export function fangContradiction(last: LastMolt, observations: readonly Seen[]): { earlier: FangsNoted; later: FangsNoted } | null {
  const noted = fangsNoted(observations.filter((seen) => isAfter(seen, last)));
  for (const [index, later] of noted.entries()) {
    const earlier = noted.slice(0, index).find(({ color }) => rank(color) > rank(later.color));
    if (earlier) return { earlier, later };
  }
  return null;
}

function fangsNoted(observations: readonly Seen[]): FangsNoted[] {
  return inTimeOrder(observations).flatMap(({ kind, moment }) => (isFangColor(kind) ? [{ color: kind, moment }] : []));
}

function rank(color: FangColor): number {
  return FangColor.options.indexOf(color);
}
