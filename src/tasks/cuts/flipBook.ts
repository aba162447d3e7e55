import type { PlateFrame } from '../../domain/plate/frame.ts';
import type { PlatedPhoto } from '../../domain/plate/platePhoto.ts';
import type { SheetPlate } from '../../domain/plate/sheet.ts';
import { animatedWebp } from '../../images/flipBook.ts';
import type { Cutter } from './cutter.ts';
import { bytesOf } from './sheetPictures.ts';

/** Pixels for each millimeter of a frame's own paper: 900 along the skins. */
export const FLIP_DOTS_PER_MM = 5;

/** The size of all frames, and where in them the frame around the skins lies, px. */
export interface FlipPlace {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly skinsLeftPx: number;
  readonly skinsTopPx: number;
  /** Pixels for each millimeter of skin. */
  readonly pxPerMm: number;
}

/**
 * The skins of an animal one after the other, each with its carapace at the same place and all at the same scale. Refuses as the cutter does.
 *
 * @param skins with an SVG to lay over each frame, in its pixels.
 */
export async function flipBook(
  cutter: Cutter,
  skins: readonly { readonly plated: PlatedPhoto; readonly plate: SheetPlate; readonly drawing: string }[],
  { frame, place, frameMs }: { readonly frame: PlateFrame; readonly place: FlipPlace; readonly frameMs: number },
): Promise<Uint8Array> {
  const { pxPerMm } = place;
  const frames = [];
  for (const { plated, plate, drawing } of skins) {
    frames.push({
      cut: await bytesOf(cutter, plated),
      leftPx: place.skinsLeftPx + (frame.carapaceFromLeftMm - plate.carapaceFromLeftMm) * pxPerMm,
      topPx: place.skinsTopPx + (frame.carapaceAtMm - plate.carapaceAtMm) * pxPerMm,
      widthPx: plate.widthMm * pxPerMm,
      heightPx: plate.heightMm * pxPerMm,
      drawing,
    });
  }
  return animatedWebp(frames, place, frameMs);
}
