import { type CalendarDay, dayOf } from '../dates.ts';
import type { SexSign } from '../sexing/determination.ts';
import { type LiveSign, standingLiveSigns, ultimateMoltOf } from '../sexing/live/liveSign.ts';
import { inTimeOrder, type Seen } from './observation.ts';

/** What makes an animal grown, as far as it is on record. */
export interface MaturityRecords {
  readonly sex: Pick<SexSign, 'sex' | 'level'>;
  readonly observations: readonly Seen[];
  /** Signs recorded for its sex, withdrawn ones included. */
  readonly liveSigns: readonly LiveSign[];
}

export type Maturity =
  | {
      readonly kind: 'mature-male';
      readonly knownBy: 'palpal-bulbs' | 'sperm-web' | 'noted-mature';
      readonly spermWebsOn: readonly CalendarDay[];
      /** The molt with which the bulbs came, where it was named; else his last one is. */
      readonly ultimateMoltId: string | null;
    }
  | { readonly kind: 'grown-female'; readonly knownBy: 'egg-sac' | 'noted-mature'; readonly eggSacsOn: readonly CalendarDay[] };

/**
 * Bulbs or a sperm web make a mature male and an egg sac a grown female, whatever else is noted; the note "mature" counts with a
 * sex that is more than a guess. Null for every other animal.
 */
export function maturityOf({ sex, observations, liveSigns }: MaturityRecords): Maturity | null {
  const signs = standingLiveSigns(liveSigns);
  const days = (kind: 'sperm-web' | 'egg-sac'): CalendarDay[] => {
    const noted = inTimeOrder(observations).flatMap((seen) => (seen.kind === kind ? [dayOf(seen.moment)] : []));
    const signed = signs.flatMap(({ finding, seenOn }) => (finding.kind === kind ? [seenOn] : []));
    return [...new Set([...noted, ...signed])].toSorted();
  };
  const spermWebsOn = days('sperm-web');
  const eggSacsOn = days('egg-sac');
  const bulbs = signs.some(({ finding }) => finding.kind === 'palpal-bulbs' && finding.seen);
  const noted = observations.some(({ kind }) => kind === 'mature') && sex.level !== null && sex.level !== 'leaning';
  if (bulbs || spermWebsOn.length > 0 || (noted && sex.sex === 'male')) {
    const knownBy = bulbs ? 'palpal-bulbs' : spermWebsOn.length > 0 ? 'sperm-web' : 'noted-mature';
    return { kind: 'mature-male', knownBy, spermWebsOn, ultimateMoltId: ultimateMoltOf(liveSigns) };
  }
  if (eggSacsOn.length > 0 || (noted && sex.sex === 'female')) {
    return { kind: 'grown-female', knownBy: eggSacsOn.length > 0 ? 'egg-sac' : 'noted-mature', eggSacsOn };
  }
  return null;
}
