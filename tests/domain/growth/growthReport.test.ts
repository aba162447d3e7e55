import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type GrowthContext, GrowthReport, growthReportOf } from '../../../src/domain/growth/growthReport.ts';
import { buildLadder, type MoltOnRecord } from '../../../src/domain/growth/ladder.ts';
import { placeLiveSizes } from '../../../src/domain/growth/liveSizes.ts';
import { beliefOfLadder } from '../../support/believedGrowth.ts';
import { moltOn, quantity, skinReading } from './skins.ts';

const CONTEXT: Omit<GrowthContext, 'belief'> = { today: '2026-01-01', sex: 'unsexed', isKept: true, moltedSince: false, live: [] };

function report(records: readonly MoltOnRecord[], more: Partial<GrowthContext> = {}): GrowthReport {
  const ladder = buildLadder(records);
  return growthReportOf(ladder, records, { ...CONTEXT, belief: beliefOfLadder(ladder, CONTEXT.today), ...more });
}

function kindsOf(records: readonly MoltOnRecord[]): string[] {
  return report(records).findings.map(({ kind }) => kind);
}

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
}

describe('growthReportOf, with little or odd on record', () => {
  it('says what is missing instead of a number', () => {
    expect(kindsOf([])).toEqual(['no-size', 'no-interval']);
    expect(kindsOf([moltOn('2024-01-01', 4, null)])).toEqual(['no-size', 'no-interval']);
    expect(kindsOf([moltOn('2024-01-01', 4, 5)])).toEqual(['one-size', 'no-interval']);
    expect(kindsOf([moltOn('2024-01-01', 4, 5), moltOn('2024-06-01', 5, 6.4)])).toEqual(['two-sizes']);
    expect(report([])).toMatchObject({
      weighted: null,
      robust: null,
      curvature: null,
      missed: [],
      carapaceNow: null,
      spanNow: null,
    });
  });

  it('asks about sizes that are equal, shrink or cannot be', () => {
    expect(kindsOf([moltOn('2024-01-01', 4, 5), moltOn('2024-06-01', 5, 5)])).toContain('equal-sizes');
    expect(kindsOf([moltOn('2024-01-01', 4, 5), moltOn('2024-06-01', 5, 5.25)])).toContain('equal-sizes');
    expect(report([moltOn('2024-01-01', 4, 6), moltOn('2024-06-01', 5, 5)]).findings).toContainEqual({
      kind: 'shrunk',
      earlierMoltId: 'molt-2024-01-01',
      laterMoltId: 'molt-2024-06-01',
      ratio: 5 / 6,
    });
    expect(kindsOf([moltOn('2024-01-01', 4, 5), moltOn('2024-06-01', 5, 12)])).toContain('absurd-ratio');
    expect(kindsOf([moltOn('2024-01-01', 4, 12), moltOn('2024-06-01', 5, 1.2)])).toEqual(['two-sizes', 'absurd-ratio']);
    // 2.4 fold over a gap of two instars is 1.34 for each of three: nothing odd.
    expect(kindsOf([moltOn('2024-01-01', 4, 5), moltOn('2024-06-01', 7, 12)])).toEqual(['two-sizes']);
  });

  it('says so where dates lie in the future, on one day, or apart by no sure day', () => {
    expect(report([moltOn('2027-01-01', 4, 5)]).findings).toContainEqual({
      kind: 'future-date',
      moltId: 'molt-2027-01-01',
      day: '2027-01-01',
    });
    const first = moltOn('2024-01-01', 4, 5);
    const other = moltOn('2024-01-02', 5, 6.5);
    const sameDay = { ...other, molt: { ...other.molt, happenedFrom: '2024-01-01', happenedTo: '2024-01-01' } };
    expect(kindsOf([first, sameDay])).toEqual(['two-sizes', 'one-day', 'no-interval']);
    const vague = [first, other].map((record) => ({
      ...record,
      molt: { ...record.molt, happenedFrom: '2023-01-01', happenedTo: '2025-01-01' },
    }));
    expect(kindsOf(vague)).toEqual(['two-sizes', 'no-interval']);
  });

  it('finds numbers that run against the dates, and follows the dates', () => {
    const records = [moltOn('2024-01-01', 8, 5), moltOn('2024-06-01', 5, 6.5), moltOn('2024-12-01', null, 8.4)];
    const { findings, ratios } = report(records);
    expect(findings).toContainEqual({ kind: 'dates-out-of-order', earlierMoltId: 'molt-2024-01-01', laterMoltId: 'molt-2024-06-01' });
    expect(ratios.stepwise.map(({ instars }) => instars)).toEqual([1, 1]);
    expect(buildLadder(records).rungs.map(({ instar }) => instar)).toEqual([null, null, null]);
    const squeezed = [moltOn('2024-01-01', 5, 5), moltOn('2024-06-01', null, 6.5), moltOn('2024-12-01', 6, 8.4)];
    expect(report(squeezed).findings.map(({ kind }) => kind)).toContain('dates-out-of-order');
    const sound = [moltOn('2024-01-01', 5, 5), moltOn('2024-06-01', null, 6.5), moltOn('2024-12-01', 7, 8.4)];
    expect(report(sound).findings).toEqual([]);
  });

  it('names measured skins whose place in the row is open', () => {
    const records = [moltOn('2023-01-10', 4, 3.93), moltOn('2023-03-10', null, 5.3), moltOn('2023-09-10', 7, 8.16)];
    expect(report(records).findings).toContainEqual({ kind: 'place-unknown', moltIds: ['molt-2023-03-10'] });
  });

  it('fits no weighted line where the readings leave its ratio open beyond any number', () => {
    const records = [0, 5, 50].map((uncertaintyMm, index) => moltOn(`202${index}-03-01`, null, 0.01, uncertaintyMm));
    expect(report(records).weighted).toBeNull();
  });

  it('makes its fits beside readings that say nothing, between exact ones', () => {
    const row = [
      [4, 0.1440112513185311],
      [5, 0],
      [7, 0.146505137993571],
      [8, 0],
    ] as const;
    const records = row.map(([instar, uncertaintyMm], index) => moltOn(`202${index}-03-01`, instar, 0.01, uncertaintyMm));
    expect(numbersIn(report(records)).every(Number.isFinite)).toBe(true);
  });

  it('holds only numbers that are numbers, whatever the sizes, dates and uncertainties', () => {
    const size = fc.option(fc.double({ min: 0.01, max: 500, noNaN: true }));
    const row = fc.array(
      fc.record({ size, uncertainty: fc.double({ min: 0, max: 5, noNaN: true }), jump: fc.integer({ min: 1, max: 3 }) }),
      {
        maxLength: 9,
      },
    );
    fc.assert(
      fc.property(row, fc.boolean(), (skins, isNumbered) => {
        let instar = 3;
        const records = skins.map(({ size: length, uncertainty, jump }, index) => {
          instar += jump;
          return moltOn(`202${index}-03-01`, isNumbered ? instar : null, length, uncertainty);
        });
        const made = report(records, { sex: 'male' });
        expect(numbersIn(made).every(Number.isFinite)).toBe(true);
        expect(GrowthReport.parse(made)).toEqual(made);
      }),
    );
  });
});

