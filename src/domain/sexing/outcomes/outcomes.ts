import { z } from 'zod';
import { type Determination, ReadingMethod, type ReadSex } from '../determination.ts';
import { SizeClass } from '../evidence/sizeClass.ts';
import type { LiveSign } from '../live/liveSign.ts';
import { provedBy, shownBy } from '../live/shown.ts';
import { exactInterval } from './exactInterval.ts';

/** One animal of the archive with all that was ever said of its sex. */
export interface ReadAnimal {
  readonly specimenId: string;
  readonly determinations: readonly Determination[];
  readonly liveSigns: readonly LiveSign[];
}

/** How often claims of one kind came true. */
export const OutcomeCount = z
  .object({
    method: ReadingMethod,
    sizeClass: SizeClass.nullable(),
    sex: z.enum(['female', 'male']).describe('That was claimed'),
    right: z.int().min(0),
    total: z.int().min(1),
    low: z.number().min(0).max(1).describe('Of the exact 95 % interval of the share that is right (Clopper & Pearson 1934)'),
    high: z.number().min(0).max(1),
  })
  .meta({ id: 'OutcomeCount' });
export type OutcomeCount = z.infer<typeof OutcomeCount>;

export const OutcomeLog = z
  .object({
    counts: z.array(OutcomeCount).describe('By method, size class and the sex claimed'),
    provedAnimals: z.int(),
    contradictoryProofs: z.array(z.string()).describe('Animals with bulbs and an egg sac on record: nothing of theirs is scored'),
  })
  .meta({ id: 'OutcomeLog' });
export type OutcomeLog = z.infer<typeof OutcomeLog>;

interface Proof {
  readonly sex: ReadSex;
  readonly on: string;
  readonly determinationId: string | null;
}

/**
 * Scores every claim of a sex that was read before the animal was proved by bulbs or an egg sac. Withdrawn and corrected
 * claims count as well: a tally without the ones their reader took back would flatter; but each skin counts once for each sex,
 * since the exact interval takes every claim for a trial of its own. Yet what they said of bulbs or a sac proves
 * nothing any more.
 */
export function outcomesOf(animals: readonly ReadAnimal[]): OutcomeLog {
  const claims: { readonly determination: Determination; readonly truth: ReadSex }[] = [];
  const contradictoryProofs: string[] = [];
  let provedAnimals = 0;
  for (const animal of animals) {
    const proofs = proofsOf(animal);
    const [first] = proofs;
    if (!first) continue;
    if (proofs.some(({ sex }) => sex !== first.sex)) {
      contradictoryProofs.push(animal.specimenId);
      continue;
    }
    provedAnimals += 1;
    const proving = new Set(proofs.map(({ determinationId }) => determinationId));
    const scored = animal.determinations.filter(
      ({ id, sex, readOn }) => (sex === 'female' || sex === 'male') && !proving.has(id) && readOn <= first.on,
    );
    claims.push(...firstOfEachSkin(scored).map((determination) => ({ determination, truth: first.sex })));
  }
  return { counts: countsOf(claims), provedAnimals, contradictoryProofs };
}

/** The first claim of each sex on each skin: one that is signed again with a mended answer is no second success. */
function firstOfEachSkin(claims: readonly Determination[]): Determination[] {
  return [...Map.groupBy(claims, ({ exuviaId, sex }) => `${exuviaId} ${sex}`).values()].flatMap((same) => same.slice(0, 1));
}

/** The earliest first. A standing determination that rests on bulbs or a sac is itself a proof, and scores nothing. */
function proofsOf(animal: ReadAnimal): Proof[] {
  const proofs = shownBy(animal, new Set()).flatMap((shown): Proof[] => {
    const sex = provedBy(shown);
    return sex === null ? [] : [{ sex, on: shown.on, determinationId: shown.determinationId }];
  });
  return proofs.toSorted((a, b) => a.on.localeCompare(b.on));
}

function countsOf(claims: readonly { readonly determination: Determination; readonly truth: ReadSex }[]): OutcomeCount[] {
  const groups = Map.groupBy(
    claims,
    ({ determination: { assessment, sex } }) => `${assessment.method} ${assessment.sizeClass ?? '-'} ${sex}`,
  );
  return [...groups]
    .toSorted(([a], [b]) => a.localeCompare(b))
    .flatMap(([, group]): OutcomeCount[] => {
      const [first] = group;
      if (!first || (first.determination.sex !== 'female' && first.determination.sex !== 'male')) return [];
      const { method, sizeClass } = first.determination.assessment;
      const right = group.filter(({ determination, truth }) => determination.sex === truth).length;
      return [{ method, sizeClass, sex: first.determination.sex, right, total: group.length, ...exactInterval(right, group.length) }];
    });
}
