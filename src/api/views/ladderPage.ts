import type { Archive } from '../../archive/archive.ts';
import type { Pointing } from '../../domain/agreement/pointing.ts';
import { moltWatchedOf } from '../../domain/care/lastMolt.ts';
import type { CalendarDay } from '../../domain/dates.ts';
import { type GrowthBelief, growthBeliefIn } from '../../domain/growth/belief/growthBelief.ts';
import type { Pooled } from '../../domain/growth/belief/pooledCabinet.ts';
import { growthReportOf } from '../../domain/growth/growthReport.ts';
import { type LiveSize, placeLiveSizes } from '../../domain/growth/liveSizes.ts';
import type { Molt } from '../../domain/molting/molt.ts';
import { diedIn } from '../../domain/molting/outcomes.ts';
import { unwrap } from '../../domain/result.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { isKept } from '../../domain/specimen/counts.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { GalleryItem, LadderPage } from '../contract/growth.ts';
import { animalSignsOf } from './animalSigns.ts';
import { type CarapaceSizes, carapaceSizesIn, carapacesOn, growthNear } from './growthBelief.ts';
import { livingInstarOf } from './livingInstar.ts';
import { measureReadings, skinReadingsOf } from './measurements.ts';
import { pointingIn } from './pointing.ts';
import { type GalleryPlace, skinRowOf } from './skinRow.ts';

/** A page whose cuts have not been looked for yet. */
type UncutPage = Omit<LadderPage, 'gallery'> & { readonly gallery: readonly GalleryPlace[] };

export function ladderPageOf(archive: Archive, specimenId: string, today: CalendarDay): UncutPage {
  const specimen = unwrap(archive.specimens.get(specimenId));
  const pointing = pointingIn(archive);
  const { skins, records, ladder, gallery } = skinRowOf(archive, specimen, pointing);
  const sizesOfOthers = carapaceSizesIn(archive, pointing);
  const sizesOf: CarapaceSizes = (id) => (id === specimenId ? carapacesOn(skins) : sizesOfOthers(id));
  const entry = unwrap(archive.cabinet.entry(specimenId));
  const watched = moltWatchedOf(entry.stageNotes, entry.molts);
  const near = growthNear(specimen, archive.cabinet.entries(), sizesOf, today);
  const growth = growthReportOf(ladder, records, {
    today,
    sex: signOf(archive.determinations.ofSpecimen(specimenId), animalSignsOf(archive, specimenId)).sex,
    isKept: isKept(specimen.status) && diedIn(entry.molts) === null,
    belief: beliefIn(near, specimenId),
    moltedSince: watched?.state === 'not-recorded',
    live: liveSizesOf(
      archive,
      specimen,
      skins.map(({ molt }) => molt),
      pointing,
    ),
  });
  const instarNow = livingInstarOf(entry, watched);
  return { specimen, instarNow, ladder, growth, gallery };
}

function beliefIn(near: Pooled, specimenId: string): GrowthBelief {
  const belief = growthBeliefIn(near, specimenId);
  if (!belief) throw new RangeError(`Expected ${specimenId} in the cabinet`);
  return belief;
}

/** From measured photos of the living animal. */
export function liveSizesOf(archive: Archive, specimen: Specimen, molts: readonly Molt[], pointing: Pointing): LiveSize[] {
  const measured = archive.photos.ofAnimal(specimen.id).flatMap((photo) => {
    const readings = archive.readings.ofPhoto(photo.id);
    if (readings.length === 0) return [];
    const calibration = unwrap(archive.calibrations.get(photo.id));
    return [{ photo, readings: skinReadingsOf(photo.id, measureReadings(photo, calibration, readings, pointing)) }];
  });
  return placeLiveSizes(measured, molts, specimen);
}

/** The page with which cuts are kept already. */
export async function withCuts(archive: Archive, page: UncutPage): Promise<LadderPage> {
  const look = async (item: UncutPage['gallery'][number]): Promise<GalleryItem> => ({
    ...item,
    cutReady: await archive.renditions.hasCut(item.photo.sha256, item.cutKey),
  });
  return { ...page, gallery: await Promise.all(page.gallery.map(look)) };
}
