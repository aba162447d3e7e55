import { z } from 'zod';
import { CalendarDay, daysBetween } from '../dates.ts';
import { ExpectedMolt } from '../growth/forecast/expectedMolt.ts';
import type { Molt } from '../molting/molt.ts';
import type { LastMolt } from './lastMolt.ts';
import { MaleMaturitySign, type Maturity } from './matureMale.ts';

/** A mature male: he does not molt again, so his last molt is the ultimate one. */
export const MatureMale = z
  .object({
    specimenId: z.string(),
    ultimateMoltOn: CalendarDay.nullable().describe('null where it happened before the animal came here'),
    daysSinceUltimateMolt: z.int().nullable(),
    spermWebsOn: z.array(CalendarDay).describe('Oldest first'),
    knownBy: MaleMaturitySign,
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
    forecast: ExpectedMolt.nullable(),
    knownBy: z.enum(['egg-sac', 'noted-mature']),
  })
  .meta({ id: 'AdultFemale' });
export type AdultFemale = z.infer<typeof AdultFemale>;

/** An animal of which something of a grown one was seen that is not confirmed: it is offered for no pairing. */
export const UnconfirmedAdult = z
  .object({
    specimenId: z.string(),
    why: z.enum(['web-noted', 'contradicted']).describe('A sperm web that was merely noted, or signs of both sexes'),
    spermWebsOn: z.array(CalendarDay).describe('Oldest first'),
  })
  .meta({ id: 'UnconfirmedAdult' });

export const Pairing = z
  .object({ males: z.array(MatureMale), females: z.array(AdultFemale), unconfirmed: z.array(UnconfirmedAdult) })
  .meta({ id: 'Pairing' });
export type Pairing = z.infer<typeof Pairing>;

export interface PairingRecords {
  readonly specimenId: string;
  readonly maturity: Maturity | null;
  readonly molts: readonly Pick<Molt, 'id' | 'happenedTo'>[];
  readonly lastMolt: LastMolt | null;
  readonly forecast: ExpectedMolt | null;
}

/** Who could be paired, as far as it is on record. No one is matched with anyone. */
export function pairingOf(animals: readonly PairingRecords[], today: CalendarDay): Pairing {
  const males: MatureMale[] = [];
  const females: AdultFemale[] = [];
  const unconfirmed: Pairing['unconfirmed'] = [];
  for (const { specimenId, maturity, molts, lastMolt, forecast } of animals) {
    if (maturity?.kind === 'mature-male') {
      const named = molts.find(({ id }) => id === maturity.ultimateMoltId);
      const on = named?.happenedTo ?? lastMolt?.on ?? null;
      const { knownBy, spermWebsOn } = maturity;
      males.push({ specimenId, ultimateMoltOn: on, daysSinceUltimateMolt: since(on, today), spermWebsOn: [...spermWebsOn], knownBy });
    } else if (maturity?.kind === 'grown-female') {
      const on = lastMolt?.on ?? null;
      const { knownBy, eggSacsOn } = maturity;
      females.push({ specimenId, lastMoltOn: on, daysSinceLastMolt: since(on, today), eggSacsOn: [...eggSacsOn], forecast, knownBy });
    } else if (maturity?.kind === 'unconfirmed') {
      unconfirmed.push({ specimenId, why: maturity.why, spermWebsOn: [...maturity.spermWebsOn] });
    }
  }
  return { males, females, unconfirmed };
}

function since(day: CalendarDay | null, today: CalendarDay): number | null {
  return day === null ? null : daysBetween(day, today);
}
