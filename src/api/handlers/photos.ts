import { Readable } from 'node:stream';
import { RENDITION_MEDIA_TYPE } from '../../archive/records/renditions.ts';
import { refuse } from '../../domain/failure.ts';
import { type Photo, type PhotoDraft, RenditionKind } from '../../domain/photo/photo.ts';
import { checkView } from '../../domain/photo/view.ts';
import { unwrap } from '../../domain/result.ts';
import { openRendition } from '../../tasks/renditions.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { photoEndpoints } from '../contract/photos.ts';
import type { BytesAnswer, HandlersFor } from '../route.ts';

export function photoHandlers(context: ApiContext): HandlersFor<keyof typeof photoEndpoints> {
  const { archive } = context;

  const originalOf = (photo: Photo): BytesAnswer => ({
    mediaType: photo.mediaType,
    contentHash: photo.sha256,
    open: async () => asBytes((await archive.originals.open(photo.sha256)) ?? refuse({ code: 'original-missing', photoId: photo.id })),
  });
  const renditionOf = (photo: Photo, kind: RenditionKind): BytesAnswer => ({
    mediaType: RENDITION_MEDIA_TYPE,
    contentHash: `${photo.sha256}-${kind}`,
    open: async () => asBytes(unwrap(await openRendition(archive, photo, kind))),
  });

  /** A skin that was never found has no photos, no photo comes from tomorrow, and a living animal shows its outside. */
  const checked = (draft: PhotoDraft): PhotoDraft => {
    const { subject, takenOn } = draft;
    if (takenOn !== null && takenOn > todayOf(context)) refuse({ code: 'date-in-future', field: 'takenOn', date: takenOn });
    unwrap(checkView(draft));
    if (subject.kind === 'skin') {
      const exuvia = unwrap(archive.exuviae.get(subject.exuviaId));
      if (!exuvia.recovered) refuse({ code: 'skin-not-recovered', moltId: exuvia.moltId });
    }
    return draft;
  };

  return {
    'GET /api/photos': ({ query }) => [...archive.photos.list(query)],
    'GET /api/photos/{photoId}': ({ path }) => unwrap(archive.photos.get(path.photoId)),
    'PUT /api/photos/{photoId}': ({ path, body, version }) => unwrap(archive.photos.update(path.photoId, version, checked(body))),
    'DELETE /api/photos/{photoId}': ({ path }) => unwrap(archive.removals.remove('photo', path.photoId)),
    'GET /api/photos/{photoId}/original': ({ path }) => originalOf(unwrap(archive.photos.get(path.photoId))),
    'GET /api/photos/{photoId}/renditions/{kind}': ({ path }) => {
      const kind = RenditionKind.safeParse(path.kind);
      if (!kind.success) return refuse({ code: 'not-found', what: 'rendition', id: path.kind });
      return renditionOf(unwrap(archive.photos.get(path.photoId)), kind.data);
    },
  };
}

function asBytes(file: { readonly stream: Readable; readonly byteLength: number }) {
  return { stream: Readable.toWeb(file.stream) as ReadableStream<Uint8Array>, byteLength: file.byteLength };
}
