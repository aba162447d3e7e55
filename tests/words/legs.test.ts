import { describe, expect, it } from 'vitest';
import type { LegAllometry } from '../../src/domain/growth/legs/allometry.ts';
import type { LegSize } from '../../src/domain/growth/legs/legSizes.ts';
import { regrowthOf } from '../../src/domain/growth/legs/regrowth.ts';
import { estimateFrom } from '../../src/domain/measuring/quantity.ts';
import { foretoldInWords, notForetoldInWords, sizeNowInWords } from '../../src/words/animalNow.ts';
import { allometryInWords, stageInWords } from '../../src/words/legs.ts';

type State = LegSize['state'];

/** What is said of leg I left, skin by skin: its state, its length and that of its partner. */
function saidOf(...skins: readonly (readonly [State, number | null, number | null])[]): string[] {
  const [regrowth] = regrowthOf(
    skins.map(([state, ownMm, partnerMm], index) => ({
      moltId: String(index + 5),
      legs: [
        { leg: 'L1', state, lengthMm: ownMm === null ? null : estimateFrom(ownMm, 0.1) },
        {
          leg: 'R1',
          state: partnerMm === null ? 'not-measured' : 'whole',
          lengthMm: partnerMm === null ? null : estimateFrom(partnerMm, 0.1),
        },
      ],
    })),
  );
  if (!regrowth) throw new Error('Expected a leg that grows back');
  const { stages, partner } = regrowth;
  return stages.map((stage, index) => stageInWords(stage, stages[index - 1], partner, (moltId) => `Instar ${moltId}`));
}

describe('stageInWords', () => {
  it('follows a leg from its loss until it is no longer noted, each share against the other side', () => {
    expect(saidOf(['missing', null, 26], ['regenerated', 17, 34], ['regenerated', 35.2, 44], ['whole', 55, 55])).toEqual([
      'missing',
      'regenerated, 50.00 ± 0.66 % of leg I right; missing on the skin of instar 5, regrown since',
      'regenerated, 80.00 ± 0.58 % of leg I right; 30 percentage points more than on the skin of instar 6',
      'no longer noted as regenerated, 100.00 ± 0.51 % of leg I right; 20 percentage points more than on the skin of instar 7',
    ]);
  });

  it('names the skin that it compares with where one between does not show the leg', () => {
    expect(saidOf(['regenerated', 17, 34], ['not-measured', null, 40], ['regenerated', 35.2, 44])[1]).toMatch(
      /30 percentage points more than on the skin of instar 5$/,
    );
  });

  it('tells a share that fell, one that stayed, and one point', () => {
    const [, fell, stayed, one] = saidOf(
      ['regenerated', 24, 40],
      ['regenerated', 20, 40],
      ['regenerated', 20, 40],
      ['regenerated', 20.4, 40],
    );
    expect(fell).toMatch(/; 10 percentage points less than on the skin of instar 5$/);
    expect(stayed).toMatch(/; as on the skin of instar 6$/);
    expect(one).toMatch(/; 1 percentage point more than on the skin of instar 7$/);
  });

  it('gives no share that is known to no better than half of itself, nor what was won since', () => {
    const lengths = (ownMm: number, partnerMm: number, uncertaintyMm: number): LegSize[] => [
      { leg: 'L1', state: 'regenerated', lengthMm: estimateFrom(ownMm, uncertaintyMm) },
      { leg: 'R1', state: 'whole', lengthMm: estimateFrom(partnerMm, uncertaintyMm) },
    ];
    const [regrowth] = regrowthOf([
      { moltId: '5', legs: lengths(17, 34, 9) },
      { moltId: '6', legs: lengths(30, 40, 0.1) },
    ]);
    const [rough, fine] = regrowth?.stages ?? [];
    if (!rough || !fine) throw new Error('Expected two stages');
    expect(rough.unusual).toBe(false);
    const nameOf = (moltId: string) => `Instar ${moltId}`;
    expect(stageInWords(rough, undefined, 'R1', nameOf)).toBe(
      'regenerated; how much of leg I right it is cannot be told: the two lengths are known too badly for that',
    );
    expect(stageInWords(fine, rough, 'R1', nameOf)).toBe('regenerated, 75.00 ± 0.63 % of leg I right');
  });

  it('gives no share without a partner to compare, and asks to look again where it is unusual', () => {
    expect(saidOf(['regenerated', 17, null])).toEqual(['regenerated; no share, since it or leg I right has no length to compare']);
    expect(saidOf(['regenerated', 8, 40])[0]).toMatch(/Unusual for a regenerated leg: look at its points and at the note again$/);
  });
});

describe('allometryInWords', () => {
  const fit: LegAllometry = {
    skins: 5,
    intercept: 0.4,
    exponent: 1.12,
    exponentLow95: 1.04,
    exponentHigh95: 1.2,
    rSquared: 0.99,
    growth: 'leg-faster',
  };

  it('says which grows faster, with the exponent, its interval and how many skins tell', () => {
    expect(allometryInWords('Leg I', fit)).toBe(
      'Leg I grows faster than the carapace: it becomes longer for the size of the animal (exponent 1.12, 95 % interval 1.04 to 1.20, from 5 skins).',
    );
    expect(allometryInWords('Leg IV', { ...fit, growth: 'leg-slower' })).toMatch(/^Leg IV grows slower than the carapace/);
  });

  it('claims no sameness that the skins do not show, and says what is wanted without a fit', () => {
    expect(allometryInWords('Leg I', { ...fit, exponentLow95: -0.3, growth: 'alike' })).toMatch(
      /in step with the carapace, as far as these skins can tell \(exponent 1\.12, 95 % interval −0\.30 to 1\.20/,
    );
    expect(allometryInWords('Leg I', null)).toMatch(/from three skins up that show both/);
  });
});

describe('the living animal now', () => {
  it('has each size with its interval, and as many decimals as its width lets stand', () => {
    expect(sizeNowInWords({ middleMm: 19.53, low90Mm: 18.24, high90Mm: 20.96 })).toBe('about 19.5 mm, nine chances in ten 18.2 to 21.0 mm');
    expect(sizeNowInWords({ middleMm: 2.314, low90Mm: 2.251, high90Mm: 2.38 })).toBe('about 2.31 mm, nine chances in ten 2.25 to 2.38 mm');
    expect(sizeNowInWords({ middleMm: 127.7, low90Mm: 112.6, high90Mm: 144.8 })).toBe('about 128 mm, nine chances in ten 113 to 145 mm');
  });

  it('says that the skin shows the instar that has ended, and what is missing for a size', () => {
    expect(foretoldInWords('Juniper', 'Instar 9')).toMatch(/^Instar 9 is the instar that ended with the last molt.*not measured\. /);
    expect(notForetoldInWords('leg span')).toMatch(/no skin whose place in the row is known shows a leg span/);
  });
});
