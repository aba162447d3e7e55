import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { PictureFacts } from '../../../src/domain/measuring/camera.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { readCameraFacts } from '../../../src/images/cameraFacts.ts';
import { type ReducedLight, readLight } from '../../../src/images/light.ts';
import { PhotoTruth } from '../../support/photoTruth.ts';
import { samplePhotoOf } from '../../support/renderedLight.ts';

/** A rendered photo beside its truth. */
export interface RenderedPhoto {
  readonly path: string;
  readonly truth: PhotoTruth;
}

/** A photo as the program sees it: light, size and what EXIF tells. */
export interface SeenPhoto extends RenderedPhoto {
  readonly light: ReducedLight;
  readonly picture: PictureFacts;
}

const TRUTH_FOLDERS = ['photo-truth', 'scale-truth'].map((name) => resolve(import.meta.dirname, '../../fixtures', name));

/**
 * Photos with a scale object in them.
 *
 * @param folder holds NAME.jpg and NAME.json beside each other; null for those that the repository carries.
 */
export function renderedPhotos(folder: string | null): readonly RenderedPhoto[] {
  const truthFiles = (folder === null ? TRUTH_FOLDERS : [folder]).flatMap((from) =>
    readdirSync(from)
      .filter((file) => file.endsWith('.json'))
      .map((file) => join(from, file)),
  );
  const photos = truthFiles.flatMap((file): RenderedPhoto[] => {
    const written: unknown = JSON.parse(readFileSync(file, 'utf8'));
    const parsed = PhotoTruth.safeParse(written);
    if (!parsed.success) throw new Error(`${file} is no truth of a rendered photo: ${parsed.error.issues[0]?.path.join('.')}`);
    const path = folder === null ? samplePhotoOf(parsed.data) : file.replace(/\.json$/, '.jpg');
    if (path === null || !existsSync(path)) return [];
    return parsed.data.scale_objects.length > 0 ? [{ path, truth: parsed.data }] : [];
  });
  return photos.toSorted((one, other) => one.truth.name.localeCompare(other.truth.name));
}

/** Decodes a photo; the focal length is the one its EXIF tells, not that of the truth. */
export async function seen(photo: RenderedPhoto): Promise<SeenPhoto> {
  const light = unwrap(await readLight({ path: photo.path, name: photo.truth.name }));
  const { widthPx, heightPx } = light.image;
  const { focalLength35Mm } = await readCameraFacts(photo.path, { widthPx, heightPx });
  return { ...photo, light, picture: { widthPx, heightPx, facts: { focalLength35Mm } } };
}
