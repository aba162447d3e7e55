import { jStat } from 'jstat';
import { describe, expect, it } from 'vitest';
import { CARAPACE, foretoldSize } from '../../../src/domain/growth/belief/foretoldSize.ts';
import type { GrowthBelief } from '../../../src/domain/growth/belief/growthBelief.ts';
import { sizeFrom } from '../../../src/domain/growth/forecast/forecast.ts';
import { carapaceNow, groundOfSize, type SizesOfMolt, spanNow } from '../../../src/domain/growth/sizeNow.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';
import { beliefOn } from '../../support/believedGrowth.ts';
import { lengthsOf, stepsOf } from './trend/sizes.ts';

const ALIKE = { kinShares: { siblings: 0, species: 0, genus: 0, family: 0, prior: 1 }, rows: [] };
/** Each molt 1.3 times, known exactly but for the scatter of 0.04. */
const KNOWN = {
  ...ALIKE,
  kin: { level: Math.log(1.3), trend: 0, levelVariance: 0, covariance: 0, trendVariance: 0 },
  scatterVariance: 0.04 ** 2,
  degreesOfFreedom: 9,
};
const SKIN = { lengthMm: 60, uncertaintyMm: 1.8, instar: 6 };

describe('foretoldSize', () => {
  it("is the skin's size times the ratio, between the ends that Student's t gives", () => {
    const size = foretoldSize(SKIN, KNOWN, 1);
    const variance = 0.04 ** 2 + (1.8 / 60) ** 2;
    const degrees = 9 * (variance / 0.04 ** 2) ** 2;
    const reach = jStat.studentt.inv(0.95, degrees) * Math.sqrt((variance * (degrees - 2)) / degrees);
    expect(size?.middleMm).toBeCloseTo(78, 10);
    expect(size?.low90Mm).toBeCloseTo(78 * Math.exp(-reach), 5);
    expect(size?.high90Mm).toBeCloseTo(78 * Math.exp(reach), 5);
  });

  it('grows with the power of the allometry, and is open by what is not known of that power', () => {
    const sure = foretoldSize(SKIN, KNOWN, 2, { exponent: 1.2, uncertainty: 0 });
    const open = foretoldSize(SKIN, KNOWN, 2, { exponent: 1.2, uncertainty: 0.3 });
    expect(sure?.middleMm).toBeCloseTo(60 * 1.3 ** 2.4, 10);
    expect(open?.middleMm).toBeCloseTo(60 * 1.3 ** 2.4, 10);
    const half = (size: typeof sure) => Math.log((size?.high90Mm ?? 0) / (size?.low90Mm ?? 1)) / 2;
    // u(k) ln r = 0.3 x 2 ln 1.3 = 0.157 beside hypot(1.2 x 0.04 x sqrt 2, 0.03) = 0.074; 1.645 of a normal one.
    expect(half(open) / 1.645).toBeCloseTo(Math.hypot(0.157, 0.074), 2);
    expect(half(sure)).toBeLessThan(half(open) / 2);
  });

  it('foretells no carapace smaller than the skin, but for what its reading leaves open', () => {
    const slow = { ...KNOWN, kin: { ...KNOWN.kin, level: 0.01 }, scatterVariance: 0.06 ** 2 };
    const exact = foretoldSize({ ...SKIN, uncertaintyMm: 0 }, slow, 1);
    expect([exact?.low90Mm, exact?.low50Mm]).toEqual([60, 60]);
    expect(exact?.middleMm).toBeCloseTo(60 * Math.exp(0.01), 10);
    const read = foretoldSize(SKIN, slow, 1);
    expect(read?.low90Mm).toBeCloseTo(60 * Math.exp((jStat.normal.inv(0.05, 0, 1) * 1.8) / 60), 2);
    const shrinking = foretoldSize(SKIN, { ...slow, kin: { ...KNOWN.kin, level: -0.5 } }, 1);
    expect(shrinking?.middleMm).toBe(60);
    expect(shrinking?.high50Mm).toBe(60);
  });

  it('tells nothing where the interval is too wide for a number', () => {
    expect(foretoldSize({ ...SKIN, lengthMm: 0.01, uncertaintyMm: 5 }, KNOWN, 1)).toBeNull();
  });

  it.each([
    // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239, females and large males of Centruroides gracilis.
    [[1.6, 2.25, 2.96, 3.93, 5.21, 6.65], 8.16],
    [[1.6, 2.25, 3.01, 3.98, 5.26, 6.85], 8.34],
    // Montezano DG et al. (2019) J. Agric. Sci. 11(8), Spodoptera frugiperda.
    [[0.35, 0.57, 0.87, 1.29, 1.89], 2.8],
  ])('holds the last instar of published series, foretold from those before', (lengthsMm, lastMm) => {
    const { lastSkin, growth } = beliefOn(stepsOf(lengthsMm), { numbered: true });
    const size = lastSkin && foretoldSize(lastSkin, growth, 1, CARAPACE);
    expect(size?.low90Mm).toBeLessThan(lastMm);
    expect(size?.high90Mm).toBeGreaterThan(lastMm);
  });
});

