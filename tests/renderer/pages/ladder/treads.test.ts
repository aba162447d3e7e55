import { describe, expect, it } from 'vitest';
import { buildLadder, type MoltOnRecord } from '../../../../src/domain/growth/ladder.ts';
import { pointsOf } from '../../../../src/renderer/pages/ladder/chart/measures.ts';
import { placePoint } from '../../../../src/renderer/pages/ladder/chart/placedPoint.ts';
import { treadsOf } from '../../../../src/renderer/pages/ladder/chart/treads.ts';
import { moltOn } from '../../../domain/growth/skins.ts';

/** The nth molt of the list stands at 100 n px, a size of s mm at -s px. */
function treads(...molts: MoltOnRecord[]) {
  const ladder = buildLadder(molts);
  const places = new Map(ladder.rungs.map((rung, index) => [rung.moltId, 100 * (index + 1)]));
  const xOf = (moltId: string) => places.get(moltId) ?? Number.NaN;
  const placed = pointsOf(ladder, 'carapaceLengthMm', []).map((point) =>
    placePoint(point, (sizeMm) => -sizeMm, { fromPx: xOf(point.rung.moltId), toPx: xOf(point.rung.moltId) }),
  );
  return treadsOf(placed, xOf);
}

describe('treadsOf', () => {
  it('draws each size backwards from its molt to the molt before, for a skin shows the instar that ended', () => {
    const [first, second] = treads(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, 5));
    expect(second).toMatchObject({ fromPx: 100, toPx: 200, yPx: -5, beginUnknown: false, riseFromPx: -4 });
    expect(first).toMatchObject({ toPx: 100, yPx: -4, beginUnknown: true, riseFromPx: null });
  });

  it('draws nothing after the last molt', () => {
    expect(Math.max(...treads(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, 5)).map(({ toPx }) => toPx))).toBe(200);
  });

  it('does not say when an instar began after a gap', () => {
    const [, afterGap] = treads(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 7, 6));
    expect(afterGap).toMatchObject({ beginUnknown: true, riseFromPx: null });
    expect(afterGap?.fromPx).toBeGreaterThan(100);
  });

  it('begins at a molt without a size, with no riser from it', () => {
    const [, afterUnmeasured] = treads(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, null), moltOn('2024-09-01', 7, 6.2));
    expect(afterUnmeasured).toMatchObject({ fromPx: 200, toPx: 300, beginUnknown: false, riseFromPx: null });
  });
});
