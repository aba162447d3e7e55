import { z } from 'zod';
import type { CalendarDay } from '../dates.ts';
import type { SexSign } from '../sexing/determination.ts';
import { factsOfAnimal, type SaidOfAnimal } from '../sexing/live/animalFacts.ts';
import { ultimateMoltOf } from '../sexing/live/liveSign.ts';
import { isFirm } from '../sexing/rank.ts';

/** What makes an animal grown, as far as it is on record. */
export interface MaturityRecords extends SaidOfAnimal {
  readonly sex: Pick<SexSign, 'sex' | 'level'>;
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
  | { readonly kind: 'grown-female'; readonly knownBy: 'egg-sac' | 'noted-mature'; readonly eggSacsOn: readonly CalendarDay[] };

/**
 * Bulbs make a mature male and an egg sac a grown female; both together contradict each other and make neither. A sperm web makes
 * a mature male of an animal that nothing firm calls female, since molting mats are mistaken for one. The note "mature" counts
 * with a sex that is more than a guess. Null for every other animal.
 */
export function maturityOf(records: MaturityRecords): Maturity | null {
  const { sex, liveSigns } = records;
  const { bulbsSeen, eggSacLaid, eggSacsOn, spermWebsOn, notedMature, firmlyFemale } = factsOfAnimal(records);
  if (bulbsSeen && eggSacLaid) return null;
  const firmSex = isFirm(sex.level) ? sex.sex : null;
  const webCounts = spermWebsOn.length > 0 && !firmlyFemale && firmSex !== 'female';
  if (bulbsSeen || webCounts || (notedMature && firmSex === 'male')) {
    const knownBy = bulbsSeen ? 'palpal-bulbs' : webCounts ? 'sperm-web' : 'noted-mature';
    return { kind: 'mature-male', knownBy, spermWebsOn, ultimateMoltId: ultimateMoltOf(liveSigns) };
  }
  if (eggSacLaid || (notedMature && firmSex === 'female')) {
    return { kind: 'grown-female', knownBy: eggSacLaid ? 'egg-sac' : 'noted-mature', eggSacsOn };
  }
  return null;
}
