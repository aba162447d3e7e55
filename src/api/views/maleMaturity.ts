import type { CabinetEntry } from '../../archive/records/animals.ts';
import { type MaleMaturitySign, maturityOf } from '../../domain/care/matureMale.ts';
import { signOf } from '../../domain/sexing/sign.ts';

/** What tells that an animal is a mature male, of whom no molt is awaited; null for every other. */
export function maleMaturityOf({
  determinations,
  liveSigns,
  adultNotes,
}: Pick<CabinetEntry, 'determinations' | 'liveSigns' | 'adultNotes'>): MaleMaturitySign | null {
  const sex = signOf(determinations, liveSigns);
  const maturity = maturityOf({ sex, determinations, liveSigns, observations: adultNotes });
  return maturity?.kind === 'mature-male' ? maturity.knownBy : null;
}
