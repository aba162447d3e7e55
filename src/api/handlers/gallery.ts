import { Readable } from 'node:stream';
import { CUT_MEDIA_TYPE } from '../../archive/records/renditions.ts';
import { refuse } from '../../domain/failure.ts';
import { frameAround } from '../../domain/plate/frame.ts';
import { cutKeyOf, platePhoto } from '../../domain/plate/platePhoto.ts';
import { layOutSheet } from '../../domain/plate/sheet.ts';
import { unwrap } from '../../domain/result.ts';
import { contactSheetPdf } from '../../exchange/contactSheet/contactSheetPdf.ts';
import { frameDrawing, sheetDrawing } from '../../exchange/contactSheet/sheetDrawing.ts';
import { sheetWordsOf } from '../../exchange/contactSheet/sheetWords.ts';
import { flipBook, flipPxPerMm, sheetDotsPerMm, sheetPictures, sheetPng } from '../../tasks/cuts/leaving.ts';
import { prepareCuts } from '../../tasks/cuts/prepare.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { galleryEndpoints } from '../contract/gallery.ts';
import type { BytesAnswer, HandlersFor } from '../route.ts';
import { ladderPageOf, platedPhotoOf } from '../views/ladderPage.ts';

export function galleryHandlers(context: ApiContext): HandlersFor<keyof typeof galleryEndpoints> {
  const { archive, cutter, tasks } = context;

  /** The skins that can be brought to scale, oldest first, one photo of each, with everything that is written beside them. */
  const exhibitOf = (specimenId: string) => {
    const { specimen, ladder, gallery } = ladderPageOf(archive, specimenId, todayOf(context));
    const skins = ladder.rungs.flatMap((rung) => {
      const plated = gallery.find(({ photo }) => photo.id === rung.photoId);
      const placed = plated && platePhoto(plated);
      return placed && 'plate' in placed ? [{ rung, plated, plate: placed.plate }] : [];
    });
    if (skins.length === 0) refuse({ code: 'nothing-at-scale' });
    return {
      skins,
      plated: skins.map(({ plated }) => plated),
      plates: skins.map(({ plate }) => plate),
      words: sheetWordsOf(
        specimen,
        skins.map(({ rung }) => rung),
      ),
    };
  };

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
    'POST /api/specimens/{specimenId}/cuts': ({ path }) => prepareCuts(tasks, cutter, exhibitOf(path.specimenId).plated),
    'GET /api/specimens/{specimenId}/contact-sheet.pdf': ({ path, query }) => {
      const { plated, plates, words } = exhibitOf(path.specimenId);
      const layout = layOutSheet(plates, query.sheet, query.scale);
      return made('application/pdf', async () => contactSheetPdf(layout, words, await sheetPictures(cutter, plated, layout)));
    },
    'GET /api/specimens/{specimenId}/contact-sheet.png': ({ path, query }) => {
      const { plated, plates, words } = exhibitOf(path.specimenId);
      const layout = layOutSheet(plates, query.sheet, query.scale);
      const dots = sheetDotsPerMm(layout.pages.length);
      const drawings = layout.pages.map((_, page) => sheetDrawing(layout, words, page, dots));
      return made('image/png', () => sheetPng(cutter, plated, layout, drawings));
    },
    'GET /api/specimens/{specimenId}/flip-book.webp': ({ path, query }) => {
      const { skins, plates, words } = exhibitOf(path.specimenId);
      const frame = frameAround(plates);
      const pxPerMm = flipPxPerMm(frame);
      const size = { widthPx: frame.widthMm * pxPerMm, heightPx: frame.heightMm * pxPerMm, pxPerMm };
      const frames = skins.map((skin, index) => ({ ...skin, drawing: frameDrawing(size, words, index) }));
      return made('image/webp', () => flipBook(cutter, frames, frame, query.frameMs));
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
