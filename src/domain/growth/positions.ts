import { Refusal, refuse } from '../failure.ts';
import type { Instar } from '../molting/instar.ts';
import { type Acquisition, anchorsOf, type InstarAnchor, type NumberedMolt } from '../molting/instarAnchors.ts';
import { instarsOfSkins } from '../molting/instars.ts';

/** Where a molt stands in the row of instars. */
export interface Position {
  /** Instars since the one shed with the first molt on record. */
  readonly step: number;
  readonly stepKnown: boolean;
  readonly instar: Instar | null;
  /** Instars that have no molt on record, between the molt before, or the acquisition, and this one. */
  readonly skippedInstars: number;
}

/** Where the count stands at an anchor. */
type Counted = InstarAnchor & { readonly step: number };

/**
 * Counts instars along the molts of one animal. Between two anchors, molts whose instars were noted or the acquisition, the
 * count is exact: it fills in those between them where there is just room, and leaves a gap where molts are missing. If a gap
 * and molts without a number lie between the same two, nobody can say on which side of them the gap is: their step is then
 * marked as not known. Before the first and after the last anchor, one recorded molt is one step.
 *
 * @param molts of one animal, oldest first.
 * @throws Refusal `instars-out-of-order` when the numbers noted leave no room for the molts between them.
 */
export function placeMolts(molts: readonly NumberedMolt[], acquisition?: Acquisition): Position[] {
  const instars = instarsOfSkins(molts, acquisition);
  const places = molts.map((_, index): Omit<Position, 'instar'> => ({ step: index, stepKnown: true, skippedInstars: 0 }));
  let last: Counted | null = null;
  for (const anchor of anchorsOf(molts, acquisition)) {
    last = last ? placeBetween(last, anchor, { molts, places }) : { ...anchor, step: anchor.period };
  }
  if (last) placeSteps(places, { after: last.period, step: last.step });
  const first = places[0]?.step ?? 0;
  return places.map((place, index) => ({ ...place, step: place.step - first, instar: instars[index] ?? null }));
}

/** The same, or null where the numbers contradict the order of the dates. */
export function placeMoltsIfSound(molts: readonly NumberedMolt[], acquisition?: Acquisition): Position[] | null {
  try {
    return placeMolts(molts, acquisition);
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}

/** The same in any case: numbers that contradict the order of the dates are all left out, and each molt on record is one step. */
export function placeMoltsAnyhow(molts: readonly NumberedMolt[], acquisition?: Acquisition): Position[] {
  return placeMoltsIfSound(molts, acquisition) ?? placeMolts(molts.map((molt) => ({ ...molt, instarShed: null })));
}

/** Places the molts after one anchor up to the next. */
function placeBetween(
  last: Counted,
  anchor: InstarAnchor,
  { molts, places }: { molts: readonly NumberedMolt[]; places: Omit<Position, 'instar'>[] },
): Counted {
  const room = anchor.ended - last.ended;
  const skipped = room - (anchor.period - last.period);
  if (skipped < 0) {
    refuse({
      code: 'instars-out-of-order',
      instar: anchor.ended,
      neighbourInstar: last.ended,
      neighbourDate: molts[last.period]?.happenedFrom ?? molts[anchor.period]?.happenedFrom ?? '',
      recordedBetween: anchor.period - last.period - 1,
    });
  }
  placeSteps(places, { after: last.period, step: last.step });
  const endsTheGap = anchor.from === 'molt' ? anchor.period : anchor.period + 1;
  if (skipped > 0) {
    for (let between = last.period + 1; between < endsTheGap; between += 1) put(places, between, { stepKnown: false });
    put(places, endsTheGap, { skippedInstars: skipped + (places[endsTheGap]?.skippedInstars ?? 0) });
  }
  const step = last.step + room;
  if (anchor.from === 'molt') put(places, anchor.period, { step });
  return { ...anchor, step };
}

/** One step for each molt after a period. */
function placeSteps(places: Omit<Position, 'instar'>[], { after, step }: { after: number; step: number }): void {
  for (let index = after + 1; index < places.length; index += 1) put(places, index, { step: step + index - after });
}

function put(places: Omit<Position, 'instar'>[], index: number, part: Partial<Position>): void {
  const place = places[index];
  if (place) places[index] = { ...place, ...part };
}

/** Whether `here` is the instar just after `previous`, as far as is known. */
export function followsDirectly(previous: Pick<Position, 'step' | 'stepKnown'>, here: Pick<Position, 'step' | 'stepKnown'>): boolean {
  return previous.stepKnown && here.stepKnown && here.step === previous.step + 1;
}
