import { describe, expect, test } from 'vitest';
import { type CabinetView, FIRST_VIEW, isNarrowed, shownIn, sortedBy } from '../../../../src/renderer/pages/cabinet/cabinetView.ts';
import { aSummary } from '../../../support/records.ts';

const CABINET = [
  aSummary(
    { id: 'a', code: 'G-12', taxon: 'Grammostola pulchra', name: 'Señora', origin: 'Zürich fair' },
    {
      sex: { sex: 'female', level: 'strong', conflict: false },
      instarNow: known(9),
      lastMolt: { from: '2026-02-01', to: '2026-02-01' },
      lastMeasuredSkin: skin(18.2),
    },
  ),
  aSummary(
    { id: 'b', code: 'G-2', taxon: 'Brachypelma hamorii', eggSacGroup: 'sac 7' },
    {
      sex: { sex: 'female', level: 'established', conflict: true },
      instarNow: known(11),
      lastMolt: { from: '2025-11-01', to: '2025-11-20' },
    },
  ),
  aSummary(
    { id: 'c', code: 'C-1', taxon: '', status: 'sold' },
    { sex: { sex: 'male', level: 'leaning', conflict: false }, lastMeasuredSkin: skin(6.1) },
  ),
  aSummary(
    { id: 'd', code: 'A-1', taxon: 'Avicularia avicularia', status: 'on-loan' },
    { instarNow: { number: 4, certainty: 'inferred' } },
  ),
];

function known(number: number) {
  return { number, certainty: 'known' } as const;
}

function skin(lengthMm: number) {
  const carapaceLengthMm = { value: lengthMm, standardUncertainty: 0.1, expandedUncertainty: 0.2 };
  return { carapaceLengthMm, instar: null, recordedMolt: 1, isOfLastMolt: true };
}

function codes(part: Partial<CabinetView>): string[] {
  return shownIn({ ...FIRST_VIEW, ...part }, CABINET).map((summary) => summary.specimen.code);
}

describe('the view of the cabinet', () => {
  test('starts with the animals still kept, by code as people count', () => {
    expect(codes({})).toEqual(['A-1', 'G-2', 'G-12']);
  });

  test('finds every word of a search in any of code, species, name, egg sac and origin, whatever the accents', () => {
    expect(codes({ search: 'senora' })).toEqual(['G-12']);
    expect(codes({ search: 'ZURICH pulchra' })).toEqual(['G-12']);
    expect(codes({ search: 'sac 7' })).toEqual(['G-2']);
    expect(codes({ search: 'pulchra hamorii' })).toEqual([]);
  });

  test('narrows by sex, by contradiction and by status', () => {
    expect(codes({ sex: 'female' })).toEqual(['G-2', 'G-12']);
    expect(codes({ sex: 'contradicted' })).toEqual(['G-2']);
    expect(codes({ status: 'sold' })).toEqual(['C-1']);
    expect(codes({ status: 'any' })).toHaveLength(4);
  });

  test('puts what is not known last in both directions', () => {
    expect(codes({ sortBy: 'size', status: 'any' })).toEqual(['C-1', 'G-12', 'A-1', 'G-2']);
    expect(codes({ sortBy: 'size', status: 'any', descending: true })).toEqual(['G-12', 'C-1', 'A-1', 'G-2']);
    expect(codes({ sortBy: 'taxon', status: 'any' })).toEqual(['A-1', 'G-2', 'G-12', 'C-1']);
  });

  test('sorts sex by how sure it is, then dates and instars by themselves', () => {
    expect(codes({ sortBy: 'sex', status: 'any' })).toEqual(['G-2', 'G-12', 'C-1', 'A-1']);
    expect(codes({ sortBy: 'lastMolt' })).toEqual(['G-2', 'G-12', 'A-1']);
    expect(codes({ sortBy: 'instar', descending: true })).toEqual(['G-2', 'G-12', 'A-1']);
  });

  test('puts who molts now and who is overdue before what is due, by the day in the middle', () => {
    const due = (middle: string, chanceOfLasting: number, prior = 0) => ({
      since: { kind: 'hatched' as const, on: '2025-01-01' },
      middle,
      window50: { from: middle, to: middle },
      window90: { from: middle, to: middle },
      chanceOfLasting,
      ownIntervals: 3,
      shares: { own: 1 - prior, siblings: 0, species: 0, genus: 0, family: 0, prior },
    });
    const animals = [
      aSummary({ id: '1', code: 'SOON' }, { nextMolt: due('2026-03-01', 0.6) }),
      aSummary({ id: '2', code: 'LATE' }, { nextMolt: due('2026-05-01', 0.03) }),
      aSummary({ id: '3', code: 'ASSUMED' }, { nextMolt: due('2026-04-01', 0.03, 0.9) }),
      aSummary({ id: '4', code: 'NOW' }, { moltWatched: { state: 'under-way', on: '2026-02-01' } }),
      aSummary({ id: '5', code: 'DONE' }, { moltWatched: { state: 'not-recorded', on: '2026-02-01' } }),
    ];
    const order = shownIn({ ...FIRST_VIEW, sortBy: 'nextMolt' }, animals).map(({ specimen }) => specimen.code);
    expect(order).toEqual(['NOW', 'LATE', 'SOON', 'ASSUMED', 'DONE']);
  });

  test('turns the direction when the same column is pressed again, and starts rising on another', () => {
    const once = sortedBy(FIRST_VIEW, 'instar');
    expect(once).toMatchObject({ sortBy: 'instar', descending: false });
    expect(sortedBy(once, 'instar').descending).toBe(true);
    expect(sortedBy(sortedBy(once, 'instar'), 'code').descending).toBe(false);
  });

  test('knows whether anything is held back by more than the order', () => {
    expect(isNarrowed(FIRST_VIEW)).toBe(false);
    expect(isNarrowed({ ...FIRST_VIEW, sortBy: 'size' })).toBe(false);
    expect(isNarrowed({ ...FIRST_VIEW, search: ' x' })).toBe(true);
    expect(isNarrowed({ ...FIRST_VIEW, status: 'any' })).toBe(true);
  });
});
