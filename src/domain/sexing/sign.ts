import type { Determination, Level, Sex, SexSign } from './determination.ts';
import { claimOf, isProof } from './live/claim.ts';
import { type LiveSign, standingLiveSigns } from './live/liveSign.ts';
import { answeredIn, type SaidOfSex, shownBy } from './live/shown.ts';
import { isFirm, rankOf } from './rank.ts';
import { standingOf } from './standing.ts';

const UNSEXED: SexSign = { sex: 'unsexed', level: null, conflict: false };

const CONFLICT: SexSign = { sex: 'unsexed', level: null, conflict: true };

const ANOMALOUS: SexSign = { sex: 'anomalous', level: null, conflict: false };

interface Claim {
  readonly sex: Sex;
  readonly level: Level | null;
  /** The reading that makes it; null for one of the animal itself. */
  readonly of: Determination | null;
}

/**
 * The sign of an animal from its whole history: the best level of the sex that its standing determinations and the signs of
 * the animal itself name. Levels never add up, but bulbs and a sperm web establish together; and a contradiction is never averaged: the animal stays unsexed, marked as in
 * conflict, until one of them is corrected or withdrawn. A leaning is a guess about an unsexed animal, so it does not
 * contradict a probable reading or a better one; two leanings that disagree do contradict each other. Who signs by hand that
 * an animal is anomalous has seen the contradiction and explained it.
 */
export function signOf(determinations: readonly Determination[], liveSigns: readonly LiveSign[]): SexSign {
  const claims = claimsOf(determinations, liveSigns);
  if (claims.some(({ sex }) => sex === 'anomalous')) return ANOMALOUS;
  if (contradicting(claims).length > 0) return CONFLICT;
  const best = sexed(claims).reduce<Claim | null>(
    (found, next) => (found !== null && weightOf(found) >= weightOf(next) ? found : next),
    null,
  );
  return best ? { sex: best.sex, level: best.level, conflict: false } : UNSEXED;
}

/** The standing determinations that contradict each other or the animal itself, in the order given. */
export function contradictionsOf(determinations: readonly Determination[], liveSigns: readonly LiveSign[]): Determination[] {
  const weighing = new Set(contradicting(claimsOf(determinations, liveSigns)).map((claim) => claim.of));
  return determinations.filter((determination) => weighing.has(determination));
}

/**
 * The standing determinations that name the other sex than this one, in the order given, whether or not the rule calls that
 * a contradiction: a leaning against a firm reading is none, and yet has to be said. Empty for one that no longer stands.
 */
export function opposedTo(determination: Determination, determinations: readonly Determination[]): Determination[] {
  const standing = standingOf(determinations);
  if (!isSexed(determination) || !standing.includes(determination)) return [];
  return standing.filter((other) => claimsOfReading(other).some((claim) => isSexed(claim) && claim.sex !== determination.sex));
}

/** The standing signs of the animal that contradict a determination: of the other sex, and as firm as the rule asks for. */
export function signsAgainst(
  determination: Determination,
  { determinations, liveSigns }: { readonly determinations: readonly Determination[]; readonly liveSigns: readonly LiveSign[] },
): LiveSign[] {
  if (!contradictionsOf(determinations, liveSigns).includes(determination)) return [];
  return standingLiveSigns(liveSigns).filter((live) => {
    const claim = claimOf(live);
    return claim !== null && claim.sex !== determination.sex && (isFirm(claim.level) || !isFirm(determination.level));
  });
}

function claimsOf(determinations: readonly Determination[], liveSigns: readonly LiveSign[]): Claim[] {
  const live = standingLiveSigns(liveSigns).map(claimOf);
  return [
    ...standingOf(determinations).flatMap(claimsOfReading),
    ...live.flatMap((claim) => (claim === null ? [] : [{ ...claim, of: null }])),
    ...webWithBulbs({ determinations, liveSigns }),
  ];
}

/** What a reading concludes, and what its answers prove of the animal itself, whatever it concludes. */
function claimsOfReading(determination: Determination): Claim[] {
  const { sex, level, checklist } = determination;
  const proved = answeredIn(checklist).filter((finding) => isProof({ finding }));
  const claims = proved.flatMap((finding) => claimOf({ finding, photoIds: [] }) ?? []);
  return [{ sex, level }, ...claims].map((claim) => ({ ...claim, of: determination }));
}

/** Bulbs without a photo are strong and a web alone is probable; together they leave nothing to be mistaken. */
function webWithBulbs(said: SaidOfSex): Claim[] {
  // Photos of bulbs establish by themselves.
  const kinds = shownBy(said, new Set()).map(({ finding }) => (finding.kind === 'palpal-bulbs' && !finding.seen ? null : finding.kind));
  return kinds.includes('palpal-bulbs') && kinds.includes('sperm-web') ? [{ sex: 'male', level: 'established', of: null }] : [];
}

function contradicting(claims: readonly Claim[]): Claim[] {
  const firm = sexed(claims).filter(({ level }) => isFirm(level));
  const weighing = firm.length > 0 ? firm : sexed(claims);
  return names(weighing, 'female') && names(weighing, 'male') ? weighing : [];
}

function sexed(claims: readonly Claim[]): Claim[] {
  return claims.filter(isSexed);
}

function isSexed({ sex }: Pick<Claim, 'sex'>): boolean {
  return sex === 'female' || sex === 'male';
}

function names(claims: readonly Claim[], sex: Sex): boolean {
  return claims.some((claim) => claim.sex === sex);
}

function weightOf({ level }: Claim): number {
  return level === null ? -1 : rankOf(level);
}
