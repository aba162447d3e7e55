import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { moltWatchedOf } from '../../domain/care/lastMolt.ts';
import { type CalendarDay, daysBetween } from '../../domain/dates.ts';
import type { Failure } from '../../domain/failure.ts';
import { allSeries, intervalsIn, type Pooled } from '../../domain/growth/belief/pooledCabinet.ts';
import type { ForecastBasis } from '../../domain/growth/forecast/basis.ts';
import { basisFor, dueOf } from '../../domain/growth/forecast/cabinetForecast.ts';
import type { DueForecast } from '../../domain/growth/forecast/dueForecast.ts';
import { type ExpectedMolt, expectedMoltFrom } from '../../domain/growth/forecast/expectedMolt.ts';
import { forecastFrom } from '../../domain/growth/forecast/forecast.ts';
import type { KeptForecast } from '../../domain/growth/forecast/keptForecast.ts';
import { mayLearnFrom } from '../../domain/growth/kin.ts';
import type { Molt } from '../../domain/molting/molt.ts';
import { diedIn } from '../../domain/molting/outcomes.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import { isKept } from '../../domain/specimen/counts.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { carapaceSizesIn, growthNear, recordOf } from './growthBelief.ts';
import { isMaleMaturityContradicted, maleMaturityOf } from './maleMaturity.ts';
import { pointingIn } from './pointing.ts';

/** The intervals of a whole cabinet: the keeper's animals learn nothing from the invented ones, nor these from them. */
export interface CabinetIntervals {
  readonly own: Pooled;
  readonly sample: Pooled;
}

/** Days do not depend on sizes, so none is measured, and they are the same in every room. */
export function intervalsOf(entries: readonly CabinetEntry[], today: CalendarDay): CabinetIntervals {
  const read = (sample: boolean) =>
    intervalsAmong(
      entries.filter(({ specimen }) => specimen.sample === sample),
      today,
    );
  return { own: read(false), sample: read(true) };
}

function intervalsAmong(entries: readonly CabinetEntry[], today: CalendarDay): Pooled {
  return intervalsIn(
    allSeries(
      entries.map((entry) => recordOf(entry, [])),
      today,
    ),
    today,
  );
}

/**
 * Nothing is foretold for an animal that is no longer kept or that died in its last molt, for a mature male, who does not molt
 * again, for one whose bulbs are contradicted, of whom that is not known, nor from before a molt that is under way or not on
 * record yet.
 */
function awaitsMolt(entry: CabinetEntry): boolean {
  const lives = isKept(entry.specimen.status) && diedIn(entry.molts) === null;
  const mayBeMatureMale = maleMaturityOf(entry) !== null || isMaleMaturityContradicted(entry);
  return lives && !mayBeMatureMale && moltWatchedOf(entry.stageNotes, entry.molts) === null;
}

/** When an animal is due; null where no molt of it is awaited. */
export function dueIn({ own, sample }: CabinetIntervals, entry: CabinetEntry): DueForecast | null {
  const { specimen } = entry;
  return awaitsMolt(entry) ? dueOf(specimen.sample ? sample : own, specimen.id) : null;
}

/** The days to watch an animal by; null where no molt of it is awaited. */
export function expectedIn(intervals: CabinetIntervals, entry: CabinetEntry): ExpectedMolt | null {
  const due = dueIn(intervals, entry);
  return due && expectedMoltFrom(due);
}

/**
 * What the forecast for one animal follows from, its size included: its own skins are measured and those of its nearest kin.
 * Null where no molt of it is awaited.
 */
export function basisOf(archive: Archive, specimen: Specimen, today: CalendarDay, pointing: Pointing): ForecastBasis | null {
  const entries = archive.cabinet.entries().filter((entry) => mayLearnFrom(specimen, entry.specimen));
  if (!entries.some((entry) => entry.specimen.id === specimen.id && awaitsMolt(entry))) return null;
  const intervals = intervalsAmong(entries, today);
  return basisFor({ intervals, growth: growthNear(specimen, entries, carapaceSizesIn(archive, pointing), today) }, specimen.id);
}

/** Puts the forecast of today on record. Fails with one of `NOTHING_AWAITED`. */
export function keepForecast(archive: Archive, specimen: Specimen, today: CalendarDay): Result<KeptForecast> {
  const basis = basisOf(archive, specimen, today, pointingIn(archive));
  if (!basis) return whyNothingAwaited(archive, specimen);
  return archive.forecasts.keep(specimen.id, { basis, forecast: forecastFrom(basis) });
}

function whyNothingAwaited(archive: Archive, { id, code: specimenCode, status }: Specimen): Result<never> {
  if (!isKept(status)) return fail({ code: 'animal-not-kept', specimenCode });
  const entry = archive.cabinet.entry(id);
  if (!entry.ok) return entry;
  if (diedIn(entry.value.molts)) return fail({ code: 'animal-not-kept', specimenCode });
  if (maleMaturityOf(entry.value) !== null) return fail({ code: 'animal-mature-male', specimenCode });
  return fail({ code: isMaleMaturityContradicted(entry.value) ? 'male-contradicted' : 'molt-not-recorded', specimenCode });
}

const NOTHING_AWAITED: readonly Failure['code'][] = ['animal-not-kept', 'animal-mature-male', 'male-contradicted', 'molt-not-recorded'];

/** From here back a molt is typed in from a notebook, row by row: a forecast at each would tell what everybody knows. */
const FRESH_DAYS = 30;

/** A molt that has just come is the day to say when the next one will. */
export function keepForecastAfter(archive: Archive, specimen: Specimen, molt: Molt, today: CalendarDay): Result<null> {
  const isLatest = archive.molts.ofSpecimen(specimen.id).at(-1)?.id === molt.id;
  if (!isLatest || daysBetween(molt.happenedTo, today) > FRESH_DAYS || !isKept(specimen.status)) return succeed(null);
  const kept = keepForecast(archive, specimen, today);
  return kept.ok || NOTHING_AWAITED.includes(kept.failure.code) ? succeed(null) : kept;
}
