import type { Archive } from '../../archive/archive.ts';
import type { CalendarDay, Instant } from '../../domain/dates.ts';
import { refuse } from '../../domain/failure.ts';
import type { PhotoSubject } from '../../domain/photo/photo.ts';
import { unwrap } from '../../domain/result.ts';
import type { GenusBook } from '../../domain/sexing/genus/find.ts';
import { momentOnWall } from '../localTime.ts';
import type { SamplePhoto } from './data.ts';
import { marksOn, placesOf, readingOn } from './drawnSkin.ts';

/** What all records of the sample are written with. */
export interface Filling {
  readonly archive: Archive;
  readonly photoIds: ReadonlyMap<string, string>;
  readonly book: GenusBook;
  readonly now: Instant;
  readonly keeper: string;
  readonly dayOf: (offset: number) => CalendarDay;
}

/** Gives a picture to what it shows, with its scale and its reading. */
export function fillPhoto(filling: Filling, sample: SamplePhoto, subject: PhotoSubject): void {
  const { archive, dayOf, keeper, now } = filling;
  const photo = unwrap(archive.photos.get(photoIdOf(sample.file, filling)));
  const { view, marks, reading } = sample.kind === 'file' ? sample : measuredDrawing(sample, keeper);
  unwrap(archive.photos.update(photo.id, photo.version, { subject, view, takenOn: dayOf(sample.takenOn), notes: sample.notes }));
  if (marks !== null) unwrap(archive.calibrations.put(photo.id, 0, marks));
  if (reading === null) return;
  // It was measured when it was photographed, not when the sample came.
  const [measuredAt] = [momentOnWall(dayOf(sample.takenOn), '12:00').at, now].toSorted();
  unwrap(archive.readings.create(photo.id, reading, measuredAt));
}

function measuredDrawing({ skin }: Extract<SamplePhoto, { kind: 'drawing' }>, keeper: string) {
  const places = placesOf(skin);
  return { view: 'dorsal', marks: marksOn(places), reading: readingOn(places, keeper) } as const;
}

export function photoIdOf(file: string, { photoIds }: Pick<Filling, 'photoIds'>): string {
  return photoIds.get(file) ?? refuse({ code: 'not-found', what: 'photo', id: file });
}