describe('growthReportOf', () => {
  // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239: carapace lengths of female Centruroides gracilis; days made up.
  const series = [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16].map((lengthMm, index) =>
    moltOn(`2023-0${index + 1}-10`, index + 1, lengthMm, 0.02),
  );

  it('puts the three ratios of a published series side by side', () => {
    const { ratios, weighted, missed, findings } = report(series);
    expect(ratios.arithmeticMean?.toFixed(4)).toBe('1.3131');
    expect(ratios.geometricMean?.value.toFixed(4)).toBe('1.3120');
    expect(ratios.regression?.value.toFixed(4)).toBe('1.3128');
    expect(weighted?.ratio).toBeCloseTo(1.3128, 2);
    expect(missed.every(({ suggestedSkipped }) => suggestedSkipped === 0)).toBe(true);
    expect(findings).toEqual([]);
  });

  it('finds the molt that went missing by its skins, though nothing in the numbers says so', () => {
    const unnumbered = series
      .filter((_, index) => index !== 3)
      .map((record) => ({ ...record, molt: { ...record.molt, instarShed: null } }));
    const suggested = report(unnumbered).missed.filter(({ suggestedSkipped }) => suggestedSkipped > 0);
    expect(suggested).toMatchObject([{ laterMoltId: 'molt-2023-05-10', verdict: 'likely', suggestedSkipped: 1 }]);
    const sure = unnumbered.map((record) =>
      record.molt.id === 'molt-2023-05-10' ? { ...record, molt: { ...record.molt, outcomes: ['none-missed-before' as const] } } : record,
    );
    const settled = report(sure);
    expect(settled.missed.find(({ laterMoltId }) => laterMoltId === 'molt-2023-05-10')).toMatchObject({
      verdict: 'none',
      suggestedSkipped: 0,
      probabilities: [1, 0, 0],
    });
    // A step of 1.76 that is known to be one molt tells of larger ones to come.
    expect(settled.carapaceNow?.middleMm).toBeGreaterThan((report(unnumbered).carapaceNow?.middleMm ?? Number.NaN) * 1.01);
  });

  it('foretells the living animal from its last skin, larger than that', () => {
    const { carapaceNow } = report(series);
    expect(carapaceNow?.middleMm).toBeGreaterThan(8.16);
    expect(carapaceNow?.low90Mm).toBeLessThan(carapaceNow?.middleMm ?? 0);
  });

  it('checks several readings of one skin against each other, and leaves those of the living animal out', () => {
    const [first] = series;
    if (!first) throw new Error('expected a first molt');
    const [photo] = first.photos;
    if (!photo) throw new Error('expected a photo');
    const pointed = { budget: [{ source: 'pointing' as const, standardUncertainty: 0.02, share: 1 }] };
    const twice = {
      ...first,
      photos: [...first.photos, { id: 'alive', view: 'dorsal' as const, subject: { kind: 'animal' as const, specimenId: 's' } }],
      readings: [
        skinReading(photo.id, [quantity('carapace-length', 1.6, 0.02, pointed)]),
        skinReading(photo.id, [quantity('carapace-length', 1.9, 0.02, pointed)]),
        skinReading('alive', [quantity('carapace-length', 5, 0.02, pointed)]),
      ],
    };
    expect(report([twice]).consistency).toMatchObject([{ moltId: first.molt.id, readings: 2, agree: false }]);
  });
});

