import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import type { GrowthRecord, SkinSize } from '../../domain/growth/belief/growthRecord.ts';
import { allSeries, growthIn, type Pooled } from '../../domain/growth/belief/pooledCabinet.ts';
import { mayLearnFrom, nearestKin } from '../../domain/growth/kin.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { carapaceOnly } from './measurements.ts';
import { type MoltedSkin, moltedSkinsOf, skinSizesOf } from './skins.ts';

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
  const candidates = entries
    .filter((entry) => mayLearnFrom(specimen, entry.specimen))
    .map((entry) => ({
      specimenId: entry.specimen.id,
      taxon: entry.specimen.taxon,
      eggSacGroup: entry.specimen.eggSacGroup,
      molts: entry.molts.length,
      isMeasured: entry.lastMeasured !== null,
      entry,
    }));
  const near = nearestKin({ specimenId: specimen.id, taxon: specimen.taxon, eggSacGroup: specimen.eggSacGroup }, candidates);
  const records = near.map(({ entry }) => recordOf(entry, entry.lastMeasured === null ? [] : sizesOf(entry.specimen.id)));
  return growthIn(allSeries(records, today), today);
}

export function recordOf({ specimen, molts }: CabinetEntry, sizes: readonly SkinSize[]): GrowthRecord {
  const { id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar } = specimen;
  return { specimenId: id, taxon, eggSacGroup, hatchedOn, acquiredOn, acquiredInstar, molts, sizes };
}
