import { eggSacOf, type KinLabel, namesOf } from '../kin.ts';
import { GROUPS, type Group, type Spreads } from '../priors.ts';
import { type Evidence, informed, type LineBelief, loosened, minus, NO_EVIDENCE, plus, type Spread, softened } from './line.ts';

export interface KinLabels extends KinLabel {
  readonly specimenId: string;
}

/** One group or animal in the tree; what it knows is written anew in each round. */
export interface KinNode {
  readonly group: Group | 'family';
  readonly parent: KinNode | null;
  /** Of an animal its own observations; of a group what its members say of its line. */
  evidence: Evidence;
  /** What this node says of its parent's line. */
  message: Evidence;
  /** About this node's line, by everything but its own evidence. */
  prior: LineBelief;
  /** An animal whose instars are only assumed lies further from its kin. */
  readonly ownSpread: number;
}

export interface KinTree {
  readonly root: KinNode;
  /** From the genera down to the animals, in the order of `GROUPS`. */
  readonly levels: Readonly<Record<Group, readonly KinNode[]>>;
  readonly animals: ReadonlyMap<string, KinNode>;
}

/**
 * Family, genera, species, clutches, animals. Animals without a name of their genus, or of a species nobody has named, have no
 * kin there; siblings are those with the same label and the same name.
 *
 * @param ownSpread variance added to an animal's level, by its id.
 */
export function growTree(animals: readonly KinLabels[], family: LineBelief, ownSpread: (specimenId: string) => number): KinTree {
  const node = (group: KinNode['group'], parent: KinNode | null, spread = 0): KinNode => ({
    group,
    parent,
    evidence: NO_EVIDENCE,
    message: NO_EVIDENCE,
    prior: family,
    ownSpread: spread,
  });
  const root = node('family', null);
  const groups = { genus: new Map<string, KinNode>(), species: new Map<string, KinNode>(), clutch: new Map<string, KinNode>() };
  const found = (group: 'genus' | 'species' | 'clutch', key: string, parent: KinNode): KinNode => {
    const known = groups[group].get(key);
    if (known) return known;
    const made = node(group, parent);
    groups[group].set(key, made);
    return made;
  };
  const leaves = new Map<string, KinNode>();
  for (const { specimenId, taxon, eggSacGroup } of animals) {
    const name = namesOf(taxon);
    const alone = eggSacOf({ taxon, eggSacGroup }) ?? `animal ${specimenId}`;
    const genus = found('genus', name.genus ?? alone, root);
    const species = found('species', name.species ?? alone, genus);
    leaves.set(specimenId, node('animal', found('clutch', alone, species), ownSpread(specimenId)));
  }
  return {
    root,
    levels: {
      genus: [...groups.genus.values()],
      species: [...groups.species.values()],
      clutch: [...groups.clutch.values()],
      animal: [...leaves.values()],
    },
    animals: leaves,
  };
}

/**
 * One pass up and one down, each node visited once: afterwards `prior` of each node holds what all others say of it (belief
 * propagation on a tree, exact for normal variables: Pearl 1988, Probabilistic Reasoning in Intelligent Systems, ch. 4).
 * `evidence` of the animals has to stand; that of the groups is summed here.
 */
export function spreadTheWord(tree: KinTree, family: LineBelief, spreads: Spreads): void {
  tree.root.evidence = NO_EVIDENCE;
  for (const group of GROUPS) {
    if (group !== 'animal') for (const node of tree.levels[group]) node.evidence = NO_EVIDENCE;
  }
  for (const group of GROUPS.toReversed()) {
    for (const node of tree.levels[group]) {
      node.message = softened(node.evidence, spreadOf(node, spreads));
      if (node.parent) node.parent.evidence = plus(node.parent.evidence, node.message);
    }
  }
  tree.root.prior = family;
  for (const group of GROUPS) {
    for (const node of tree.levels[group]) node.prior = loosened(groupWithout(node), spreadOf(node, spreads));
  }
}

/** What is believed of the parent's line by everything but this member. */
export function groupWithout(node: KinNode): LineBelief {
  return node.parent ? informed(node.parent.prior, minus(node.parent.evidence, node.message)) : node.prior;
}

export function spreadOf(node: KinNode, spreads: Spreads): Spread {
  if (node.group === 'family') return { levelVariance: 0, trendVariance: 0 };
  const { levelVariance, trendVariance } = spreads[node.group];
  return { levelVariance: levelVariance + node.ownSpread, trendVariance };
}

/**
 * A node's line minus its group's, given everything: with D = the difference, prior N(0, T), and the group's line without it
 * N(m, P), evidence (A, a) about their sum is evidence ((I + A P)^-1 A, (I + A P)^-1 (a - A m)) about D.
 */
export function apartFromGroup(node: KinNode, spreads: Spreads): LineBelief {
  const group = groupWithout(node);
  const { level, both, trend, levelSum, trendSum } = node.evidence;
  const levelPull = levelSum - level * group.level - both * group.trend;
  const trendPull = trendSum - both * group.level - trend * group.trend;
  const { levelVariance: v, covariance: c, trendVariance: w } = group;
  const p = 1 + level * v + both * c;
  const q = level * c + both * w;
  const r = both * v + trend * c;
  const s = 1 + both * c + trend * w;
  const determinant = p * s - q * r;
  const about: Evidence = {
    level: (s * level - q * both) / determinant,
    both: (s * both - q * trend) / determinant,
    trend: (p * trend - r * both) / determinant,
    levelSum: (s * levelPull - q * trendPull) / determinant,
    trendSum: (p * trendPull - r * levelPull) / determinant,
  };
  return informed({ level: 0, trend: 0, covariance: 0, ...spreadOf(node, spreads) }, about);
}
