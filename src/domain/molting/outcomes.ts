import { fail, type Result, succeed } from '../result.ts';
import { type Molt, type MoltDraft, MoltOutcome } from './molt.ts';

/** What a clean molt went without (common practice, no source). A limb may grow back in it, and its skin may be lost all the same. */
const NOT_CLEAN: readonly MoltOutcome[] = ['slow', 'stuck', 'wet', 'limb-lost', 'deformed', 'died', 'presumed'];

/** A molt cannot have gone cleanly and otherwise. Failure: `outcomes-contradict`. */
export function checkOutcomes<Draft extends Pick<MoltDraft, 'outcomes'>>(draft: Draft): Result<Draft> {
  const other = draft.outcomes.includes('clean') ? draft.outcomes.find((outcome) => NOT_CLEAN.includes(outcome)) : undefined;
  return other === undefined ? succeed(draft) : fail({ code: 'outcomes-contradict', one: 'clean', other });
}

/** The choice after one outcome was ticked or unticked: what contradicts the one just ticked goes. In the order of `MoltOutcome`. */
export function withOutcome(outcomes: readonly MoltOutcome[], outcome: MoltOutcome, holds: boolean): MoltOutcome[] {
  const gone = !holds ? [outcome] : outcome === 'clean' ? NOT_CLEAN : NOT_CLEAN.includes(outcome) ? (['clean'] as const) : [];
  const chosen = new Set<MoltOutcome>(holds ? [...outcomes, outcome] : outcomes);
  return MoltOutcome.options.filter((one) => chosen.has(one) && !gone.some((other) => other === one));
}

/** A skin that lies in the box was recovered, whatever its molt says. Failure: `skin-recovered-or-not`. */
export function checkRecovery(moltId: string, outcomes: readonly MoltOutcome[], recovered: boolean): Result<null> {
  return recovered && outcomes.includes('skin-not-recovered') ? fail({ code: 'skin-recovered-or-not', moltId }) : succeed(null);
}

/** The last molt, where the animal died in it: from then on it needs nothing, whatever its status still says. Null for all others. */
export function diedIn<M extends Pick<Molt, 'happenedTo' | 'outcomes'>>(molts: readonly M[]): M | null {
  const last = molts.toSorted((a, b) => (a.happenedTo < b.happenedTo ? -1 : 1)).at(-1);
  return last?.outcomes.includes('died') ? last : null;
}
