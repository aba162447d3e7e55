import { linearRegression } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { fitAllometry } from '../../../../src/domain/growth/legs/allometry.ts';
import { type LegSize, legSizesOf, partnerOf } from '../../../../src/domain/growth/legs/legSizes.ts';
import { regrowthOf } from '../../../../src/domain/growth/legs/regrowth.ts';
import { LEG_IDS } from '../../../../src/domain/measuring/landmarks.ts';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { quantity, skinReading } from '../skins.ts';

function skin(carapaceMm: number, legMm: number | null) {
  return {
    carapaceLengthMm: estimateFrom(carapaceMm, 0.05),
    legFirstMm: legMm === null ? null : estimateFrom(legMm, 0.1),
    legFourthMm: null,
  };
}

function legs(sizes: Partial<Record<LegSize['leg'], number | 'missing' | readonly ['regenerated', number]>>): LegSize[] {
  return LEG_IDS.map((leg) => {
    const size = sizes[leg];
    if (size === undefined) return { leg, state: 'not-measured', lengthMm: null };
    if (size === 'missing') return { leg, state: 'missing', lengthMm: null };
    return typeof size === 'number'
      ? { leg, state: 'whole', lengthMm: estimateFrom(size, 0.1) }
      : { leg, state: 'regenerated', lengthMm: estimateFrom(size[1], 0.1) };
  });
}

describe('legSizesOf', () => {
  it('tells whole, regenerated, missing and unmeasured legs apart', () => {
    const sizes = legSizesOf([
      skinReading(
        'p',
        [quantity('leg-L1', 39, 0.3), quantity('leg-R1', 20, 0.3, { flags: ['regenerated'] })],
        [
          { name: 'leg-R4', reason: 'missing' },
          { name: 'leg-L4', reason: 'not-visible' },
        ],
      ),
    ]);
    expect(sizes.map(({ leg, state, lengthMm }) => [leg, state, lengthMm?.value ?? null])).toEqual([
      ['L1', 'whole', 39],
      ['L2', 'not-measured', null],
      ['L3', 'not-measured', null],
      ['L4', 'not-measured', null],
      ['R1', 'regenerated', 20],
      ['R2', 'not-measured', null],
      ['R3', 'not-measured', null],
      ['R4', 'missing', null],
    ]);
  });

  it('pairs legs across the body', () => {
    expect(LEG_IDS.map(partnerOf)).toEqual(['R1', 'R2', 'R3', 'R4', 'L1', 'L2', 'L3', 'L4']);
  });
});

describe('regrowthOf', () => {
  it('follows a leg from its loss until it matches its partner', () => {
    const [regrowth, ...others] = regrowthOf([
      { moltId: 'a', legs: legs({ L1: 20, R1: 20 }) },
      { moltId: 'b', legs: legs({ L1: 'missing', R1: 26 }) },
      { moltId: 'c', legs: legs({ L1: ['regenerated', 17], R1: 34 }) },
      { moltId: 'd', legs: legs({ L1: ['regenerated', 35.2], R1: 44 }) },
      { moltId: 'e', legs: legs({ L1: 55, R1: 55 }) },
    ]);
    expect(others).toEqual([]);
    expect(regrowth).toMatchObject({ leg: 'L1', partner: 'R1' });
    expect(regrowth?.stages.map(({ moltId, state }) => [moltId, state])).toEqual([
      ['b', 'missing'],
      ['c', 'regenerated'],
      ['d', 'regenerated'],
      ['e', 'whole'],
    ]);
    expect(regrowth?.stages.map(({ share }) => share && Number(share.value.toFixed(3)))).toEqual([null, 0.5, 0.8, 1]);
    expect(regrowth?.stages.map(({ gained }) => gained && Number(gained.toFixed(3)))).toEqual([null, 0.5, 0.3, 0.2]);
    // Relative uncertainties in quadrature (JCGM 100:2008, 5.1.6).
    expect(regrowth?.stages[1]?.share?.standardUncertainty).toBeCloseTo(0.5 * Math.hypot(0.1 / 17, 0.1 / 34), 12);
    expect(regrowth?.stages.some(({ unusual }) => unusual)).toBe(false);
  });

  it('does not measure against a partner that grows back as well', () => {
    const both = regrowthOf([{ moltId: 'a', legs: legs({ L4: ['regenerated', 10], R4: ['regenerated', 12] }) }]);
    expect(both.map(({ leg, stages }) => [leg, stages[0]?.share])).toEqual([
      ['L4', null],
      ['R4', null],
    ]);
  });

  it('marks a share that is unusual', () => {
    expect(regrowthOf([{ moltId: 'a', legs: legs({ L2: ['regenerated', 5], R2: 20 }) }])[0]?.stages[0]?.unusual).toBe(true);
    expect(regrowthOf([{ moltId: 'a', legs: legs({ L2: ['regenerated', 19], R2: 20 }) }])[0]?.stages[0]?.unusual).toBe(true);
  });

  it('has nothing to follow in whole legs', () => {
    expect(regrowthOf([{ moltId: 'a', legs: legs({ L1: 20, R1: 19 }) }])).toEqual([]);
  });
});

