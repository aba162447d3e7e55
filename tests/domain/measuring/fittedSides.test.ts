import { describe, expect, it } from 'vitest';
import type { EdgePoint, RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { FIXTURE_A, type Pinhole, pinhole } from '../../support/pinhole.ts';
import { type RandomSource, randomSource } from '../../support/random.ts';
import { calibrated, cardSeenBy } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

const [WIDTH_MM, HEIGHT_MM] = [85.6, 53.98];
const [ACROSS_PX, BODILY_PX, STRETCHES] = [0.3, 0.4, 12];
const CORNERS = [
  [0, 0],
  [WIDTH_MM, 0],
  [WIDTH_MM, HEIGHT_MM],
  [0, HEIGHT_MM],
] as const;

type Line = readonly [from: ImagePoint, to: ImagePoint];

/** A side whose ends an error of the whole side and one at either end have moved across it, in the picture. */
function drawnLine({ see }: Pinhole, side: number, random: RandomSource | null): Line {
  const [[fromX, fromY], [toX, toY]] = [CORNERS[side] ?? [0, 0], CORNERS[(side + 1) % 4] ?? [0, 0]];
  const [from, to] = [see(fromX, fromY), see(toX, toY)];
  const length = Math.hypot(to.xPx - from.xPx, to.yPx - from.yPx);
  const [acrossX, acrossY] = [-(to.yPx - from.yPx) / length, (to.xPx - from.xPx) / length];
  const wholePx = random ? random.normal(Math.hypot(BODILY_PX, ACROSS_PX / Math.sqrt(STRETCHES))) : 0;
  // Twelve points in the middle tenths of a side, each known to so much, tell its direction as this does at its ends.
  const offsets = stretches(1).map((share) => (share - 0.5) ** 2);
  const turnPx = random ? random.normal(ACROSS_PX / Math.sqrt(offsets.reduce((sum, one) => sum + one, 0))) / 2 : 0;
  const by = ({ xPx, yPx }: ImagePoint, px: number): ImagePoint => ({ xPx: xPx + px * acrossX, yPx: yPx + px * acrossY });
  return [by(from, wholePx - turnPx), by(to, wholePx + turnPx)];
}

function stretches(length: number): number[] {
  return Array.from({ length: STRETCHES }, (_, index) => length * (0.05 + (0.9 * (index + 0.5)) / STRETCHES));
}

/** Where two lines through two points each meet, by homogeneous coordinates. */
function meeting([a, b]: Line, [c, d]: Line): ImagePoint {
  const through = (p: ImagePoint, q: ImagePoint) => [p.yPx - q.yPx, q.xPx - p.xPx, p.xPx * q.yPx - q.xPx * p.yPx] as const;
  const [[a1, b1, c1], [a2, b2, c2]] = [through(a, b), through(c, d)];
  const w = a1 * b2 - a2 * b1;
  return { xPx: (b1 * c2 - b2 * c1) / w, yPx: (c1 * a2 - c2 * a1) / w };
}

function found(scene: Pinhole, random: RandomSource | null): RectangleScale {
  const lines = [0, 1, 2, 3].map((side) => drawnLine(scene, side, random));
  const [top, right, bottom, left] = lines;
  if (!top || !right || !bottom || !left) throw new Error('Expected four lines');
  const points = ([from, to]: Line): EdgePoint[] =>
    stretches(1).map((share) => ({
      xPx: from.xPx + share * (to.xPx - from.xPx),
      yPx: from.yPx + share * (to.yPx - from.yPx),
      acrossPx: ACROSS_PX,
    }));
  const spread = stretches(1).reduce((sum, share) => sum + (share - 0.5) ** 2, 0);
  // All that is uncertain of a corner: the side as a whole, its points' mean, and their direction at its end.
  const cornerPx = Math.hypot(BODILY_PX, ACROSS_PX / Math.sqrt(STRETCHES), ACROSS_PX / Math.sqrt(spread) / 2);
  return cardSeenBy(scene, {
    corners: [meeting(left, top), meeting(top, right), meeting(right, bottom), meeting(bottom, left)],
    sidePoints: [points(top), points(right), points(bottom), points(left)],
    pointingPx: cornerPx,
    widthStandardUncertaintyMm: 0,
    heightStandardUncertaintyMm: 0,
  });
}

describe('what four fitted sides leave uncertain of a length, each side off as a whole, in 600 draws (JCGM 101:2008, 7)', () => {
  const scene = pinhole({ ...FIXTURE_A, tiltDeg: 10 });
  const random = randomSource(11);
  const draws = Array.from({ length: 600 }, () => found(scene, random));

  it.each([
    ['along the card', [2, 27], [83.6, 27]],
    ['across the card', [43, 2], [43, 52]],
    ['beside the card, along it', [10, 80], [60, 80]],
    ['beside the card, away from it', [43, 60], [43, 110]],
  ] as const)('is stated of a length %s', (_, [fromX, fromY], [toX, toY]) => {
    const clicks: Landmarks = {
      'carapace-front': { state: 'placed', at: scene.see(fromX, fromY) },
      'carapace-rear': { state: 'placed', at: scene.see(toX, toY) },
    };
    const lengthBy = (marks: RectangleScale) =>
      quantityOf(
        measure({ landmarks: clicks, carapaceHeight: { kind: 'assumed' }, pointingPx: 0.001 }, calibrated(marks, scene.picture)),
        'carapace-length',
      );
    const values = draws.map((marks) => lengthBy(marks).estimate.value);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const scatter = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
    const stated = lengthBy(found(scene, null)).budget.find(({ source }) => source === 'calibration')?.standardUncertainty ?? 0;
    expect(stated / scatter).toBeGreaterThan(0.85);
    expect(stated / scatter).toBeLessThan(1.15);
  });
});
