export interface NamePlace {
  readonly specimenId: string;
  readonly yPx: number;
}

const NAME_LINE_PX = 16;

/** Where each name stands at the right of a chart so that none lies on another: as near to the end of its line as the others leave. */
export function namePlaces(ends: readonly NamePlace[], lowestPx: number): ReadonlyMap<string, number> {
  const placed: { specimenId: string; yPx: number }[] = [];
  for (const { specimenId, yPx } of ends.toSorted((a, b) => a.yPx - b.yPx)) {
    placed.push({ specimenId, yPx: Math.max(yPx, (placed.at(-1)?.yPx ?? Number.NEGATIVE_INFINITY) + NAME_LINE_PX) });
  }
  // What ran out at the foot moves up again, and whatever stands above it.
  let limitPx = lowestPx;
  for (const name of placed.toReversed()) {
    name.yPx = Math.min(name.yPx, limitPx);
    limitPx = name.yPx - NAME_LINE_PX;
  }
  return new Map(placed.map(({ specimenId, yPx }) => [specimenId, yPx]));
}