describe('fitAllometry', () => {
  const skins = [skin(5, 12.1), skin(6.4, 16.1), skin(8.2, 20.3), skin(10.4, 27)];

  it('is the regression of the logarithms, as simple-statistics gives it', () => {
    const reference = linearRegression(skins.map((one) => [Math.log(one.carapaceLengthMm.value), Math.log(one.legFirstMm?.value ?? 0)]));
    const fit = fitAllometry(skins, 'legFirstMm');
    expect(fit?.exponent).toBeCloseTo(reference.m, 10);
    expect(fit?.intercept).toBeCloseTo(reference.b, 10);
    expect(fit?.growth).toBe('alike');
  });

  it('finds the exponent of legs that grow faster or more slowly than the carapace', () => {
    const grown = (k: number) => [5, 6.5, 8, 11].map((carapaceMm) => skin(carapaceMm, 2.6 * carapaceMm ** k));
    expect(fitAllometry(grown(1.2), 'legFirstMm')).toMatchObject({ growth: 'leg-faster' });
    expect(fitAllometry(grown(0.9), 'legFirstMm')).toMatchObject({ growth: 'leg-slower' });
    expect(fitAllometry(grown(1), 'legFirstMm')).toMatchObject({ growth: 'alike' });
    expect(fitAllometry(grown(1.2), 'legFirstMm')?.exponent).toBeCloseTo(1.2, 10);
  });

  it('knows no exponent better than the readings do, though the legs lie on one line', () => {
    const onLine = [5, 6.5, 8, 11].map((carapaceMm) => skin(carapaceMm, 2.6 * carapaceMm));
    const x = [5, 6.5, 8, 11].map(Math.log);
    const middle = x.reduce((sum, one) => sum + one, 0) / 4;
    const squares = x.reduce((sum, one) => sum + (one - middle) ** 2, 0);
    // JCGM 100:2008, 5.1.2, written out: u(ln leg) = 0.1 / leg, u(ln carapace) = 0.05 / carapace, k = 1.
    const u = Math.hypot(...x.map((one) => ((one - middle) / squares) * Math.hypot(0.1 / (2.6 * Math.exp(one)), 0.05 / Math.exp(one))));
    const fit = fitAllometry(onLine, 'legFirstMm');
    expect(fit?.exponentHigh95).toBeCloseTo(1 + 1.96 * u, 6);
    expect(fit?.exponentLow95).toBeCloseTo(1 - 1.96 * u, 6);
  });

  it('says nothing of too few skins, of carapaces of one size, or of a leg that is gone', () => {
    expect(fitAllometry(skins.slice(0, 2), 'legFirstMm')).toBeNull();
    expect(fitAllometry([skin(8, 20), skin(8, 20.4), skin(8, 20.2)], 'legFirstMm')).toBeNull();
    expect(fitAllometry([skin(5, 12), skin(6, null), skin(8, 20)], 'legFirstMm')).toBeNull();
    expect(fitAllometry(skins, 'legFourthMm')).toBeNull();
  });
});
