import type { CalendarDay } from '../dates.ts';
import { refuse } from '../failure.ts';

/** Where a molt stands in the row of instars. */
export interface Position {
  /** Instars since the one shed with the first molt on record. */
  readonly step: number;
  readonly stepKnown: boolean;
  readonly instar: number | null;
  /** Instars that have no molt on record, between the molt before and this one. */
  readonly skippedInstars: number;
}

export interface NumberedMolt {
  readonly happenedFrom: CalendarDay;
  readonly instarShed: number | null;
}

/**
 * Counts instars along the molts of one animal. Between two molts whose instars are known the count is exact: it fills in
 * those between them where there is just room, and leaves a gap where molts are missing. If a gap and molts without a
 * number lie between the same two, nobody can say on which side of them the gap is: their step is then marked as not known.
 * Before the first and after the last known instar, one recorded molt is one step.
 *
 * @param molts of one animal, oldest first.
 * @throws Refusal `instars-out-of-order` when the known numbers leave no room for the molts between them.
 */
export function placeMolts(molts: readonly NumberedMolt[]): Position[] {
  const positions: Position[] = [];
  let known: { index: number; instar: number; step: number } | null = null;
  for (const [index, molt] of molts.entries()) {
    if (molt.instarShed === null) {
      positions.push({ step: stepAfter(positions), stepKnown: true, instar: null, skippedInstars: 0 });
      continue;
    }
    if (known === null) {
      positions.push({ step: stepAfter(positions), stepKnown: true, instar: molt.instarShed, skippedInstars: 0 });
    } else {
      const skippedInstars: number = molt.instarShed - known.instar - (index - known.index);
      if (skippedInstars < 0) {
        const neighbour = molts[known.index];
        refuse({
          code: 'instars-out-of-order',
          instar: molt.instarShed,
          neighbourInstar: known.instar,
          neighbourDate: neighbour?.happenedFrom ?? molt.happenedFrom,
          recordedBetween: index - known.index - 1,
        });
      }
      for (let between: number = known.index + 1; between < index; between += 1) {
        const position = positions[between];
        if (!position) continue;
        positions[between] =
          skippedInstars === 0 ? { ...position, instar: known.instar + between - known.index } : { ...position, stepKnown: false };
      }
      positions.push({ step: known.step + molt.instarShed - known.instar, stepKnown: true, instar: molt.instarShed, skippedInstars });
    }
    known = { index, instar: molt.instarShed, step: stepAfter(positions) - 1 };
  }
  return positions;
}

/** Whether `here` is the instar just after `previous`, as far as is known. */
export function followsDirectly(previous: Pick<Position, 'step' | 'stepKnown'>, here: Pick<Position, 'step' | 'stepKnown'>): boolean {
  return previous.stepKnown && here.stepKnown && here.step === previous.step + 1;
}

function stepAfter(positions: readonly Position[]): number {
  const last = positions.at(-1);
  return last ? last.step + 1 : 0;
}
