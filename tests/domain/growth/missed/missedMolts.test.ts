import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { MeasuredStep } from '../../../../src/domain/growth/measuredStep.ts';
import { growthSteps } from '../../../../src/domain/growth/measuredStep.ts';
import { CROSBY_FALSE_ALARMS, crosbyValues } from '../../../../src/domain/growth/missed/crosby.ts';
import { checkMissedMolts, MissedMoltCheck } from '../../../../src/domain/growth/missed/missedMolts.ts';
import { simulateSkins, USUAL_GROWTH } from '../../../../src/domain/growth/simulation/simulatedSkins.ts';
import { seededGenerator } from '../../../../src/domain/numerics/generator.ts';
import { beliefOn } from '../../../support/believedGrowth.ts';
import { tallyMissedMolts } from '../../../support/missedMoltTally.ts';
import { lengthsOf, stepsOf } from '../trend/sizes.ts';

// Sizes as published; the values of Crosby's criterion were worked out from them apart from this project.
const SERIES = {
  // Moreira VSS, Del-Claro K (2011) Zoologia 28:565-570.
  lagotis: [0.62, 0.97, 1.35, 1.76, 2.0, 2.47, 3.02, 3.47, 3.82, 4.43, 5.54],
  // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239.
  gracilisFemale: [1.6, 2.25, 2.96, 3.93, 5.21, 6.65, 8.16],
  gracilisMale: [1.6, 2.25, 3.01, 3.98, 5.26, 6.85, 8.34],
  // Lourenco WR, Goodman SM (2006) Zool. Anz. 244:181-185.
  hirtusFemale: [1.5, 2.0, 2.6, 3.3, 4.3, 6.1],
  hirtusMale: [1.4, 2.0, 2.5, 3.2, 3.7, 4.6],
  // Montezano DG et al. (2019) J. Agric. Sci. 11(8).
  frugiperda: [0.35, 0.57, 0.87, 1.29, 1.89, 2.8],
  // Great Lakes Entomologist 20(3), article 8 (abstract).
  pomonella: [0.33, 0.5, 0.82, 1.18, 1.55],
  // Nava DE et al. (2007) J. Appl. Entomol. 131:709-715.
  citri: [0.12, 0.18, 0.35, 0.44, 0.57],
} as const;

function crosbyOf(lengthsMm: readonly number[]) {
  return crosbyValues(growthSteps(stepsOf(lengthsMm)));
}

function without(lengthsMm: readonly number[], instar: number): number[] {
  return lengthsMm.filter((_, index) => index !== instar - 1);
}

describe("Crosby's criterion", () => {
  it.each([
    ['lagotis', ['-11.04', '-6.33', '-12.84', '8.68', '-1.00', '-6.02', '-4.19', '5.34', '7.84']],
    ['gracilisFemale', ['-6.45', '0.92', '-0.15', '-3.72', '-3.86']],
    ['gracilisMale', ['-4.87', '-1.16', '-0.05', '-1.46', '-6.51']],
    ['hirtusFemale', ['-2.50', '-2.37', '2.66', '8.87']],
    ['hirtusMale', ['-12.50', '2.40', '-9.67', '7.52']],
    ['frugiperda', ['-6.28', '-2.85', '-1.19', '1.12']],
    ['pomonella', ['8.24', '-12.25', '-8.72']],
    ['citri', ['29.63', '-35.35', '3.05']],
  ] as const)('gives the values of %s to the printed digits', (name, printed) => {
    const [first, ...others] = crosbyOf(SERIES[name]).map(({ percent }) => percent);
    expect(first).toBeNull();
    others.forEach((percent, index) => {
      expect(Math.abs((percent ?? Number.NaN) - Number(printed[index]))).toBeLessThan(0.0051);
    });
  });

  it.each([
    ['lagotis', 6, 32.88, -23.91],
    ['gracilisFemale', 4, 33.79, -27.48],
    ['frugiperda', 3, 38.97, -35.26],
  ] as const)('rises and falls where %s lost instar %i', (name, instar, rise, fall) => {
    const values = crosbyOf(without(SERIES[name], instar));
    const at = values.findIndex(({ looksLikeGap }) => looksLikeGap);
    expect(at).toBe(instar - 2);
    expect(values[at]?.percent).toBeCloseTo(rise, 2);
    expect(values[at + 1]?.percent).toBeCloseTo(fall, 2);
    expect(values.filter(({ looksLikeGap }) => looksLikeGap)).toHaveLength(1);
  });

  it.each([
    [1.26, 26.0, -20.63],
    [1.3, 30.0, -23.08],
    [1.38, 38.0, -27.54],
    [1.5, 50.0, -33.33],
  ])('is 100 (r - 1) and then -100 (1 - 1 / r) at a gap in a perfect progression of %f', (ratio, rise, fall) => {
    const values = crosbyOf(lengthsOf(2, [ratio, ratio ** 2, ratio]));
    expect(values[1]?.percent).toBeCloseTo(rise, 2);
    expect(values[2]?.percent).toBeCloseTo(fall, 2);
    expect(values[1]?.looksLikeGap).toBe(true);
  });

  it('raises the false alarms it is known for, in series with nothing missing', () => {
    const computed = [SERIES.lagotis, SERIES.hirtusMale, SERIES.pomonella, SERIES.citri].map((series) =>
      crosbyOf(series).flatMap(({ percent, beyondLimit }) => (beyondLimit && percent !== null ? [Number(percent.toFixed(2))] : [])),
    );
    expect(computed).toEqual(CROSBY_FALSE_ALARMS.map(({ percents }) => percents));
  });

  it('takes the ratio per instar across a gap that is on record', () => {
    const gapped = stepsOf(lengthsOf(2, [1.3, 1.3, 1.3, 1.3])).filter(({ step }) => step !== 3);
    for (const { percent, beyondLimit } of crosbyValues(growthSteps(gapped))) {
      expect(percent ?? 0).toBeCloseTo(0, 10);
      expect(beyondLimit).toBe(false);
    }
  });
});

