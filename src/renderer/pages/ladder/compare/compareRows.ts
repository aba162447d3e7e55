import { type AlignedAnimal, type Alignment, dayAt } from '../../../../domain/growth/compare/aligned.ts';
import type { GroupBand } from '../../../../domain/growth/compare/group.ts';
import { estimateCells, SUBJECT_HEAD, type Subject, subjectCells } from '../chart/ladderCsv.ts';

type Row = readonly (string | number | null)[];

const PLACE_HEADS = { instar: 'Instar that ended', date: 'Day', 'since-molt': 'Days since that molt' } as const;

/** The figures of a comparison: a row for each skin, then one for each stretch of the band. @param subjects by the animal's id. */
export function compareRows(
  animals: readonly AlignedAnimal[],
  band: readonly GroupBand[],
  { alignment, subjects }: { readonly alignment: Alignment; readonly subjects: ReadonlyMap<string, Subject> },
): Row[] {
  const place = (at: number | null) => (at === null ? null : alignment === 'date' ? dayAt(at) : at);
  const head: Row = [
    ...SUBJECT_HEAD,
    ...['Instar shown', 'Shed from', 'Shed to', `${PLACE_HEADS[alignment]}, from`, `${PLACE_HEADS[alignment]}, to`],
    ...['Carapace length (mm)', 'Carapace length U (95 %) (mm)', 'Band low, 90 % (mm)', 'Band high, 90 % (mm)', 'Animals in the band'],
  ];
  return [
    head,
    ...animals.flatMap(({ specimenId, sizes }) => {
      const subject = subjects.get(specimenId);
      return sizes.map(({ rung, at, from, size }): Row => {
        const days = [rung.happenedFrom, rung.happenedTo];
        const whose = subject ? subjectCells(subject) : [null, null, null, null];
        return [...whose, rung.instar?.number ?? null, ...days, place(from ?? at), place(at), ...estimateCells(size), null, null, null];
      });
    }),
    ...band.map(({ from, to, lowMm, highMm, animals: count }): Row => {
      const figures = [lowMm.toFixed(1), highMm.toFixed(1), count];
      return ['band of the group', null, null, null, null, null, null, place(from), place(to), null, null, ...figures];
    }),
  ];
}
