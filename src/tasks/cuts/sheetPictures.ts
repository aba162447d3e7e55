import type { PlatedPhoto } from '../../domain/plate/platePhoto.ts';
import { SHEETS_MM, type SheetLayout } from '../../domain/plate/sheet.ts';
import { unwrap } from '../../domain/result.ts';
import { cutAsJpeg, stackedPng } from '../../images/plateSheets.ts';
import type { Cutter } from './cutter.ts';

/** Dots per millimeter of a sheet saved as a picture: 200 dpi, less where many pages stand below each other. */
export function sheetDotsPerMm(pages: number): number {
  return (pages > 4 ? 100 : 200) / 25.4;
}

/** The shown part of each skin for a PDF, by its index on the sheet. Refuses as the cutter does. */
export async function sheetPictures(
  cutter: Cutter,
  plated: readonly PlatedPhoto[],
  layout: SheetLayout,
): Promise<ReadonlyMap<number, Uint8Array>> {
  const pictures = new Map<number, Uint8Array>();
  for (const { index, shown } of layout.pages.flat()) {
    const item = plated[index];
    if (item) pictures.set(index, await cutAsJpeg(await bytesOf(cutter, item), shown));
  }
  return pictures;
}

/** @param drawings SVG to lay over each page. */
export async function sheetPng(
  cutter: Cutter,
  plated: readonly PlatedPhoto[],
  layout: SheetLayout,
  drawings: readonly string[],
): Promise<Uint8Array> {
  const dots = sheetDotsPerMm(layout.pages.length);
  const pictures = await sheetPictures(cutter, plated, layout);
  const pages = layout.pages.map((placed, page) => ({
    drawing: drawings[page] ?? '',
    places: placed.flatMap(({ index, leftMm, topMm, widthMm, heightMm }) => {
      const bytes = pictures.get(index);
      if (!bytes) return [];
      return [
        { picture: Buffer.from(bytes), leftPx: leftMm * dots, topPx: topMm * dots, widthPx: widthMm * dots, heightPx: heightMm * dots },
      ];
    }),
  }));
  const { widthMm, heightMm } = SHEETS_MM[layout.size];
  return stackedPng(pages, { widthPx: Math.round(widthMm * dots), heightPx: Math.round(heightMm * dots) });
}

/** The kept cut of a photo, made now if it is not kept. Refuses as the cutter does. */
export async function bytesOf(cutter: Cutter, plated: PlatedPhoto): Promise<Buffer> {
  const { stream } = unwrap(await cutter.open(plated));
  const chunks: Buffer[] = [];
  for await (const chunk of stream) chunks.push(Buffer.from(chunk));
  return Buffer.concat(chunks);
}
