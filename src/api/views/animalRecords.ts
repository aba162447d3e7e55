import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import type { AnimalRecords, KnownGrowth, SkinState } from '../../domain/care/followed.ts';
import type { Observation } from '../../domain/care/observation.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import { growthBeliefIn } from '../../domain/growth/belief/growthBelief.ts';
import type { Pooled } from '../../domain/growth/belief/pooledCabinet.ts';
import type { ExpectedMolt } from '../../domain/growth/forecast/expectedMolt.ts';
import { groundOfSize } from '../../domain/growth/sizeNow.ts';
import type { Estimate } from '../../domain/measuring/quantity.ts';
import type { Exuvia } from '../../domain/molting/exuvia.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { type CarapaceSizes, carapaceSizesIn, growthNear } from './growthBelief.ts';
import { liveSizesOf } from './ladderPage.ts';
import { pointingIn } from './pointing.ts';
import { moltedSkinsOf, skinSizesOf } from './skins.ts';

/** What is read for all animals at once, in a fixed number of statements. */
interface OfAll {
  readonly observations: ReadonlyMap<string, readonly Observation[]>;
  readonly exuviaOfMolt: ReadonlyMap<string, Exuvia>;
  /** A photo of each photographed skin. */
  readonly photoOf: ReadonlyMap<string, string>;
  readonly measured: ReadonlySet<string>;
}

/** The animals to follow, among all of the cabinet, and what the day is. */
interface Following {
  readonly entries: readonly CabinetEntry[];
  readonly cabinet: readonly CabinetEntry[];
  readonly today: CalendarDay;
  readonly expectedMolt: (entry: CabinetEntry) => ExpectedMolt | null;
}

/** All that following each of these animals needs, in their order. */
export function animalRecordsOf(
  archive: Archive,
  { entries, cabinet, today, expectedMolt }: Following,
): (AnimalRecords & { observations: readonly Observation[] })[] {
  const ofAll = readOfAll(archive);
  let read: { readonly pointing: Pointing; readonly sizesOf: CarapaceSizes } | null = null;
  const growthOf = (entry: CabinetEntry): KnownGrowth => {
    if (!read) {
      const pointing = pointingIn(archive);
      read = { pointing, sizesOf: carapaceSizesIn(archive, pointing) };
    }
    return knownGrowth(archive, entry, growthNear(entry.specimen, cabinet, read.sizesOf, today), read.pointing);
  };
  return entries.map((entry) => {
    const { specimen, molts, determinations, liveSigns } = entry;
    return {
      specimen,
      observations: ofAll.observations.get(specimen.id) ?? [],
      molts,
      skins: skinStatesOf(entry, ofAll),
      growth: () => growthOf(entry),
      sex: signOf(determinations, liveSigns),
      determinations,
      liveSigns,
      forecast: expectedMolt(entry),
    };
  });
}

function readOfAll(archive: Archive): OfAll {
  const measuredPhotos = archive.readings.measuredPhotoIds('size');
  const ofSkins = archive.photos
    .list({ unassigned: false })
    .flatMap(({ id, subject }) =>
      subject.kind === 'skin' ? [{ exuviaId: subject.exuviaId, photoId: id, measured: measuredPhotos.has(id) }] : [],
    );
  return {
    observations: Map.groupBy(archive.observations.list(), ({ specimenId }) => specimenId),
    exuviaOfMolt: new Map(archive.exuviae.list().map((exuvia) => [exuvia.moltId, exuvia])),
    photoOf: new Map(ofSkins.map(({ exuviaId, photoId }) => [exuviaId, photoId])),
    measured: new Set(ofSkins.filter(({ measured }) => measured).map(({ exuviaId }) => exuviaId)),
  };
}

function skinStatesOf({ molts, determinations }: CabinetEntry, { exuviaOfMolt, photoOf, measured }: OfAll): SkinState[] {
  const sexed = new Set(standingOf(determinations).map(({ exuviaId }) => exuviaId));
  return molts.flatMap(({ id: moltId }): SkinState[] => {
    const exuvia = exuviaOfMolt.get(moltId);
    if (!exuvia) return [];
    const { id } = exuvia;
    return [{ moltId, exuvia, photoId: photoOf.get(id) ?? null, measured: measured.has(id), sexed: sexed.has(id) }];
  });
}

function knownGrowth(archive: Archive, { specimen, molts, lastMeasured }: CabinetEntry, near: Pooled, pointing: Pointing): KnownGrowth {
  const liveSpanMm = liveSpanOf(archive, specimen, molts, pointing);
  const belief = growthBeliefIn(near, specimen.id);
  if (!lastMeasured || !belief) return { onSkins: null, liveSpanMm };
  const skins = moltedSkinsOf(archive, specimen.id, pointing).map((skin) => ({ moltId: skin.molt.id, ...skinSizesOf(skin) }));
  return { onSkins: groundOfSize(skins, belief), liveSpanMm };
}

/** Of the latest photo of the living animal that surely shows it after its last molt. */
function liveSpanOf(archive: Archive, specimen: Specimen, molts: CabinetEntry['molts'], pointing: Pointing): Estimate | null {
  const last = molts.at(-1);
  const since = liveSizesOf(archive, specimen, molts, pointing).filter(
    ({ afterMoltId, step, legSpanMm }) => afterMoltId === (last?.id ?? null) && step !== null && legSpanMm !== null,
  );
  return since.at(-1)?.legSpanMm ?? null;
}
