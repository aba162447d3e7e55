import { describe, expect, it } from 'vitest';
import { judgedPicture } from '../../../src/domain/finding/judged.ts';
import { proposeStraightObjects, type StraightProposal } from '../../../src/domain/finding/proposals.ts';
import { type PhotoTruth, photoTruths, pictureOf, rectangleOn } from '../../support/photoTruth.ts';
import { lightOf } from '../../support/renderedLight.ts';

/** Right when every corner lies within 1 % of the card's width of a true one. */
function isRightCard(truth: PhotoTruth, { corners }: Extract<StraightProposal, { kind: 'id-1' }>): boolean {
  const { object, marks } = rectangleOn(truth);
  const reach = 0.01 * Math.hypot(marks.corners[1].xPx - marks.corners[0].xPx, marks.corners[1].yPx - marks.corners[0].yPx);
  return (
    object === 'card' && corners.every((corner) => marks.corners.some((at) => Math.hypot(at.xPx - corner.xPx, at.yPx - corner.yPx) < reach))
  );
}

/** Right when both ends lie on the rule and at least two thirds of its ticks between them. */
function isRightRule(truth: PhotoTruth, { ends }: Extract<StraightProposal, { kind: 'rule' }>): boolean {
  const rule = truth.scale_objects.find((object) => object.type === 'rule');
  const [first, last] = [rule?.ticks_at_edge_px.at(0), rule?.ticks_at_edge_px.at(-1)];
  if (!first || !last) return false;
  const length = Math.hypot(last[0] - first[0], last[1] - first[1]);
  const [dx, dy] = [(last[0] - first[0]) / length, (last[1] - first[1]) / length];
  const places = ends.map((end) => ({
    along: ((end.xPx - first[0]) * dx + (end.yPx - first[1]) * dy) / length,
    off: Math.abs((end.xPx - first[0]) * dy - (end.yPx - first[1]) * dx) / length,
  }));
  const [one, other] = places;
  return (
    !!one &&
    !!other &&
    Math.abs(other.along - one.along) > 2 / 3 &&
    places.every(({ along, off }) => along > -0.1 && along < 1.1 && off < 0.05)
  );
}

describe('scale objects proposed without a click', () => {
  it('are right on at least four of five rendered photos that show one, and never wrong on the others', async () => {
    const wanted = { 'id-1': 0, rule: 0 };
    const right = { 'id-1': 0, rule: 0 };
    for (const truth of photoTruths()) {
      const light = await lightOf(truth);
      if (!light) continue;
      const proposals = proposeStraightObjects(judgedPicture(light.image, light.colors), pictureOf(truth));
      const shows = {
        'id-1': truth.scale_objects.some(({ type }) => type === 'id1_card'),
        rule: truth.scale_objects.some(({ type }) => type === 'rule'),
      };
      for (const kind of ['id-1', 'rule'] as const) wanted[kind] += shows[kind] ? 1 : 0;
      for (const proposal of proposals) {
        expect(shows[proposal.kind], `${truth.name} shows no ${proposal.kind}`).toBe(true);
        expect(proposal.confidence).toBeGreaterThan(0.35);
        expect(proposal.confidence).toBeLessThanOrEqual(1);
        const isRight = proposal.kind === 'id-1' ? isRightCard(truth, proposal) : isRightRule(truth, proposal);
        right[proposal.kind] += isRight ? 1 : 0;
      }
    }
    expect(wanted).toEqual({ 'id-1': 8, rule: 6 });
    // Measured: all of them.
    expect(right['id-1'] / wanted['id-1']).toBeGreaterThanOrEqual(0.8);
    expect(right.rule / wanted.rule).toBeGreaterThanOrEqual(0.8);
  }, 120_000);

  it('are none on plain ground', () => {
    const plane = { widthPx: 320, heightPx: 240, light: new Float32Array(320 * 240).fill(0.4) };
    expect(proposeStraightObjects(judgedPicture(plane, [plane]), { widthPx: 320, heightPx: 240, facts: { focalLength35Mm: 26 } })).toEqual(
      [],
    );
  });
});
