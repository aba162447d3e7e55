import type { PhotoView } from '../photo/photo.ts';
import { type EvidenceMark, type EvidencePin, type PinnedQuestion, StripAnswer } from './determination.ts';

export interface PhotoSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Whether every point of a mark lies on the upright picture, whose edges count. */
export function isOnPhoto(mark: EvidenceMark, { widthPx, heightPx }: PhotoSize): boolean {
  const points = mark.kind === 'point' ? [mark.at] : mark.points;
  return points.every(({ xPx, yPx }) => xPx >= 0 && xPx <= widthPx && yPx >= 0 && yPx <= heightPx);
}

/**
 * Whether a photo of this view can show what a question asks of. The strip lies on the lower side of the abdomen, its receptacles
 * inside and its fusillae outside: a skin seen from above shows neither. A detail may show anything.
 */
export function canShow(question: PinnedQuestion, view: PhotoView): boolean {
  if (view === 'detail' || view === 'other') return true;
  if (question === 'fusillaeOutsideSeen') return view === 'abdomen-outside' || view === 'ventral';
  if (question === 'fourBookLungsFound') return view !== 'dorsal';
  return StripAnswer.options.some((answer) => answer === question) ? view === 'abdomen-inside' : true;
}

/** Evidence photos that may show what a question asks: those pinned to it, and those pinned to nothing. */
export function photosOf(
  question: PinnedQuestion,
  { evidencePhotoIds, pins }: { readonly evidencePhotoIds: readonly string[]; readonly pins: readonly EvidencePin[] },
): string[] {
  return evidencePhotoIds.filter((photoId) => {
    const own = pins.filter((pin) => pin.photoId === photoId);
    return own.length === 0 || own.some((pin) => pin.question === question);
  });
}