describe('how large the animal is now', () => {
  const row = stepsOf(lengthsOf(3, [1.28, 1.24, 1.3, 1.22]));
  const belief = beliefOn(row, { numbered: true });
  const skins = (spans: readonly (number | null)[]): SizesOfMolt[] =>
    row.map(({ moltId, lengthMm, uncertaintyMm }, index) => {
      const span = spans[index] ?? null;
      return {
        moltId,
        carapaceLengthMm: estimateFrom(lengthMm, uncertaintyMm),
        legFirstMm: null,
        legFourthMm: null,
        legSpanMm: span === null ? null : estimateFrom(span, 0.5),
      };
    });
  const now = (spans: readonly (number | null)[], of: GrowthBelief = belief) => {
    const ground = groundOfSize(skins(spans), of);
    return { carapace: carapaceNow(ground), span: spanNow(ground) };
  };

  it('is what the forecast says of the next skin, to the digit', () => {
    expect(now([]).carapace).toMatchObject({ ...sizeFrom(belief)?.nextSkin, moltsSince: { fewest: 1, most: 1 } });
    expect(now([]).span).toBeNull();
  });

  it('takes the latest skin with a span, as many molts back as it lies', () => {
    const { span } = now([null, 40, 50, null, null]);
    expect(span).toMatchObject({ moltId: row[2]?.moltId, lengthMm: 50, moltsSince: { fewest: 3, most: 3 } });
    const grown = (now([]).carapace?.middleMm ?? 0) / (row[2]?.lengthMm ?? 1);
    expect((span?.middleMm ?? 0) / 50).toBeCloseTo(grown, 1);
  });

  it('takes legs measured along their joints where they reach farther than the skin was laid', () => {
    const legs = (firstMm: number, fourthMm: number, spanMm: number | null) => {
      const laid = skins([null, null, null, null, spanMm]).map((skin, index) =>
        index < 4 ? skin : { ...skin, legFirstMm: estimateFrom(firstMm, 0.5), legFourthMm: estimateFrom(fourthMm, 0.5) },
      );
      return spanNow(groundOfSize(laid, belief));
    };
    expect(legs(54, 56, 94)).toEqual(legs(54, 56, null));
    expect(legs(54, 56, 94)?.lengthMm).toBe(110);
    expect(legs(54, 56, 118)?.lengthMm).toBe(118);
  });

  it('is not told from a span on a skin whose size is in doubt', () => {
    const doubted = { ...belief, places: belief.places.map((place, index) => ({ ...place, inDoubt: index === 4 })) };
    expect(now([null, null, null, 55, 62], doubted).span).toBeNull();
    expect(now([null, null, null, 55, null], doubted).span).not.toBeNull();
  });

  it('counts in how the skin lay: a span is known to no better than 15 %', () => {
    const { span, carapace } = now([null, null, null, null, 62]);
    const half = Math.log((span?.high90Mm ?? 0) / (span?.low90Mm ?? 1)) / 2;
    expect(half).toBeGreaterThan(1.6 * 0.15);
    expect(half).toBeGreaterThan(Math.log((carapace?.high90Mm ?? 0) / (carapace?.low90Mm ?? 1)));
  });

  it('reaches from the least to the most growth where it is open how many molts went by', () => {
    const open = { ...belief, places: belief.places.map((place) => ({ ...place, moltsSince: { fewest: 1, most: 3 } })) };
    const least = now([null, null, null, null, 62]).span;
    const span = now([null, null, null, null, 62], open).span;
    expect(span?.low90Mm).toBe(least?.low90Mm);
    expect((span?.high90Mm ?? 0) / (least?.high90Mm ?? 1)).toBeGreaterThan(1.4);
  });
});
