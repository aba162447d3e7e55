import type { PlacedPoint } from './placedPoint.ts';

/** The life of one instar as a line of constant size, ending where its skin was shed. */
export interface Tread {
  readonly moltId: string;
  readonly fromPx: number;
  readonly toPx: number;
  readonly yPx: number;
  /** When the instar began is not on record: only its end is sure, so only a stub is drawn. */
  readonly beginUnknown: boolean;
  /** Where the size before stood, if that was the instar just before and was measured: a riser is drawn to it. */
  readonly riseFromPx: number | null;
}

const STUB_PX = 26;

/**
 * A skin tells the size of the instar that ended, which began with the molt before. So the line runs backwards from each
 * molt to the one before it, and nothing stands after the last molt: that size will be known from the next skin.
 *
 * @param placed measured skins, oldest first.
 * @param xOfMolt middle of the days of any molt on record, px.
 */
export function treadsOf(placed: readonly PlacedPoint[], xOfMolt: (moltId: string) => number): Tread[] {
  return placed.map(({ point, xPx, yPx }, index) => {
    const begin = point.follows && point.previous ? xOfMolt(point.previous.moltId) : null;
    const below = placed[index - 1];
    const measuredBefore = begin !== null && below?.point.rung.moltId === point.previous?.moltId;
    return {
      moltId: point.rung.moltId,
      fromPx: begin ?? xPx - STUB_PX,
      toPx: xPx,
      yPx,
      beginUnknown: begin === null,
      riseFromPx: measuredBefore && below ? below.yPx : null,
    };
  });
}
