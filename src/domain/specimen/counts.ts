import type { SexSign } from '../sexing/determination.ts';
import type { SpecimenStatus } from './specimen.ts';

export interface SexCounts {
  readonly males: number;
  readonly females: number;
  readonly unsexed: number;
}

/** Still the keeper's animal: living here or out on loan. The dead and the sold are not in the totals. */
export function isKept(status: SpecimenStatus): boolean {
  return status === 'living' || status === 'on-loan';
}

/** Counts signs. A mere leaning and a contradiction count as unsexed: nobody may be sold or paired on them. */
export function countBySex(signs: readonly SexSign[]): SexCounts {
  const males = signs.filter((sign) => countsAs(sign) === 'male').length;
  const females = signs.filter((sign) => countsAs(sign) === 'female').length;
  return { males, females, unsexed: signs.length - males - females };
}

/** The trade's short form, males.females.unsexed: `12.30.57`. Common practice in price lists. */
export function tradeCount(counts: SexCounts): string {
  return `${counts.males}.${counts.females}.${counts.unsexed}`;
}

function countsAs(sign: SexSign): SexSign['sex'] {
  return sign.conflict || sign.level === null || sign.level === 'leaning' ? 'unsexed' : sign.sex;
}
