import { z } from 'zod';
import { CalendarDay, CameraTime, Instant } from '../dates.ts';
import type { Shown } from '../measuring/heights.ts';

export const MediaType = z.enum(['image/jpeg', 'image/png', 'image/webp', 'image/tiff', 'image/heic']).meta({ id: 'MediaType' });
export type MediaType = z.infer<typeof MediaType>;

export const PhotoView = z.enum(['dorsal', 'ventral', 'abdomen-inside', 'abdomen-outside', 'detail', 'other']).meta({ id: 'PhotoView' });
export type PhotoView = z.infer<typeof PhotoView>;

/** What the picture shows: a skin (of the instar that ended) or the animal itself. */
export const PhotoSubject = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('none') }),
    z.object({ kind: z.literal('skin'), exuviaId: z.string() }),
    z.object({ kind: z.literal('animal'), specimenId: z.string() }),
  ])
  .meta({ id: 'PhotoSubject' });
export type PhotoSubject = z.infer<typeof PhotoSubject>;

/** What the camera wrote, as far as measuring needs it. */
export const CameraFacts = z
  .object({
    takenAt: CameraTime.nullable(),
    camera: z.string().nullable(),
    focalLengthMm: z.number().positive().nullable(),
    focalLength35Mm: z.number().positive().nullable().describe('35 mm equivalent, by equal diagonal (CIPA DCG-001)'),
    orientation: z.int().min(1).max(8).describe('EXIF orientation of the stored bytes; 1 if none'),
  })
  .meta({ id: 'CameraFacts' });
export type CameraFacts = z.infer<typeof CameraFacts>;

/** What the keeper says about a photo. `takenOn` starts as the camera's day and can be corrected. */
export const PhotoDraft = z
  .object({
    subject: PhotoSubject,
    view: PhotoView,
    takenOn: CalendarDay.nullable(),
    notes: z.string().max(20_000),
  })
  .meta({ id: 'PhotoDraft' });
export type PhotoDraft = z.infer<typeof PhotoDraft>;

/**
 * A permanent photograph. All image coordinates refer to its upright frame: x right, y down, the centre of the
 * top-left pixel at (0.5, 0.5), EXIF orientation already applied; `widthPx` and `heightPx` are of that frame.
 */
export const Photo = PhotoDraft.extend({
  id: z.string(),
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  originalName: z.string(),
  mediaType: MediaType,
  byteLength: z.int().positive(),
  widthPx: z.int().positive(),
  heightPx: z.int().positive(),
  facts: CameraFacts,
  importedAt: Instant,
  sample: z.boolean(),
  version: z.int(),
}).meta({ id: 'Photo' });
export type Photo = z.infer<typeof Photo>;

/** Smaller or re-encoded copies, always upright: cabinet thumbnails, a screenful, and a full-size one for formats no browser shows. */
export const RenditionKind = z.enum(['thumbnail', 'screen', 'full']).meta({ id: 'RenditionKind' });
export type RenditionKind = z.infer<typeof RenditionKind>;

/** Longest side of each rendition in pixels; `full` keeps the size. */
export const RENDITION_LONGEST_PX = { thumbnail: 480, screen: 2400 } as const;

/** Pictures beyond this are refused at the door: 300 megapixels. */
export const LARGEST_PICTURE_PX = 300_000_000;

/**
 * Which bytes the Bench draws from. A browser decodes upright JPEG, PNG and WebP itself; for the rest the archive
 * makes a full-size rendition. JPEG orientation is left to the browser, which applies it as the archive does.
 */
export function benchSourceOf(photo: Pick<Photo, 'mediaType' | 'facts'>): 'original' | 'full' {
  if (photo.mediaType === 'image/jpeg') return 'original';
  const shownByBrowsers = photo.mediaType === 'image/png' || photo.mediaType === 'image/webp';
  return shownByBrowsers && photo.facts.orientation === 1 ? 'original' : 'full';
}

/** Whose size is measured on a photo, for the default heights: of a photo that belongs to nobody yet a skin's. */
export function shownOn({ subject }: Pick<Photo, 'subject'>): Shown {
  return subject.kind === 'animal' ? 'animal' : 'skin';
}
