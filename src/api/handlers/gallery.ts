import { Readable } from 'node:stream';
import { CUT_MEDIA_TYPE } from '../../archive/records/renditions.ts';
import { refuse } from '../../domain/failure.ts';
import { frameAround } from '../../domain/plate/frame.ts';
import { cutKeyOf } from '../../domain/plate/platePhoto.ts';
import { layOutSheet } from '../../domain/plate/sheet.ts';
import { unwrap } from '../../domain/result.ts';
import { contactSheetPdf } from '../../exchange/contactSheet/contactSheetPdf.ts';
import { framePages } from '../../exchange/contactSheet/framePages.ts';
import { sheetPages } from '../../exchange/contactSheet/sheetPages.ts';
import { svgPage } from '../../exchange/contactSheet/svgPage.ts';
import { openFaces } from '../../exchange/contactSheet/typesetting.ts';
import { FLIP_DOTS_PER_MM, flipBook } from '../../tasks/cuts/flipBook.ts';
import { prepareCuts } from '../../tasks/cuts/prepare.ts';
import { sheetDotsPerMm, sheetPictures, sheetPng } from '../../tasks/cuts/sheetPictures.ts';
import type { ApiContext } from '../context.ts';
import type { galleryEndpoints } from '../contract/gallery.ts';
import type { BytesAnswer, HandlersFor } from '../route.ts';
import { exhibitOf } from '../views/exhibit.ts';
import { platedPhotoOf } from '../views/skinRow.ts';

export function galleryHandlers(context: ApiContext): HandlersFor<keyof typeof galleryEndpoints> {
  const { archive, cutter, tasks } = context;

  return {
    'GET /api/photos/{photoId}/cuts/{cutKey}': ({ path }) => {
      const plated = platedPhotoOf(archive, path.photoId);
      if (cutKeyOf(plated) !== path.cutKey) refuse({ code: 'not-found', what: 'cut', id: path.cutKey });
      return {
        mediaType: CUT_MEDIA_TYPE,
        contentHash: `${plated.photo.sha256}-${path.cutKey}`,
        open: async () => {
          const { stream, byteLength } = unwrap(await cutter.open(plated));
          return { stream: Readable.toWeb(stream) as ReadableStream<Uint8Array>, byteLength };
        },
      };
    },
    'POST /api/specimens/{specimenId}/cuts': ({ path }) => prepareCuts(tasks, cutter, exhibitOf(archive, path.specimenId).plated),
    'GET /api/specimens/{specimenId}/contact-sheet.pdf': ({ path, query }) => {
      const { plated, plates, words } = exhibitOf(archive, path.specimenId);
      const layout = layOutSheet(plates, query.sheet, query.scale);
      return made('application/pdf', async () => contactSheetPdf(layout, words, await sheetPictures(cutter, plated, layout)));
    },
    'GET /api/specimens/{specimenId}/contact-sheet.png': ({ path, query }) => {
      const { plated, plates, words } = exhibitOf(archive, path.specimenId);
      const layout = layOutSheet(plates, query.sheet, query.scale);
      const dots = sheetDotsPerMm(layout.pages.length);
      return made('image/png', async () => {
        const faces = await openFaces();
        const drawings = sheetPages(layout, words, faces).map((page) => svgPage(page, faces, dots));
        return sheetPng(cutter, plated, layout, drawings);
      });
    },
    'GET /api/specimens/{specimenId}/flip-book.webp': ({ path, query }) => {
      const { skins, plates, words } = exhibitOf(archive, path.specimenId);
      const frame = frameAround(plates);
      return made('image/webp', async () => {
        const faces = await openFaces();
        const { pages, ...size } = framePages(frame, words, faces);
        const frames = skins.map((skin, index) => {
          const page = pages[index];
          return { ...skin, drawing: page ? svgPage(page, faces, FLIP_DOTS_PER_MM) : '' };
        });
        const place = {
          widthPx: Math.round(size.widthMm * FLIP_DOTS_PER_MM),
          heightPx: Math.round(size.heightMm * FLIP_DOTS_PER_MM),
          skinsLeftPx: size.skinsLeftMm * FLIP_DOTS_PER_MM,
          skinsTopPx: size.skinsTopMm * FLIP_DOTS_PER_MM,
          pxPerMm: size.factor * FLIP_DOTS_PER_MM,
        };
        return flipBook(cutter, frames, { frame, place, frameMs: query.frameMs });
      });
    },
  };
}

/** A file made for whoever asks; kept nowhere. */
function made(mediaType: string, make: () => Promise<Uint8Array>): BytesAnswer {
  return {
    mediaType,
    contentHash: null,
    open: async () => {
      const file = new Blob([new Uint8Array(await make())]);
      return { stream: file.stream(), byteLength: file.size };
    },
  };
}
