import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import type { GrowthRecord, SkinSize } from '../../domain/growth/belief/growthRecord.ts';
import { allSeries, growthIn, type Pooled } from '../../domain/growth/belief/pooledCabinet.ts';
import { KINSHIPS, kinshipOf, mayLearnFrom } from '../../domain/growth/kin.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { carapaceOnly } from './measurements.ts';
import { type MoltedSkin, moltedSkinsOf, skinSizesOf } from './skins.ts';

/** More measured kin than this narrow a size no further that could be seen, and each takes time to measure. */
const MOST_MEASURED_KIN = 12;

/** Carapace lengths of an animal's skins, its legs unmeasured. */
export type CarapaceSizes = (specimenId: string) => readonly SkinSize[];

/** Each animal is measured when it is first asked for, and once. */
export function carapaceSizesIn(archive: Archive, pointing: Pointing): CarapaceSizes {
  const measured = new Map<string, readonly SkinSize[]>();
  return (specimenId) => {
    const known = measured.get(specimenId);
    if (known) return known;
    const sizes = carapacesOn(moltedSkinsOf(archive, specimenId, pointing, carapaceOnly));
    measured.set(specimenId, sizes);
    return sizes;
  };
}

export function carapacesOn(skins: readonly MoltedSkin[]): SkinSize[] {
  return skins.flatMap((skin) => {
    const size = skinSizesOf(skin).carapaceLengthMm;
    return size ? [{ moltId: skin.molt.id, lengthMm: size.value, uncertaintyMm: size.standardUncertainty }] : [];
  });
}

/**
 * Growth of one animal and of its nearest measured kin, whose skins are measured for it: one belief for its missed molts, its
 * size now and the next, in whatever room that is asked.
 */
export function growthNear(specimen: Specimen, entries: readonly CabinetEntry[], sizesOf: CarapaceSizes, today: CalendarDay): Pooled {
  const near = entries
    .filter((entry) => mayLearnFrom(specimen, entry.specimen))
    .flatMap((entry) => {
      const away = distance(specimen, entry.specimen);
      return away !== null && (away === 0 || entry.lastMeasured !== null) ? [{ entry, away }] : [];
    })
    // Of equally near ones those with the longest rows, which say most.
    .sort((a, b) => a.away - b.away || b.entry.molts.length - a.entry.molts.length)
    .slice(0, 1 + MOST_MEASURED_KIN);
  const records = near.map(({ entry }) => recordOf(entry, entry.lastMeasured === null ? [] : sizesOf(entry.specimen.id)));
  return growthIn(allSeries(records, today), today);
}

export function recordOf({ specimen, molts }: CabinetEntry, sizes: readonly SkinSize[]): GrowthRecord {
  const { id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar } = specimen;
  return { specimenId: id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar, molts, sizes };
}

/** 0 for the animal itself, then siblings, its species, its genus; null for strangers. */
function distance(specimen: Specimen, other: Specimen): number | null {
  if (other.id === specimen.id) return 0;
  const kinship = kinshipOf(specimen, other);
  return kinship === null ? null : 1 + KINSHIPS.indexOf(kinship);
}
