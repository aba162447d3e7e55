import { z } from 'zod';
import { CalendarDay, dayOf, daysBetween } from '../dates.ts';
import type { SexSign } from '../sexing/determination.ts';
import type { LastMolt } from './lastMolt.ts';
import { inTimeOrder, type Seen } from './observation.ts';
import { MoltForecast } from './suspicion.ts';

/** A mature male: he does not molt again, so his last molt is the ultimate one. */
export const MatureMale = z
  .object({
    specimenId: z.string(),
    ultimateMoltOn: CalendarDay.nullable().describe('null where it happened before the animal came here'),
    daysSinceUltimateMolt: z.int().nullable(),
    spermWebsOn: z.array(CalendarDay).describe('Oldest first'),
    knownBy: z.enum(['noted-mature', 'sperm-web']),
  })
  .meta({ id: 'MatureMale' });
export type MatureMale = z.infer<typeof MatureMale>;

/** A grown female: her next molt throws away the sperm she has stored. */
export const AdultFemale = z
  .object({
    specimenId: z.string(),
    lastMoltOn: CalendarDay.nullable(),
    daysSinceLastMolt: z.int().nullable(),
    eggSacsOn: z.array(CalendarDay),
    forecast: MoltForecast.nullable(),
    knownBy: z.enum(['noted-mature', 'egg-sac']),
  })
  .meta({ id: 'AdultFemale' });
export type AdultFemale = z.infer<typeof AdultFemale>;

export const Pairing = z.object({ males: z.array(MatureMale), females: z.array(AdultFemale) }).meta({ id: 'Pairing' });
export type Pairing = z.infer<typeof Pairing>;

export interface PairingRecords {
  readonly specimenId: string;
  readonly sex: SexSign;
  readonly observations: readonly Seen[];
  readonly lastMolt: LastMolt | null;
  readonly forecast: MoltForecast | null;
}

/**
 * Who could be paired, as far as it is on record. A sperm web makes a mature male and an egg sac a grown female whatever else
 * is noted; the note "mature" counts with a sex that is more than a guess. No one is matched with anyone.
 */
export function pairingOf(animals: readonly PairingRecords[], today: CalendarDay): Pairing {
  const males: MatureMale[] = [];
  const females: AdultFemale[] = [];
  for (const { specimenId, sex, observations, lastMolt, forecast } of animals) {
    const spermWebsOn = daysOf(observations, 'sperm-web');
    const eggSacsOn = daysOf(observations, 'egg-sac');
    const mature = observations.some(({ kind }) => kind === 'mature') && sex.level !== null && sex.level !== 'leaning';
    const moltedOn = lastMolt?.on ?? null;
    const days = moltedOn === null ? null : daysBetween(moltedOn, today);
    if (spermWebsOn.length > 0 || (mature && sex.sex === 'male')) {
      const knownBy = spermWebsOn.length > 0 ? 'sperm-web' : 'noted-mature';
      males.push({ specimenId, ultimateMoltOn: moltedOn, daysSinceUltimateMolt: days, spermWebsOn, knownBy });
    } else if (eggSacsOn.length > 0 || (mature && sex.sex === 'female')) {
      const knownBy = eggSacsOn.length > 0 ? 'egg-sac' : 'noted-mature';
      females.push({ specimenId, lastMoltOn: moltedOn, daysSinceLastMolt: days, eggSacsOn, forecast, knownBy });
    }
  }
  return { males, females };
}

function daysOf(observations: readonly Seen[], kind: 'sperm-web' | 'egg-sac'): CalendarDay[] {
  return inTimeOrder(observations)
    .filter((seen) => seen.kind === kind)
    .map(({ moment }) => dayOf(moment));
}
