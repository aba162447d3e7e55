import type { LevelReason } from '../../../../domain/sexing/reason.ts';

/** What every way to a level lacks, and what of the rest any one of them lacks: each thing is named once. */
export interface Needed {
  readonly always: readonly LevelReason[];
  /** One of these is enough; empty where nothing but `always` is needed. */
  readonly either: readonly (readonly LevelReason[])[];
}

export function neededOf(ways: readonly (readonly LevelReason[])[]): Needed {
  const [first = []] = ways;
  const always = first.filter((reason) => ways.every((way) => way.includes(reason)));
  const rest = ways.map((way) => way.filter((reason) => !always.includes(reason)));
  if (rest.some((way) => way.length === 0)) return { always, either: [] };
  // A way that asks for all that another one asks for, and more, helps nobody.
  const either = rest.filter(
    (way, place) =>
      !rest.some((other, at) => at !== place && other.every((reason) => way.includes(reason)) && (other.length < way.length || at < place)),
  );
  return { always, either };
}