/** As a cabinet would believe it: each skin's instar noted. */
function checked(sizes: readonly MeasuredStep[], kin: readonly (readonly MeasuredStep[])[] = []): MissedMoltCheck[] {
  return checkMissedMolts(sizes, beliefOn(sizes, { kin, numbered: true }).steps);
}

describe('checkMissedMolts', () => {
  it.each([
    ['gracilisFemale', 4],
    ['frugiperda', 3],
  ] as const)('calls a molt likely missed where %s lost instar %i, and nowhere else', (name, instar) => {
    const checks = checked(stepsOf(without(SERIES[name], instar)));
    expect(checks.map(({ suggestedSkipped }) => suggestedSkipped)).toEqual(checks.map((_, index) => (index === instar - 2 ? 1 : 0)));
    expect(checks[instar - 2]?.verdict).toBe('likely');
    expect(checks[instar - 2]?.probabilities[1]).toBeGreaterThan(0.9);
  });

  it('finds the instar that Aglaoctenus lagotis lost, although its ratios fall', () => {
    const check = checked(stepsOf(without(SERIES.lagotis, 6)))[4];
    expect(check?.verdict).toBe('likely');
    expect(check?.suggestedSkipped).toBe(1);
  });

  it.each(['gracilisFemale', 'gracilisMale', 'hirtusFemale', 'hirtusMale', 'frugiperda', 'pomonella'] as const)(
    'misses nothing in the complete series of %s',
    (name) => {
      expect(checked(stepsOf(SERIES[name])).every(({ suggestedSkipped }) => suggestedSkipped === 0)).toBe(true);
    },
  );

  it('calls an alarm of the classical criterion alone irregular', () => {
    const checks = checked(stepsOf(SERIES.hirtusMale));
    expect(checks[1]).toMatchObject({ crosbyAlarm: true, verdict: 'irregular', suggestedSkipped: 0 });
  });

  // Complete series that end all the same with a suggestion: Diaphorina citri grows as a row with a gap does, and the first molts of
  // Aglaoctenus lagotis grow much more than its later ones. What is known to be wrong stays pinned, so that it is seen to change.
  it.each([
    ['citri', [1], 'likely'],
    ['lagotis', [0], 'possible'],
  ] as const)('suggests in the complete series of %s what is not missing', (name, at, verdict) => {
    const checks = checked(stepsOf(SERIES[name]));
    const suggested = checks.flatMap(({ suggestedSkipped }, index) => (suggestedSkipped > 0 ? [index] : []));
    expect(suggested).toEqual(at);
    expect(checks[suggested[0] ?? -1]?.verdict).toBe(verdict);
  });

  it('raises no alarm for a change that the readings do not show', () => {
    const lengths = [10, 12.5, 15.6, 21.4];
    const alarms = (uncertaintyMm: number) =>
      crosbyValues(growthSteps(lengths.map((lengthMm, step) => ({ moltId: `${step}`, step, lengthMm, uncertaintyMm })))).map(
        ({ beyondLimit }) => beyondLimit,
      );
    // c = +9.9 % of the third ratio; with u = 1 mm the sizes tell nothing of it.
    expect(
      crosbyValues(growthSteps(lengths.map((lengthMm, step) => ({ moltId: `${step}`, step, lengthMm, uncertaintyMm: 0 }))))[2]?.percent,
    ).toBeCloseTo(9.92, 2);
    expect(alarms(0.01)).toEqual([false, false, false]);
    lengths[3] = 22;
    expect(alarms(0.01)).toEqual([false, false, true]);
    expect(alarms(1)).toEqual([false, false, false]);
  });

  it('tells a gap once: the fall just after it is no irregularity of its own', () => {
    for (const [name, instar] of [
      ['gracilisFemale', 4],
      ['frugiperda', 3],
      ['lagotis', 6],
    ] as const) {
      const checks = checked(stepsOf(without(SERIES[name], instar)));
      expect(checks[instar - 1]).toMatchObject({ crosbyAlarm: true, verdict: 'none' });
    }
  });

  it('cannot tell two skins, yet learns from kin', () => {
    const two = stepsOf(lengthsOf(4, [1.25 ** 2]));
    expect(checked(two)[0]?.verdict).not.toBe('likely');
    const alone = checked(two)[0]?.probabilities[0] ?? Number.NaN;
    const kin = (ratio: number) => Array.from({ length: 4 }, () => stepsOf(lengthsOf(3, [ratio, ratio, ratio])));
    expect(checked(two, kin(1.25))[0]?.probabilities[0]).toBeLessThan(alone);
    expect(checked(two, kin(1.55))[0]?.probabilities[0]).toBeGreaterThan(0.9);
  });

  it('suggests two where two are gone', () => {
    const checks = checked(stepsOf(lengthsOf(1.5, [1.3, 1.3, 1.3, 1.3 ** 3, 1.3, 1.3, 1.3])));
    expect(checks[3]).toMatchObject({ verdict: 'likely', suggestedSkipped: 2 });
  });

  it('has nothing more to suggest once the gap is on record', () => {
    const whole = stepsOf(lengthsOf(1.5, [1.3, 1.3, 1.3, 1.3, 1.3, 1.3]));
    expect(checked(whole.filter(({ step }) => step !== 4)).every(({ suggestedSkipped }) => suggestedSkipped === 0)).toBe(true);
  });

  it('says what the schema says, with probabilities that sum to one, whatever the sizes', () => {
    const length = fc.double({ min: 0.05, max: 100, noNaN: true });
    fc.assert(
      fc.property(fc.array(length, { maxLength: 12 }), fc.double({ min: 0, max: 0.2, noNaN: true }), (lengthsMm, uncertainty) => {
        for (const check of checked(stepsOf(lengthsMm, 0, uncertainty))) {
          expect(MissedMoltCheck.parse(check)).toEqual(check);
          expect(check.probabilities.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('missed molts of 1,000 simulated animals, ratio 1.25, spread 0.05, reading error 1 %, one skin in ten lost', () => {
  const tally = tallyMissedMolts(USUAL_GROWTH, 1000, seededGenerator(20_261_125));

  it('are found in four of five', () => {
    expect(tally.gaps).toBeGreaterThan(500);
    expect(tally.recall).toBeGreaterThan(0.8);
  });

  it('are suggested without one in fewer than one step of a hundred, and called likely in fewer than one of a thousand', () => {
    expect(tally.falseAlarms).toBeLessThan(0.01);
    expect(tally.falseLikely).toBeLessThan(0.001);
  });

  it('would be found by the classical criterion no oftener, with far more false alarms', () => {
    expect(tally.crosbyRecall).toBeLessThan(tally.recall);
    expect(tally.crosbyFalseAlarms).toBeGreaterThan(0.1);
  });
});

describe('missed molts in rows of four skins, three of ten lost', () => {
  const SHORT = { ...USUAL_GROWTH, skins: 4, missed: 0.3 };
  /** Three siblings or four of four skins each, the first `hiding` of them with a molt between that nobody knows of. */
  const recallWith = (siblings: number, hiding: number): number => {
    const draw = seededGenerator(6);
    const kinOf = () =>
      Array.from({ length: siblings }, (_, sibling) => {
        const isHiding = sibling < hiding;
        const whole = simulateSkins({ ...USUAL_GROWTH, skins: isHiding ? 5 : 4, missed: 0 }, draw).sizes;
        return whole.filter((_, index) => !isHiding || index !== 2).map((size, step) => ({ ...size, step }));
      });
    return tallyMissedMolts(SHORT, 1000, seededGenerator(5), kinOf).recall;
  };
  const alone = recallWith(0, 0);

  it('are found more often beside twelve steps of kin', () => {
    expect(recallWith(4, 0)).toBeGreaterThan(alone + 0.05);
  });

  it('are not hidden by kin that miss molts of their own', () => {
    // Taken at their word, three of twelve such steps halved what was found without kin.
    expect(recallWith(4, 3)).toBeGreaterThan(alone);
  });
});
