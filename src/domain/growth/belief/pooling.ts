import { COMMON_SCATTER_STEPS, type Group, lineOfAnyAnimal, type ModelPrior, PRIOR_WEIGHT, type Spreads } from '../priors.ts';
import { apartFromGroup, growTree, type KinLabels, type KinTree, spreadTheWord } from './kinTree.ts';
import { informed, NO_EVIDENCE } from './line.ts';
import type { StepObservation, WeighedReading } from './stepObservation.ts';
import { evidenceOfSteps, expectedScatter, probabilitiesOf, type StepProbabilities, weighedReadings } from './stepProbabilities.ts';

export interface PooledAnimal extends KinLabels {
  readonly steps: readonly StepObservation[];
  /** Variance of the instar number that `along` counts from; 0 where it is known. */
  readonly instarVariance: number;
}

/** What a cabinet says of one quantity, prepared once for all its animals. */
export interface Pool {
  readonly tree: KinTree;
  readonly spreads: Spreads;
  readonly scatterVariance: number;
  /** Share of steps that hold a molt more than is on record. */
  readonly unseen: number;
  readonly own: ReadonlyMap<string, OwnSteps>;
}

/** What an animal's own steps came to. */
export interface OwnSteps {
  readonly rows: readonly WeighedReading[];
  readonly probabilities: StepProbabilities;
  /** Mean of what is believed of single steps of this animal, and what this is worth. */
  readonly scatterVariance: number;
  readonly degreesOfFreedom: number;
}

const ROUNDS = 8;

/**
 * Partial pooling over siblings, species, genus and family by empirical Bayes: each line lies about its group's, and how far, as
 * well as the scatter of single steps and the share of unseen molts, is told from the cabinet itself (expectation maximization,
 * Dempster et al. 1977, J. R. Stat. Soc. B 39:1-38; variance components: Laird & Ware 1982, Biometrics 38:963-974), held near
 * the prior where the cabinet is small. Every round visits every step once.
 */
export function pool(animals: readonly PooledAnimal[], prior: ModelPrior): Pool {
  const assumed = new Map(animals.map(({ specimenId, instarVariance }) => [specimenId, instarVariance * prior.family.trend ** 2]));
  const tree = growTree(animals, prior.family, (specimenId) => assumed.get(specimenId) ?? 0);
  let { spreads, scatterVariance, unseen } = prior;
  // Judged by what any tarantula does at first: taken at its word at first, a row that misses molts would keep to a wrong line.
  const anyAnimal = { prior: lineOfAnyAnimal(prior), evidence: NO_EVIDENCE, scatterVariance, unseen };
  let members = animals.flatMap(({ specimenId, steps }) => {
    const node = tree.animals.get(specimenId);
    return node ? [{ specimenId, steps, node, probabilities: probabilitiesOf(steps, [], anyAnimal) }] : [];
  });
  const tellKin = () => {
    for (const { node, steps, probabilities } of members) node.evidence = evidenceOfSteps(steps, probabilities, scatterVariance);
    spreadTheWord(tree, prior.family, spreads);
  };
  for (let round = 0; round < ROUNDS; round += 1) {
    tellKin();
    const scatter = new Tally();
    const hidden = new Tally();
    members = members.map((member) => {
      const { steps, node } = member;
      const { prior: kin, evidence } = node;
      const probabilities = probabilitiesOf(steps, member.probabilities, { prior: kin, evidence, scatterVariance, unseen });
      const belief = informed(kin, evidence);
      for (const [index, step] of steps.entries()) {
        const ofReadings = probabilities[index] ?? [];
        scatter.add(expectedScatter(step, ofReadings, belief, scatterVariance));
        hidden.add(1 - (ofReadings[0] ?? 1));
      }
      return { ...member, probabilities };
    });
    spreads = spreadsFrom(tree, spreads, prior.spreads);
    scatterVariance = scatter.mean(prior.scatterVariance, PRIOR_WEIGHT.scatter);
    unseen = hidden.mean(prior.unseen, PRIOR_WEIGHT.unseen);
  }
  tellKin();
  const own = new Map(members.map(({ specimenId, ...member }) => [specimenId, ownSteps(member, scatterVariance)]));
  return { tree, spreads, scatterVariance, unseen, own };
}

function spreadsFrom(tree: KinTree, spreads: Spreads, prior: Spreads): Spreads {
  const next = (group: Group) => {
    const level = new Tally();
    const trend = new Tally();
    for (const node of tree.levels[group]) {
      // What nobody has seen grow says nothing of how far lines lie apart.
      if (node.ownSpread > 0 || node.evidence.level === 0) continue;
      const apart = apartFromGroup(node, spreads);
      level.add(apart.level ** 2 + apart.levelVariance);
      trend.add(apart.trend ** 2 + apart.trendVariance);
    }
    return {
      levelVariance: level.mean(prior[group].levelVariance, PRIOR_WEIGHT.spread),
      trendVariance: trend.mean(prior[group].trendVariance, PRIOR_WEIGHT.spread),
    };
  };
  return { genus: next('genus'), species: next('species'), clutch: next('clutch'), animal: next('animal') };
}

interface Member {
  readonly node: KinTree['root'];
  readonly steps: readonly StepObservation[];
  readonly probabilities: StepProbabilities;
}

/**
 * The scatter of animals lies about the cabinet's as an inverse chi-squared variable of mean s^2 (Gelman et al. 2013, Bayesian
 * Data Analysis, 2.6; from memory): such a variable with v degrees of freedom has the mean v / (v - 2) times its scale, so steps
 * that weigh k in the mean leave k + 2 degrees of freedom.
 */
function ownSteps({ node, steps, probabilities }: Member, scatterVariance: number): OwnSteps {
  const belief = informed(node.prior, node.evidence);
  const squares = steps.reduce((sum, step, index) => sum + expectedScatter(step, probabilities[index] ?? [], belief, scatterVariance), 0);
  const weight = COMMON_SCATTER_STEPS + steps.length;
  return {
    rows: weighedReadings(steps, probabilities, scatterVariance),
    probabilities,
    scatterVariance: (COMMON_SCATTER_STEPS * scatterVariance + squares) / weight,
    degreesOfFreedom: weight + 2,
  };
}

/** Mean of what was added, drawn to a prior worth so many. */
class Tally {
  private sum = 0;
  private count = 0;

  add(value: number): void {
    this.sum += value;
    this.count += 1;
  }

  mean(prior: number, weight: number): number {
    return (this.sum + prior * weight) / (this.count + weight);
  }
}
