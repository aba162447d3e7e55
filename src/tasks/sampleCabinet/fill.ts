import type { Archive } from '../../archive/archive.ts';
import { addDays, type CalendarDay, type Instant } from '../../domain/dates.ts';
import { type Result, succeed, unwrap } from '../../domain/result.ts';
import { type GenusBook, profileFor } from '../../domain/sexing/genus/find.ts';
import type { ShippedProfile } from '../../domain/sexing/genus/profile.ts';
import { checkSpecimenDates } from '../../domain/specimen/dates.ts';
import { keepersDay } from '../localTime.ts';
import type { SampleCabinet, SampleSpecimen } from './data.ts';
import { type Filling, fillPhoto } from './filling.ts';
import { fillMolt } from './fillMolt.ts';
import { fillLiveSigns, fillObservations } from './fillSeen.ts';

/**
 * Writes the records of the sample cabinet in one transaction, so that the archive holds all of it or none, each past the check
 * that a keeper's own would meet. The photos are already in the archive; `photoIds` says under which id each file of the cabinet is.
 */
export function fillSampleCabinet(
  archive: Archive,
  cabinet: SampleCabinet,
  {
    photoIds,
    genera,
    now,
  }: { readonly photoIds: ReadonlyMap<string, string>; readonly genera: readonly ShippedProfile[]; readonly now: Instant },
): Result<null> {
  const today = keepersDay(now);
  const book: GenusBook = { shipped: genera, edits: archive.genusEdits.list() };
  const filling: Filling = { archive, photoIds, book, now, keeper: cabinet.keeper, dayOf: (offset) => addDays(today, offset) };
  return archive.transaction(() => {
    for (const entry of cabinet.specimens) fillSpecimen(filling, entry);
    return succeed(null);
  });
}

function fillSpecimen(filling: Filling, entry: SampleSpecimen): void {
  const { archive, dayOf, book } = filling;
  const { acquiredOn, hatchedOn, ...known } = entry.specimen;
  const onDay = (offset: number | null): CalendarDay | null => (offset === null ? null : dayOf(offset));
  const draft = unwrap(checkSpecimenDates({ ...known, acquiredOn: onDay(acquiredOn), hatchedOn: onDay(hatchedOn) }, dayOf(0)));
  const specimen = unwrap(archive.specimens.create(draft, { sample: true }));
  for (const photo of entry.animalPhotos) fillPhoto(filling, photo, { kind: 'animal', specimenId: specimen.id });
  const genus = profileFor(specimen.taxon, book);
  const later = [...entry.liveSigns];
  // A reading knows of what was seen of the animal before it, and of nothing after.
  const signsUntil = (offset: number): void => {
    fillLiveSigns(filling, specimen, later.splice(0, later.filter(({ seenOn }) => seenOn <= offset).length));
  };
  for (const molt of entry.molts) fillMolt(filling, molt, { specimen, genus, signsUntil });
  fillLiveSigns(filling, specimen, later);
  fillObservations(filling, specimen, entry.observations);
}
