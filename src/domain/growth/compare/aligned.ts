import { addDays, daysBetween } from '../../dates.ts';
import type { Estimate } from '../../measuring/quantity.ts';
import { isUsable } from '../../measuring/usable.ts';
import { followsDirectly } from '../positions.ts';
import type { Rung } from '../rung.ts';

/** By what animals are laid beside each other. */
export type Alignment = 'instar' | 'date' | 'since-molt';

export interface ComparedAnimal {
  readonly specimenId: string;
  readonly called: string;
  readonly rungs: readonly Rung[];
}

/** A measured skin on the common axis: the instar it shows, days since 1970, or days since the chosen molt. */
export interface AlignedSize {
  readonly rung: Rung;
  readonly at: number;
  /**
   * Along days: where the instar began, which is the molt before; null where that is not on record, and along instars. From there to
   * `at` the animal had this size.
   */
  readonly from: number | null;
  readonly size: Estimate;
}

export interface AlignedAnimal {
  readonly specimenId: string;
  readonly called: string;
  /** By rising place. */
  readonly sizes: readonly AlignedSize[];
  /** Measured skins that have no place on this axis. */
  readonly left: number;
}

const EPOCH = '1970-01-01';

/**
 * Carapace lengths of an animal on a common axis. A span of days stands at its middle.
 *
 * @param since instar whose molt is day 0; null for the first molt on record. Only for `since-molt`.
 */
export function alignAnimal({ specimenId, called, rungs }: ComparedAnimal, alignment: Alignment, since: number | null): AlignedAnimal {
  const reference = since === null ? rungs[0] : rungs.find(({ instar }) => instar?.number === since);
  const measured = rungs.flatMap((rung, index) =>
    rung.carapaceLengthMm && isUsable(rung.carapaceLengthMm) ? [{ rung, previous: rungs[index - 1], size: rung.carapaceLengthMm }] : [],
  );
  const placeOf = (rung: Rung): number | null => {
    if (alignment === 'instar') return rung.stepKnown ? (rung.instar?.number ?? null) : null;
    if (alignment === 'date') return dayOf(rung);
    return reference ? dayOf(rung) - dayOf(reference) : null;
  };
  const sizes = measured.flatMap(({ rung, previous, size }): AlignedSize[] => {
    const at = placeOf(rung);
    if (at === null) return [];
    const begun = alignment !== 'instar' && previous && !previous.presumed && followsDirectly(previous, rung) ? placeOf(previous) : null;
    return [{ rung, at, from: begun !== null && begun < at ? begun : null, size }];
  });
  return { specimenId, called, sizes: sizes.toSorted((a, b) => a.at - b.at), left: measured.length - sizes.length };
}

/** The calendar day of a place on the axis of dates. */
export function dayAt(days: number): string {
  return addDays(EPOCH, Math.round(days));
}

function dayOf({ happenedFrom, happenedTo }: Rung): number {
  return (daysBetween(EPOCH, happenedFrom) + daysBetween(EPOCH, happenedTo)) / 2;
}
