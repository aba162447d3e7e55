import type { EvidenceMark } from './determination.ts';

export interface PhotoSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Whether every point of a mark lies on the upright picture, whose edges count. */
export function isOnPhoto(mark: EvidenceMark, { widthPx, heightPx }: PhotoSize): boolean {
  const points = mark.kind === 'point' ? [mark.at] : mark.points;
  return points.every(({ xPx, yPx }) => xPx >= 0 && xPx <= widthPx && yPx >= 0 && yPx <= heightPx);
}