describe('placeLiveSizes', () => {
  const molts = [moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, 5)].map(({ molt }) => molt);

  function live(takenOn: string | null) {
    const photo = { id: 'alive', takenOn, subject: { kind: 'animal' as const, specimenId: 's' } };
    return { photo, readings: [skinReading('alive', [quantity('carapace-length', 6.4, 0.2)])] };
  }

  it('puts a photo after the last molt one instar above its skin', () => {
    expect(placeLiveSizes([live('2024-07-01')], molts)).toMatchObject([
      { photoId: 'alive', afterMoltId: 'molt-2024-06-01', step: 2, instarFrom: 7, instarTo: 7, carapaceLengthMm: { value: 6.4 } },
    ]);
    expect(placeLiveSizes([live('2024-03-01')], molts)).toMatchObject([{ afterMoltId: 'molt-2024-01-01', step: 1, instarFrom: 6 }]);
  });

  it('leaves the place open on the day of a molt, without a day, and before the first molt', () => {
    expect(placeLiveSizes([live('2024-06-01')], molts)).toMatchObject([{ step: null, instarFrom: 6, instarTo: 7 }]);
    expect(placeLiveSizes([live(null)], molts)).toMatchObject([{ step: null, afterMoltId: null, instarFrom: null }]);
    expect(placeLiveSizes([live('2023-07-01')], molts)).toMatchObject([{ step: null, afterMoltId: null, instarFrom: 5 }]);
  });

  it('takes no photo of a skin and none without a size', () => {
    const one = live('2024-07-01');
    expect(placeLiveSizes([{ ...one, readings: [] }], molts)).toEqual([]);
    expect(placeLiveSizes([{ ...one, photo: { ...one.photo, subject: { kind: 'skin', exuviaId: 'e' } } }], molts)).toEqual([]);
  });
});
