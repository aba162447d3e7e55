import { inverse, Matrix } from 'ml-matrix';
import { describe, expect, it } from 'vitest';
import { growTree, type KinLabels, spreadTheWord } from '../../../../src/domain/growth/belief/kinTree.ts';
import { evidenceOf, type LineBelief, MIDDLE_INSTAR, NO_EVIDENCE, plus } from '../../../../src/domain/growth/belief/line.ts';
import { kinShares } from '../../../../src/domain/growth/belief/shares.ts';
import { INTERVAL_PRIOR } from '../../../../src/domain/growth/priors.ts';
import { normalDeviate, seededGenerator } from '../../../../src/domain/numerics/generator.ts';

const ANIMALS: readonly KinLabels[] = [
  { specimenId: 'a', taxon: 'Brachypelma hamorii', eggSacGroup: 'sac 1' },
  { specimenId: 'b', taxon: 'Brachypelma hamorii', eggSacGroup: 'Sac 1' },
  { specimenId: 'c', taxon: 'Brachypelma hamorii', eggSacGroup: null },
  { specimenId: 'd', taxon: 'Brachypelma boehmei', eggSacGroup: 'sac 1' },
  { specimenId: 'e', taxon: 'Brachypelma sp.', eggSacGroup: null },
  { specimenId: 'f', taxon: 'Brachypelma sp.', eggSacGroup: null },
  { specimenId: 'g', taxon: 'Grammostola pulchra', eggSacGroup: null },
  { specimenId: 'h', taxon: '', eggSacGroup: null },
];

/** How many groups two animals share, from the family down, read off the labels by hand. */
const SHARED: Readonly<Record<string, number>> = {
  ab: 3,
  ac: 2,
  bc: 2,
  ad: 1,
  bd: 1,
  cd: 1,
  ae: 1,
  be: 1,
  ce: 1,
  de: 1,
  af: 1,
  bf: 1,
  cf: 1,
  df: 1,
  ef: 1,
};

describe('spreadTheWord', () => {
  const draw = seededGenerator(3);
  const observed = ANIMALS.flatMap(({ specimenId }, animal) =>
    Array.from({ length: animal % 4 }, (_, index) => ({
      specimenId,
      along: 2 + index * 2,
      value: 4 + normalDeviate(draw),
      variance: 0.09,
    })),
  );
  const { family, spreads } = INTERVAL_PRIOR;
  const tree = growTree(ANIMALS, family, () => 0);
  for (const { specimenId, along, value, variance } of observed) {
    const node = tree.animals.get(specimenId);
    if (node) node.evidence = plus(node.evidence, evidenceOf(along, value, 1 / variance));
  }
  spreadTheWord(tree, family, spreads);

  /** The whole joint normal distribution written out, and conditioned by matrices. */
  function byMatrices(wanted: string): LineBelief {
    const others = observed.filter(({ specimenId }) => specimenId !== wanted);
    const covarianceOf = (one: string, other: string, kind: 'levelVariance' | 'trendVariance'): number => {
      const shared = one === other ? 4 : (SHARED[[one, other].sort().join('')] ?? 0);
      const groups = (['genus', 'species', 'clutch', 'animal'] as const).slice(0, shared);
      return family[kind] + groups.reduce((sum, group) => sum + spreads[group][kind], 0);
    };
    const between = (one: { specimenId: string; x: readonly [number, number] }, other: typeof one): number =>
      one.x[0] * other.x[0] * covarianceOf(one.specimenId, other.specimenId, 'levelVariance') +
      one.x[1] * other.x[1] * covarianceOf(one.specimenId, other.specimenId, 'trendVariance');
    const rows = others.map(({ specimenId, along }) => ({ specimenId, x: [1, along - MIDDLE_INSTAR] as const }));
    const targets = [
      { specimenId: wanted, x: [1, 0] as const },
      { specimenId: wanted, x: [0, 1] as const },
    ];
    const weights = inverse(
      new Matrix(rows.map((one, i) => rows.map((other, j) => between(one, other) + (i === j ? (others[i]?.variance ?? 0) : 0)))),
    );
    const cross = new Matrix(targets.map((target) => rows.map((row) => between(target, row))));
    const residuals = Matrix.columnVector(others.map(({ value, along }) => value - family.level - family.trend * (along - MIDDLE_INSTAR)));
    const pull = cross.mmul(weights).mmul(residuals);
    const left = Matrix.sub(
      new Matrix(targets.map((one) => targets.map((other) => between(one, other)))),
      cross.mmul(weights).mmul(cross.transpose()),
    );
    return {
      level: family.level + pull.get(0, 0),
      trend: family.trend + pull.get(1, 0),
      levelVariance: left.get(0, 0),
      covariance: left.get(0, 1),
      trendVariance: left.get(1, 1),
    };
  }

  it.each(ANIMALS.map(({ specimenId }) => specimenId))(
    'tells animal %s of its kin what the joint distribution of all tells',
    (specimenId) => {
      const expected = byMatrices(specimenId);
      const prior = tree.animals.get(specimenId)?.prior;
      for (const key of ['level', 'trend', 'levelVariance', 'covariance', 'trendVariance'] as const) {
        expect(prior?.[key]).toBeCloseTo(expected[key], 9);
      }
    },
  );

  it('names whom the weight comes from', () => {
    const sharesOf = (specimenId: string) => {
      const node = tree.animals.get(specimenId);
      if (!node) throw new Error('Expected the animal to be in the tree');
      return kinShares(node, 5);
    };
    for (const { specimenId } of ANIMALS) {
      expect(Object.values(sharesOf(specimenId)).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    }
    expect(sharesOf('a').siblings).toBeGreaterThan(0.2);
    expect(sharesOf('c').siblings).toBe(0);
    expect(sharesOf('c').species).toBeGreaterThan(0);
    expect(sharesOf('e')).toMatchObject({ siblings: 0, species: 0 });
    expect(sharesOf('e').genus).toBeGreaterThan(0);
    expect(sharesOf('h')).toMatchObject({ siblings: 0, species: 0, genus: 0 });
  });

  it('leaves the prior to an animal alone', () => {
    const alone = growTree([{ specimenId: 'x', taxon: '', eggSacGroup: null }], family, () => 0);
    spreadTheWord(alone, family, spreads);
    expect(alone.root.evidence).toEqual(NO_EVIDENCE);
    expect(alone.animals.get('x')?.prior.level).toBe(family.level);
  });
});
