import { z } from 'zod';
import type { CalendarDay } from '../dates.ts';
import type { SexSign } from '../sexing/determination.ts';
import { factsOfAnimal, type SaidOfAnimal } from '../sexing/live/animalFacts.ts';
import { standingLiveSigns, ultimateMoltOf } from '../sexing/live/liveSign.ts';
import { isFirm } from '../sexing/rank.ts';

/** What makes an animal grown, as far as it is on record. */
export interface MaturityRecords extends SaidOfAnimal {
  readonly sex: Pick<SexSign, 'sex' | 'level' | 'conflict'>;
}

/** What a mature male is known by. */
export const MaleMaturitySign = z.enum(['palpal-bulbs', 'sperm-web', 'noted-mature']).meta({ id: 'MaleMaturitySign' });
export type MaleMaturitySign = z.infer<typeof MaleMaturitySign>;

export type Maturity =
  | {
      readonly kind: 'mature-male';
      readonly knownBy: MaleMaturitySign;
      readonly spermWebsOn: readonly CalendarDay[];
      /** The molt with which the bulbs came, where it was named; else his last one is. */
      readonly ultimateMoltId: string | null;
    }
  | { readonly kind: 'grown-female'; readonly knownBy: 'egg-sac' | 'noted-mature'; readonly eggSacsOn: readonly CalendarDay[] }
  /** Something was seen of grown animals that does not make one of it: nothing follows from it, and its molts are awaited as before. */
  | { readonly kind: 'unconfirmed'; readonly why: 'web-noted' | 'contradicted'; readonly spermWebsOn: readonly CalendarDay[] };

/**
 * Bulbs make a mature male and an egg sac a grown female. A signed sperm web makes a mature male of an animal that nothing firm
 * calls female; a web that was merely noted only of one that is firmly male, since molting mats are mistaken for one. The note
 * "mature" counts with a sex that is more than a guess. What is contradicted, by the other sign or by a skin, makes neither:
 * to await no molt of an animal that molts would be the worse mistake. Null for every other animal.
 */
export function maturityOf(records: MaturityRecords): Maturity | null {
  const { sex, liveSigns } = records;
  const { bulbsSeen, eggSacLaid, eggSacsOn, spermWebsOn, notedMature, firmlyFemale } = factsOfAnimal(records);
  if ((bulbsSeen && eggSacLaid) || (sex.conflict && (bulbsSeen || eggSacLaid)))
    return { kind: 'unconfirmed', why: 'contradicted', spermWebsOn };
  const firmSex = isFirm(sex.level) ? sex.sex : null;
  const mayBeMale = spermWebsOn.length > 0 && !firmlyFemale && firmSex !== 'female' && !sex.conflict;
  const signed = standingLiveSigns(liveSigns).some(({ finding }) => finding.kind === 'sperm-web');
  const webCounts = mayBeMale && (signed || firmSex === 'male');
  if (bulbsSeen || webCounts || (notedMature && firmSex === 'male')) {
    const knownBy = bulbsSeen ? 'palpal-bulbs' : webCounts ? 'sperm-web' : 'noted-mature';
    return { kind: 'mature-male', knownBy, spermWebsOn, ultimateMoltId: ultimateMoltOf(liveSigns) };
  }
  if (eggSacLaid || (notedMature && firmSex === 'female')) {
    return { kind: 'grown-female', knownBy: eggSacLaid ? 'egg-sac' : 'noted-mature', eggSacsOn };
  }
  return mayBeMale ? { kind: 'unconfirmed', why: 'web-noted', spermWebsOn } : null;
}
