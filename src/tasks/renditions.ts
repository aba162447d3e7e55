import type { Archive } from '../archive/archive.ts';
import type { Renditions } from '../archive/records/renditions.ts';
import type { Photo, RenditionKind } from '../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { makeRendition } from '../images/picture.ts';

type OpenRendition = NonNullable<Awaited<ReturnType<Renditions['open']>>>;

/** One rendition, made again from the original when it is missing. Fails with `original-missing` when that is gone too. */
export async function openRendition(archive: Archive, photo: Photo, kind: RenditionKind): Promise<Result<OpenRendition>> {
  const kept = await archive.renditions.open(photo.sha256, kind);
  if (kept) return succeed(kept);
  const path = await archive.originals.pathOf(photo.sha256);
  if (path === null) return fail({ code: 'original-missing', photoId: photo.id });
  const made = await makeRendition({ path, name: photo.originalName }, kind);
  if (!made.ok) return made;
  await archive.renditions.put(photo.sha256, kind, made.value.bytes);
  const opened = await archive.renditions.open(photo.sha256, kind);
  return opened ? succeed(opened) : fail({ code: 'original-missing', photoId: photo.id });
}
