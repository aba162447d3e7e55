import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { CalendarDay } from '../../domain/dates.ts';
import { pngOfDrawing } from '../../images/drawing.ts';
import type { SamplePhoto } from './data.ts';
import { drawingOf } from './skinDrawing.ts';

/** The bytes of one picture of the sample, as a camera would have written them on that day. */
export async function pictureOf(photo: SamplePhoto, folder: string, takenOn: CalendarDay): Promise<Uint8Array> {
  if (photo.kind === 'drawing') return await pngOfDrawing(drawingOf(photo.skin));
  return withCameraDay(await readFile(join(folder, 'photos', photo.file)), takenOn);
}

/** Bytes of a JPEG before which its EXIF block ends: a segment holds at most so many. */
const EXIF_WITHIN = 65_540;

/** Date and time as EXIF writes them: "YYYY:MM:DD HH:MM:SS" and a NUL (EXIF 2.32, 4.6.4). */
const EXIF_TIME = /\d{4}:\d{2}:\d{2}(?= \d{2}:\d{2}:\d{2}\0)/g;

/** The same picture taken at the same hour of another day; a day takes as many bytes as any other. */
export function withCameraDay(jpeg: Buffer, day: CalendarDay): Buffer {
  const head = jpeg.subarray(0, EXIF_WITHIN).toString('latin1').replace(EXIF_TIME, day.replaceAll('-', ':'));
  return Buffer.concat([Buffer.from(head, 'latin1'), jpeg.subarray(EXIF_WITHIN)]);
}
