import type { CabinetEntry } from '../../archive/records/animals.ts';
import { type MaleMaturitySign, type Maturity, type MaturityRecords, maturityOf } from '../../domain/care/matureMale.ts';
import { factsOfAnimal } from '../../domain/sexing/live/animalFacts.ts';
import { signOf } from '../../domain/sexing/sign.ts';

type Records = Pick<CabinetEntry, 'determinations' | 'liveSigns' | 'adultNotes'>;

/** What tells that an animal is a mature male, of whom no molt is awaited; null for every other. */
export function maleMaturityOf(entry: Records): MaleMaturitySign | null {
  const maturity = maturityIn(entry);
  return maturity?.kind === 'mature-male' ? maturity.knownBy : null;
}

/**
 * Whether palpal bulbs are on record and something else says that it is no male. Nobody knows then whether it molts again: it is
 * watched as before, but never told to be due.
 */
export function isMaleMaturityContradicted(entry: Records): boolean {
  const maturity = maturityIn(entry);
  return maturity?.kind === 'unconfirmed' && maturity.why === 'contradicted' && factsOfAnimal(recordsOf(entry)).bulbsSeen;
}

function maturityIn(entry: Records): Maturity | null {
  return maturityOf(recordsOf(entry));
}

function recordsOf({ determinations, liveSigns, adultNotes }: Records): MaturityRecords {
  return { sex: signOf(determinations, liveSigns), determinations, liveSigns, observations: adultNotes };
}
