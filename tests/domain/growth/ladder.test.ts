import { describe, expect, it } from 'vitest';
import { fitGrowth } from '../../../src/domain/growth/growthFit.ts';
import { buildLadder } from '../../../src/domain/growth/ladder.ts';
import { measuredSteps } from '../../../src/domain/growth/measuredStep.ts';
import { Ladder } from '../../../src/domain/growth/rung.ts';
import { moltOn, quantity, skinReading } from './skins.ts';

// Carapace lengths of female Centruroides gracilis, instars 1 to 7 (Francke OF, Jones SK 1982, J. Arachnol. 10:223-239); the days are made up.
const gracilis = [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16];
const series = gracilis.map((lengthMm, index) => moltOn(`2023-0${index + 1}-10`, index + 1, lengthMm, 0.02));

function fitOf({ rungs }: Ladder) {
  return fitGrowth(measuredSteps(rungs));
}

describe('buildLadder', () => {
  it('is empty for an animal without molts', () => {
    expect(buildLadder([])).toEqual({ rungs: [] });
  });

  it('has no ratio on one rung, and two tell no fit', () => {
    expect(buildLadder(series.slice(0, 1)).rungs[0]).toMatchObject({ step: 0, ratio: null, daysSincePrevious: null });
    const two = buildLadder(series.slice(0, 2));
    expect(two.rungs[1]?.ratio?.value).toBeCloseTo(2.25 / 1.6, 12);
    expect(fitOf(two)).toBeNull();
  });

  it('gives the ratios and the fit of a published series, in whatever order the molts come', () => {
    const ladder = buildLadder([...series].reverse());
    expect(ladder.rungs.map(({ instar }) => instar?.number)).toEqual([1, 2, 3, 4, 5, 6, 7]);
    expect(ladder.rungs.slice(2).map(({ ratio }) => ratio?.value.toFixed(4))).toEqual(['1.3156', '1.3277', '1.3257', '1.2764', '1.2271']);
    expect(fitOf(ladder)?.ratio.toFixed(4)).toBe('1.3128');
    expect(fitOf(ladder)?.rSquared.toFixed(5)).toBe('0.99564');
    expect(fitOf(ladder)?.rungs).toBe(7);
  });

  it('is what the schema says', () => {
    expect(Ladder.parse(buildLadder(series))).toEqual(buildLadder(series));
  });

  it('keeps a missing instar as a gap: no ratio across it, no size in it, its step counted', () => {
    const ladder = buildLadder(series.filter((_, index) => index !== 3));
    const after = ladder.rungs[3];
    expect(after).toMatchObject({ instar: { number: 5, certainty: 'known' }, step: 4, skippedInstars: 1, ratio: null, recordedMolt: 4 });
    expect(ladder.rungs[4]?.ratio?.value.toFixed(4)).toBe('1.2764');
    expect(ladder.rungs).toHaveLength(6);
    expect(fitOf(ladder)?.ratio).toBeCloseTo(1.3128, 2);
  });

  it('keeps a molt without a measured skin as a rung without size', () => {
    const ladder = buildLadder(
      series.map((record, index) => (index === 3 ? { ...record, exuvia: null, photos: [], readings: [] } : record)),
    );
    expect(ladder.rungs[3]).toMatchObject({
      instar: { number: 4, certainty: 'known' },
      recovered: null,
      photoId: null,
      carapaceLengthMm: null,
      ratio: null,
      skippedInstars: 0,
    });
    expect(ladder.rungs[4]).toMatchObject({ instar: { number: 5, certainty: 'known' }, ratio: null });
    expect(ladder.rungs[5]?.ratio?.value.toFixed(4)).toBe('1.2764');
    expect(fitOf(ladder)?.rungs).toBe(6);
  });

  it('numbers the skins from the instar in which the animal was acquired', () => {
    const ladder = buildLadder([moltOn('2024-01-01', null, 4), moltOn('2024-06-01', null, 5)], {
      acquiredOn: '2023-12-01',
      acquiredInstar: 7,
    });
    expect(ladder.rungs.map(({ instar }) => instar)).toEqual([
      { number: 7, certainty: 'inferred' },
      { number: 8, certainty: 'inferred' },
    ]);
  });

  it('leaves a molt whose step is open out of ratios and fit', () => {
    const ladder = buildLadder([
      moltOn('2023-01-10', 4, 3.93),
      moltOn('2023-03-10', null, 5.3),
      moltOn('2023-09-10', 7, 8.16),
      moltOn('2024-01-10', 8, 10),
    ]);
    expect(ladder.rungs[1]).toMatchObject({ stepKnown: false, ratio: null });
    expect(ladder.rungs[2]).toMatchObject({ stepKnown: true, step: 3, ratio: null, skippedInstars: 1 });
    expect(ladder.rungs[3]?.ratio?.value).toBeCloseTo(10 / 8.16, 12);
    expect(fitOf(ladder)?.rungs).toBe(3);
  });

  it('never takes a size from a photo of the living animal, which shows the next instar', () => {
    const [record] = series;
    if (!record) throw new Error('expected a first molt');
    const ladder = buildLadder([
      {
        ...record,
        photos: [{ id: 'alive', view: 'dorsal', subject: { kind: 'animal', specimenId: 'specimen-1' } }],
        readings: [skinReading('alive', [quantity('carapace-length', 2.25, 0.02)])],
      },
    ]);
    expect(ladder.rungs[0]).toMatchObject({ carapaceLengthMm: null, photoId: null, readingIds: [] });
  });

  it('gives days as a span where dates are spans', () => {
    const first = moltOn('2024-01-01', 1, 3);
    const second = moltOn('2024-03-01', 2, 4);
    const ladder = buildLadder([
      { ...first, molt: { ...first.molt, happenedTo: '2024-01-05' } },
      { ...second, molt: { ...second.molt, happenedTo: '2024-03-11' } },
    ]);
    // 2024 is a leap year: 5 January to 1 March is 56 days, 1 January to 11 March 70.
    expect(ladder.rungs[1]?.daysSincePrevious).toEqual({ from: 56, to: 70 });
  });

  it('gives no negative days where spans overlap', () => {
    const first = moltOn('2024-01-01', 1, 3);
    const second = moltOn('2024-01-04', 2, 4);
    const ladder = buildLadder([{ ...first, molt: { ...first.molt, happenedTo: '2024-01-10' } }, second]);
    expect(ladder.rungs[1]?.daysSincePrevious).toEqual({ from: 0, to: 3 });
  });

  it('shows the photo that measures the carapace best, else a dorsal one', () => {
    const [record] = series;
    if (!record) throw new Error('expected a first molt');
    const subject = { kind: 'skin', exuviaId: record.exuvia?.id ?? '' } as const;
    const photos = [
      { id: 'detail', view: 'detail', subject },
      { id: 'above', view: 'dorsal', subject },
      { id: 'better', view: 'dorsal', subject },
    ] as const;
    const readings = [
      skinReading('above', [quantity('carapace-length', 3, 0.2)]),
      skinReading('better', [quantity('carapace-length', 3, 0.1)]),
    ];
    expect(buildLadder([{ ...record, photos, readings }]).rungs[0]?.photoId).toBe('better');
    expect(buildLadder([{ ...record, photos, readings: [] }]).rungs[0]?.photoId).toBe('above');
    expect(buildLadder([{ ...record, photos: photos.slice(0, 1), readings: [] }]).rungs[0]?.photoId).toBe('detail');
  });

  it('says that no skin was found when the molt says so', () => {
    const [record] = series;
    if (!record) throw new Error('expected a first molt');
    const lost = { ...record, molt: { ...record.molt, outcomes: ['skin-not-recovered' as const] }, exuvia: null, photos: [], readings: [] };
    expect(buildLadder([lost]).rungs[0]?.recovered).toBe(false);
  });

  it('grows by less than one for an animal that shrank', () => {
    const ladder = buildLadder([moltOn('2024-01-01', 8, 9), moltOn('2025-01-01', 9, 8.6)]);
    expect(ladder.rungs[1]?.ratio?.value).toBeCloseTo(8.6 / 9, 12);
  });
});
