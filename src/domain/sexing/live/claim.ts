import type { Level, ReadSex } from '../determination.ts';
import type { LiveSign } from './liveSign.ts';

/** What a sign of the animal itself says about its sex, at the level the working rules give it. */
export interface LiveClaim {
  readonly sex: ReadSex;
  readonly level: Level;
}

/**
 * Null where it says nothing: looked-for hooks that are not there, hooks of a genus whose males are not known to carry them, and
 * bulbs not there on an animal that may still be growing.
 * Bulbs with a photo and an egg sac establish; a sperm web needs bulbs to go further than probable, since molting mats are
 * mistaken for one.
 */
export function claimOf({ finding, photoIds, hooksSpeak }: Pick<LiveSign, 'finding' | 'photoIds' | 'hooksSpeak'>): LiveClaim | null {
  switch (finding.kind) {
    case 'palpal-bulbs':
      return finding.seen ? { sex: 'male', level: photoIds.length > 0 ? 'established' : 'strong' } : null;
    case 'tibial-hooks':
      return finding.seen && hooksSpeak === true ? { sex: 'male', level: 'probable' } : null;
    case 'sperm-web':
      return { sex: 'male', level: 'probable' };
    case 'egg-sac':
      return { sex: 'female', level: 'established' };
    case 'ventral-fusillae':
      return { sex: finding.seen ? 'male' : 'female', level: 'leaning' };
    case 'impression':
      return { sex: finding.towards, level: 'leaning' };
  }
}

/** What proves a sex for good, so that earlier readings can be held against it: bulbs, or an egg sac. */
export function isProof({ finding }: Pick<LiveSign, 'finding'>): boolean {
  return finding.kind === 'egg-sac' || (finding.kind === 'palpal-bulbs' && finding.seen);
}
