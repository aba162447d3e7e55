import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import type { AnimalRecords, KnownGrowth, SkinState } from '../../domain/care/followed.ts';
import type { Observation } from '../../domain/care/observation.ts';
import { growthFactorFrom, type LastSkinSize } from '../../domain/care/spanNow.ts';
import type { ExpectedMolt } from '../../domain/growth/forecast/expectedMolt.ts';
import { buildLadder } from '../../domain/growth/ladder.ts';
import type { Estimate } from '../../domain/measuring/quantity.ts';
import type { Exuvia } from '../../domain/molting/exuvia.ts';
import { moltsSinceSkin } from '../../domain/molting/instars.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { liveSizesOf, onRecord } from './ladderPage.ts';
import { pointingIn } from './pointing.ts';
import { type MoltedSkin, moltedSkinsOf, skinSizesOf } from './skins.ts';

/** What is read for all animals at once, in a fixed number of statements. */
interface OfAll {
  readonly observations: ReadonlyMap<string, readonly Observation[]>;
  readonly exuviaOfMolt: ReadonlyMap<string, Exuvia>;
  readonly photographed: ReadonlySet<string>;
  readonly measured: ReadonlySet<string>;
}

/** All that following each of these animals needs, in their order. */
export function animalRecordsOf(
  archive: Archive,
  entries: readonly CabinetEntry[],
  expectedMolt: (entry: CabinetEntry) => ExpectedMolt | null,
): (AnimalRecords & { observations: readonly Observation[] })[] {
  const ofAll = readOfAll(archive);
  let read: Pointing | null = null;
  const pointing = (): Pointing => {
    read ??= pointingIn(archive);
    return read;
  };
  return entries.map((entry) => {
    const { specimen, molts, determinations, liveSigns } = entry;
    return {
      specimen,
      observations: ofAll.observations.get(specimen.id) ?? [],
      molts,
      skins: skinStatesOf(entry, ofAll),
      growth: () => knownGrowth(archive, entry, pointing()),
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
    .flatMap(({ id, subject }) => (subject.kind === 'skin' ? [{ exuviaId: subject.exuviaId, measured: measuredPhotos.has(id) }] : []));
  return {
    observations: Map.groupBy(archive.observations.list(), ({ specimenId }) => specimenId),
    exuviaOfMolt: new Map(archive.exuviae.list().map((exuvia) => [exuvia.moltId, exuvia])),
    photographed: new Set(ofSkins.map(({ exuviaId }) => exuviaId)),
    measured: new Set(ofSkins.filter(({ measured }) => measured).map(({ exuviaId }) => exuviaId)),
  };
}

function skinStatesOf({ molts, determinations }: CabinetEntry, { exuviaOfMolt, photographed, measured }: OfAll): SkinState[] {
  const sexed = new Set(standingOf(determinations).map(({ exuviaId }) => exuviaId));
  return molts.flatMap(({ id: moltId }): SkinState[] => {
    const exuvia = exuviaOfMolt.get(moltId);
    if (!exuvia) return [];
    const { id } = exuvia;
    return [{ moltId, exuvia, photographed: photographed.has(id), measured: measured.has(id), sexed: sexed.has(id) }];
  });
}

function knownGrowth(archive: Archive, { specimen, molts, lastMeasured }: CabinetEntry, pointing: Pointing): KnownGrowth {
  const liveSpanMm = liveSpanOf(archive, specimen, molts, pointing);
  if (!lastMeasured) return { lastSkinSize: null, liveSpanMm, factor: growthFactorFrom(null) };
  const skins = moltedSkinsOf(archive, specimen.id, pointing);
  return {
    lastSkinSize: lastSkinSizeOf(skins, specimen),
    liveSpanMm,
    factor: growthFactorFrom(buildLadder(skins.map(onRecord), specimen).fit),
  };
}

/** Of the latest photo of the living animal that surely shows it after its last molt. */
function liveSpanOf(archive: Archive, specimen: Specimen, molts: CabinetEntry['molts'], pointing: Pointing): Estimate | null {
  const last = molts.at(-1);
  const since = liveSizesOf(archive, specimen, molts, pointing).filter(
    ({ afterMoltId, step, legSpanMm }) => afterMoltId === (last?.id ?? null) && step !== null && legSpanMm !== null,
  );
  return since.at(-1)?.legSpanMm ?? null;
}

/** Of the latest skin that gives a length an animal's span can be told from. */
function lastSkinSizeOf(skins: readonly MoltedSkin[], specimen: Specimen): LastSkinSize | null {
  const molts = skins.map(({ molt }) => molt);
  for (const [back, skin] of skins.toReversed().entries()) {
    const { legSpanMm, carapaceLengthMm } = skinSizesOf(skin);
    const moltsSince = moltsSinceSkin(molts, skins.length - 1 - back, specimen);
    if (legSpanMm || carapaceLengthMm) return { legSpanMm, carapaceLengthMm, moltsSince };
  }
  return null;
}
