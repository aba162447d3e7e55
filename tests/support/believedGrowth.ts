import { addDays } from '../../src/domain/dates.ts';
import { type GrowthBelief, growthBeliefIn } from '../../src/domain/growth/belief/growthBelief.ts';
import type { GrowthRecord } from '../../src/domain/growth/belief/growthRecord.ts';
import { allSeries, growthIn } from '../../src/domain/growth/belief/pooledCabinet.ts';
import type { MeasuredStep } from '../../src/domain/growth/measuredStep.ts';
import type { Ladder } from '../../src/domain/growth/rung.ts';
import type { MoltOutcome } from '../../src/domain/molting/molt.ts';

const FIRST_DAY = '2010-01-01';
const TODAY = '2026-01-01';
const DAYS_APART = 100;
const LABELS = { taxon: 'Brachypelma hamorii', eggSacGroup: 'sac 1', hatchedOn: null, acquiredOn: null, acquiredInstar: null };

/** What is believed of an animal without kin whose molts make this ladder. */
export function beliefOfLadder({ rungs }: Pick<Ladder, 'rungs'>, today = TODAY): GrowthBelief {
  const record: GrowthRecord = {
    ...LABELS,
    specimenId: 'animal-0',
    molts: rungs.map(({ moltId: id, happenedFrom, happenedTo, presumed, noneMissedBefore, instar }) => {
      const instarShed = instar?.certainty === 'known' ? instar.number : null;
      const outcomes: MoltOutcome[] = [
        ...(presumed ? ['presumed' as const] : []),
        ...(noneMissedBefore ? ['none-missed-before' as const] : []),
      ];
      return { id, happenedFrom, happenedTo, instarShed, outcomes };
    }),
    sizes: rungs.flatMap(({ moltId, carapaceLengthMm: size }) =>
      size ? [{ moltId, lengthMm: size.value, uncertaintyMm: size.standardUncertainty }] : [],
    ),
  };
  return beliefAmong([record], today);
}

interface Kept {
  /** Rows of skins of siblings from the same egg sac. */
  readonly kin?: readonly (readonly MeasuredStep[])[];
  /** Whether each molt is on record with its step as its instar. */
  readonly numbered?: boolean;
}

/** What is believed of an animal whose skins these are, kept with its siblings. */
export function beliefOn(sizes: readonly MeasuredStep[], { kin = [], numbered = false }: Kept = {}): GrowthBelief {
  return beliefAmong(
    [sizes, ...kin].map((row, index) => recordOf(`animal-${index}`, row, numbered)),
    TODAY,
  );
}

function beliefAmong(records: readonly GrowthRecord[], today: string): GrowthBelief {
  const belief = growthBeliefIn(growthIn(allSeries(records, today), today), 'animal-0');
  if (!belief) throw new Error('Expected a belief');
  return belief;
}

function recordOf(specimenId: string, sizes: readonly MeasuredStep[], numbered: boolean): GrowthRecord {
  return {
    ...LABELS,
    specimenId,
    molts: sizes.map(({ moltId, step }) => {
      const day = addDays(FIRST_DAY, DAYS_APART * step);
      return { id: moltId, happenedFrom: day, happenedTo: day, instarShed: numbered ? step : null };
    }),
    sizes: sizes.map(({ moltId, lengthMm, uncertaintyMm }) => ({ moltId, lengthMm, uncertaintyMm })),
  };
}
