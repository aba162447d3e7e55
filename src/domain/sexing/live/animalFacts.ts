import type { Observation } from '../../care/observation.ts';
import { type CalendarDay, dayOf } from '../../dates.ts';
import type { Determination } from '../determination.ts';
import { isFirm } from '../rank.ts';
import { standingOf } from '../standing.ts';
import type { LiveSign } from './liveSign.ts';
import { provedBy, type SaidOfSex, shownBy } from './shown.ts';

/** The three places where something of the animal itself is said: answers of a reading, signs that were signed, notes of a watch. */
export interface SaidOfAnimal {
  readonly determinations: readonly (SaidOfSex['determinations'][number] & Pick<Determination, 'sex' | 'level'>)[];
  readonly liveSigns: readonly LiveSign[];
  readonly observations: readonly Pick<Observation, 'kind' | 'moment'>[];
}

/** What they come to together. */
export interface AnimalFacts {
  readonly bulbsSeen: boolean;
  readonly eggSacLaid: boolean;
  /** Days that are known, oldest first; a reading that tells of an egg sac does not know its day. */
  readonly eggSacsOn: readonly CalendarDay[];
  readonly spermWebsOn: readonly CalendarDay[];
  readonly notedMature: boolean;
  /** A reading from "probable" up, or an egg sac, says female. */
  readonly firmlyFemale: boolean;
}

export function factsOfAnimal({ determinations, liveSigns, observations }: SaidOfAnimal): AnimalFacts {
  // Whether photos show it decides nothing here.
  const shown = shownBy({ determinations, liveSigns }, new Set());
  const days = (kind: 'sperm-web' | 'egg-sac'): CalendarDay[] => {
    const noted = observations.flatMap((seen) => (seen.kind === kind ? [dayOf(seen.moment)] : []));
    const signed = shown.flatMap(({ finding, on, determinationId }) => (finding.kind === kind && determinationId === null ? [on] : []));
    return [...new Set([...noted, ...signed])].toSorted();
  };
  const eggSacsOn = days('egg-sac');
  const eggSacLaid = eggSacsOn.length > 0 || shown.some((one) => provedBy(one) === 'female');
  return {
    bulbsSeen: shown.some((one) => provedBy(one) === 'male'),
    eggSacLaid,
    eggSacsOn,
    spermWebsOn: days('sperm-web'),
    notedMature: observations.some(({ kind }) => kind === 'mature'),
    firmlyFemale: eggSacLaid || standingOf(determinations).some(({ sex, level }) => sex === 'female' && isFirm(level)),
  };
}

/**
 * The signs that speak for the sex of an animal: those that were signed, and every egg sac noted while watching it, in the order
 * in which they were recorded. A sperm web that was merely noted is none: molting mats are mistaken for one, so it takes a
 * signature.
 */
export function signsOfAnimal(liveSigns: readonly LiveSign[], observations: readonly Observation[]): LiveSign[] {
  const noted = observations.filter(({ kind }) => kind === 'egg-sac').map(signFrom);
  return [...liveSigns, ...noted].toSorted((a, b) => Date.parse(a.signedAt) - Date.parse(b.signedAt));
}

function signFrom({ id, specimenId, moment, observer, note, source, recordedAt }: Observation): LiveSign {
  return {
    id,
    specimenId,
    finding: { kind: 'egg-sac', fertile: 'not-known' },
    seenOn: dayOf(moment),
    observer,
    photoIds: source.kind === 'photo' ? [source.photoId] : [],
    notes: note,
    signedAt: recordedAt,
    withdrawn: null,
  };
}
