import { describe, expect, it } from 'vitest';
import { judgedPicture } from '../../../src/domain/finding/judged.ts';
import { proposeStraightObjects, type StraightProposal } from '../../../src/domain/finding/proposals.ts';
import { paint } from '../../support/paintedScene.ts';
import { type PhotoTruth, photoTruths, pictureOf, rectangleOn } from '../../support/photoTruth.ts';
import { pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';
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

  it('are a card, with less confidence, in a picture that was cut and so has lost the middle of its lens', () => {
    const camera = pinhole({
      ...{ tiltDeg: 18, axisDeg: 20, rollDeg: 5, distanceMm: 300, aim: { xMm: -30, yMm: -40 } },
      ...{ focalPx: 1500, widthPx: 1600, heightPx: 1200 },
    });
    const onCard = (xMm: number, yMm: number) => xMm >= 0 && xMm <= 85.6 && yMm >= 0 && yMm <= 53.98;
    const whole = paint(camera, ({ xMm, yMm }) => (onCard(xMm, yMm) ? 0.8 : 0.2), randomSource(4));
    const corners = [camera.see(0, 0), camera.see(85.6, 0), camera.see(85.6, 53.98), camera.see(0, 53.98)];
    const leftPx = Math.floor(Math.min(...corners.map(({ xPx }) => xPx)) - 60);
    const topPx = Math.floor(Math.min(...corners.map(({ yPx }) => yPx)) - 60);
    const [widthPx, heightPx] = [1600 - leftPx, 1200 - topPx];
    const light = Float32Array.from(
      { length: widthPx * heightPx },
      (_, index) => whole.light[(topPx + Math.floor(index / widthPx)) * 1600 + leftPx + (index % widthPx)] ?? 0,
    );
    const cut: typeof whole = { widthPx, heightPx, light };
    const proposed = (picture: typeof camera.picture, image: typeof cut) => proposeStraightObjects(judgedPicture(image, [image]), picture);
    const [ofWhole] = proposed(camera.picture, whole);
    const [ofCut] = proposed({ ...camera.picture, widthPx, heightPx }, cut);
    expect(ofWhole?.confidence).toBeGreaterThan(0.8);
    expect(ofCut).toMatchObject({ kind: 'id-1' });
    expect(ofCut?.confidence).toBeLessThanOrEqual(0.5);
    const found = ofCut?.kind === 'id-1' ? ofCut.found.corners : [];
    for (const { xPx, yPx } of corners) {
      expect(Math.min(...found.map((at) => Math.hypot(at.xPx + leftPx - xPx, at.yPx + topPx - yPx)))).toBeLessThan(1);
    }
  });

  it('are none on plain ground', () => {
    const plane = { widthPx: 320, heightPx: 240, light: new Float32Array(320 * 240).fill(0.4) };
    expect(proposeStraightObjects(judgedPicture(plane, [plane]), { widthPx: 320, heightPx: 240, facts: { focalLength35Mm: 26 } })).toEqual(
      [],
    );
  });
});
