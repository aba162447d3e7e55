import { daysBetween } from '../dates.ts';
import type { Exuvia } from '../molting/exuvia.ts';
import type { Acquisition } from '../molting/instarAnchors.ts';
import { byDate } from '../molting/instars.ts';
import type { Molt } from '../molting/molt.ts';
import type { Photo } from '../photo/photo.ts';
import { isPresumed } from './missed/presumedMolts.ts';
import { followsDirectly, placeMoltsAnyhow } from './positions.ts';
import { growthRatio } from './ratio.ts';
import type { Ladder, Rung } from './rung.ts';
import { type SkinReading, sizesOf } from './skinSizes.ts';

/**
 * One molt of the animal with its skin. A skin shows the instar that ended with the molt; photos of the living animal show
 * the next one and are left out here even when they are handed in, as are readings made on them.
 */
export interface MoltOnRecord {
  readonly molt: Pick<Molt, 'id' | 'happenedFrom' | 'happenedTo' | 'instarShed' | 'outcomes'>;
  readonly exuvia: Pick<Exuvia, 'id' | 'recovered'> | null;
  readonly photos: readonly Pick<Photo, 'id' | 'subject' | 'view'>[];
  /** Every reading of these photos whose photo has a calibration, in any order. */
  readonly readings: readonly SkinReading[];
}

/**
 * The instars of one animal, oldest first: one rung per molt on record, with a size where its skin was measured. Nothing is
 * interpolated: a ratio stands only between instars that followed each other and were both measured. Numbers that contradict the
 * order of the dates count for nothing: the rungs then follow the dates, and `findingsOf` says so.
 *
 * @param records all molts of one animal, in any order.
 * @param acquisition of the animal, where its instar was known then: the count starts from it where no molt has a number.
 */
export function buildLadder(records: readonly MoltOnRecord[], acquisition?: Acquisition): Ladder {
  const inOrder = [...records].sort((a, b) => byDate(a.molt, b.molt));
  const positions = placeMoltsAnyhow(
    inOrder.map(({ molt }) => molt),
    acquisition,
  );
  const rungs: Rung[] = [];
  for (const [index, record] of inOrder.entries()) {
    const position = positions[index];
    if (!position) throw new RangeError(`Expected a position for each of ${inOrder.length} molts, got ${positions.length}`);
    const { molt, exuvia } = record;
    const previous = rungs.at(-1);
    const photos = skinPhotosOn(record);
    const readings = skinReadingsOn(record);
    const sizes = sizesOf(readings);
    rungs.push({
      moltId: molt.id,
      exuviaId: exuvia?.id ?? null,
      ...position,
      recordedMolt: index + 1,
      presumed: isPresumed(molt),
      noneMissedBefore: molt.outcomes.includes('none-missed-before'),
      happenedFrom: molt.happenedFrom,
      happenedTo: molt.happenedTo,
      recovered: exuvia?.recovered ?? (molt.outcomes.includes('skin-not-recovered') ? false : null),
      photoId: photoOf(photos, readings),
      readingIds: readings.map(({ readingId }) => readingId),
      ...sizes,
      ratio: ratioTo(previous, position, sizes.carapaceLengthMm),
      daysSincePrevious: previous ? daysApart(previous, molt) : null,
    });
  }
  return { rungs };
}

/** Readings of the skin of this molt alone: whatever is read on the living animal shows another instar. Empty without a record. */
export function skinReadingsOn(record: MoltOnRecord | undefined): readonly SkinReading[] {
  if (!record) return [];
  const photos = skinPhotosOn(record);
  return record.readings.filter(({ photoId }) => photos.some(({ id }) => id === photoId));
}

function skinPhotosOn({ photos, exuvia }: MoltOnRecord): MoltOnRecord['photos'] {
  return photos.filter(({ subject }) => subject.kind === 'skin' && subject.exuviaId === exuvia?.id);
}

function ratioTo(previous: Rung | undefined, here: Pick<Rung, 'step' | 'stepKnown'>, size: Rung['carapaceLengthMm']): Rung['ratio'] {
  if (!previous?.carapaceLengthMm || !size) return null;
  return followsDirectly(previous, here) ? growthRatio(size, previous.carapaceLengthMm) : null;
}

/** Shortest and longest time that the two spans allow; spans that overlap may have had no day between them. */
function daysApart(earlier: Pick<Molt, 'happenedFrom' | 'happenedTo'>, later: Pick<Molt, 'happenedFrom' | 'happenedTo'>) {
  return {
    from: Math.max(0, daysBetween(earlier.happenedTo, later.happenedFrom)),
    to: daysBetween(earlier.happenedFrom, later.happenedTo),
  };
}

/** The photo that gives the carapace length best, else one that gives anything, else a dorsal one, else any. */
function photoOf(photos: MoltOnRecord['photos'], readings: readonly SkinReading[]): string | null {
  const best = readings
    .flatMap(({ photoId, measurement }) => {
      const length = measurement.quantities.find(({ name }) => name === 'carapace-length');
      return length ? [{ photoId, uncertaintyMm: length.estimate.standardUncertainty }] : [];
    })
    .sort((a, b) => a.uncertaintyMm - b.uncertaintyMm)[0];
  const dorsal = photos.find(({ view }) => view === 'dorsal');
  return best?.photoId ?? readings[0]?.photoId ?? dorsal?.id ?? photos[0]?.id ?? null;
}
