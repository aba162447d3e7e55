import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import type { ForecastBasis } from '../../domain/growth/forecast/basis.ts';
import { basisFor, type CabinetGrowth, readCabinet } from '../../domain/growth/forecast/cabinetForecast.ts';
import { type ExpectedMolt, expectedMoltFrom } from '../../domain/growth/forecast/expectedMolt.ts';
import { type DueForecast, forecastFrom } from '../../domain/growth/forecast/forecast.ts';
import type { GrowthRecord, SkinSize } from '../../domain/growth/forecast/growthRecord.ts';
import { isKept } from '../../domain/specimen/counts.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { carapaceOnly } from './measurements.ts';
import { moltedSkinsOf, skinSizesOf } from './skins.ts';

/** More measured kin than this narrow a size no further that could be seen, and each takes time to measure. */
const MOST_MEASURED_KIN = 24;

/** The intervals of a whole cabinet: the keeper's animals learn nothing from the invented ones, nor these from them. */
export interface CabinetIntervals {
  readonly own: CabinetGrowth;
  readonly sample: CabinetGrowth;
}

/** Days do not depend on sizes, so none is measured, and they are the same in every room. */
export function intervalsOf(entries: readonly CabinetEntry[], today: CalendarDay): CabinetIntervals {
  const read = (sample: boolean) =>
    readCabinet(
      entries.filter(({ specimen }) => specimen.sample === sample).map((entry) => recordOf(entry, [])),
      today,
    );
  return { own: read(false), sample: read(true) };
}

function keptBasisIn({ own, sample }: CabinetIntervals, specimen: Pick<Specimen, 'id' | 'status' | 'sample'>): ForecastBasis | null {
  return isKept(specimen.status) ? basisFor(specimen.sample ? sample : own, specimen.id) : null;
}

/** When an animal is due; null for one that is no longer kept. */
export function dueIn(intervals: CabinetIntervals, specimen: Pick<Specimen, 'id' | 'status' | 'sample'>): DueForecast | null {
  const basis = keptBasisIn(intervals, specimen);
  return basis && forecastFrom(basis).due;
}

/** The days to watch an animal by; null for one that is no longer kept. */
export function expectedIn(intervals: CabinetIntervals, specimen: Pick<Specimen, 'id' | 'status' | 'sample'>): ExpectedMolt | null {
  const basis = keptBasisIn(intervals, specimen);
  return basis && expectedMoltFrom(basis);
}

/**
 * What the forecast for one animal follows from, its size included: its own skins are measured and those of its nearest kin.
 * Null for an animal that is no longer kept.
 */
export function basisOf(archive: Archive, specimen: Specimen, today: CalendarDay): ForecastBasis | null {
  if (!isKept(specimen.status)) return null;
  const entries = archive.cabinet.entries().filter((entry) => entry.specimen.sample === specimen.sample);
  const measured = new Set(nearestMeasured(entries, specimen).map((entry) => entry.specimen.id));
  const cabinet = readCabinet(
    entries.map((entry) => recordOf(entry, measured.has(entry.specimen.id) ? sizesOf(archive, entry.specimen.id) : [])),
    today,
  );
  return basisFor(cabinet, specimen.id);
}

function recordOf({ specimen, molts }: CabinetEntry, sizes: readonly SkinSize[]): GrowthRecord {
  const { id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar } = specimen;
  return { specimenId: id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar, molts, sizes };
}

/** The animal itself, siblings, then its species, then its genus. */
function nearestMeasured(entries: readonly CabinetEntry[], specimen: Specimen): CabinetEntry[] {
  const genusOf = (taxon: string): string | undefined => taxon.trim().toLowerCase().split(/\s+/)[0];
  const distance = ({ specimen: other }: CabinetEntry): number => {
    if (other.id === specimen.id) return 0;
    if (other.taxon.toLowerCase() !== specimen.taxon.toLowerCase()) return genusOf(other.taxon) === genusOf(specimen.taxon) ? 3 : 4;
    return specimen.eggSacGroup !== null && other.eggSacGroup === specimen.eggSacGroup ? 1 : 2;
  };
  return entries
    .filter(({ lastMeasured }) => lastMeasured !== null)
    .map((entry) => ({ entry, away: distance(entry) }))
    .filter(({ away }) => away < 4)
    .sort((a, b) => a.away - b.away)
    .slice(0, MOST_MEASURED_KIN + 1)
    .map(({ entry }) => entry);
}

function sizesOf(archive: Archive, specimenId: string): SkinSize[] {
  return moltedSkinsOf(archive, specimenId, carapaceOnly).flatMap((skin) => {
    const size = skinSizesOf(skin).carapaceLengthMm;
    return size ? [{ moltId: skin.molt.id, lengthMm: size.value, uncertaintyMm: size.standardUncertainty }] : [];
  });
}
