import { proposeCoins } from '../../../src/domain/finding/coin/proposeCoins.ts';
import type { ScaleProposal } from '../../../src/domain/finding/foundScale.ts';
import { judgedPicture } from '../../../src/domain/finding/judged.ts';
import { proposalsFrom, straightIn } from '../../../src/domain/finding/lookRound.ts';
import { distance } from '../../../src/domain/measuring/corners.ts';
import { pointOn } from '../../../src/domain/measuring/ellipse.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { type Matrix3, transform } from '../../../src/domain/numerics/matrix3.ts';
import type { FiducialDetector } from '../../../src/images/fiducials.ts';
import { distanceFrom } from '../../support/ellipseDistance.ts';
import { imagePoint, mapQuad, type ScaleObject } from '../../support/photoTruth.ts';
import { atLeast, atMost, type Figure, median, reported } from '../figure.ts';
import type { SeenPhoto } from './photos.ts';
import { type FoundScale, trueRim } from './scales.ts';

/** Where edges and corners were found, against the truth. */
export function localisationFigures(scales: readonly FoundScale[]): readonly Figure[] {
  const corners = scales.flatMap(({ kind, offPx }) => (kind === 'id1_card' ? offPx : []));
  const rimsAndTicks = scales.flatMap(({ kind, offPx }) => (kind === 'coin' || kind === 'rule' ? offPx : []));
  const markers = scales.filter(({ kind }) => kind === 'fiducial_card');
  return [
    atMost('corner-id1-rms-px', Math.sqrt(corners.reduce((sum, off) => sum + off * off, 0) / corners.length), 'px', 0.3),
    atMost('rim-tick-median-px', median(rimsAndTicks), 'px', 0.5),
    atLeast('fiducial-found-pct', (100 * markers.filter(({ marks }) => marks !== null).length) / markers.length, '%', 100),
  ];
}

/** What was proposed of the objects of one photo without a click. */
export interface Proposed {
  readonly wanted: number;
  readonly right: number;
  /** Proposals that no such object of the photo fits. */
  readonly wrong: readonly string[];
}

/** What the program proposes on opening the photo, before the keeper has said anything. */
export async function proposedOn({ light, picture, truth }: SeenPhoto, detector: FiducialDetector): Promise<Proposed> {
  const judged = judgedPicture(light.image, light.colors);
  const seen = {
    markers: await detector.find(light.image),
    straight: straightIn(light, judged, picture),
    coins: proposeCoins(judged.colors),
  };
  const proposals = proposalsFrom(light, seen, judged.factor, picture);
  const wanted = truth.scale_objects.filter(({ type }) => type !== 'fiducial_card');
  const right = wanted.filter((object) => proposals.some(({ marks }) => isRight(marks, object))).length;
  const wrong = proposals
    .filter(({ marks }) => !truth.scale_objects.some((object) => isRight(marks, object)))
    .map(({ marks, confidence }) => `${truth.name}: ${marks.kind}, confidence ${confidence.toFixed(2)}`);
  return { wanted: wanted.length, right, wrong };
}

/**
 * Corners of a card, or those that the points of a printed one give, within 1 % of its width; a rim within 3 % of its radius; a row
 * on the rule and two thirds of its length long.
 */
function isRight(marks: ScaleProposal['marks'], object: ScaleObject): boolean {
  if (marks.kind === 'rectangle' && object.type === 'id1_card') {
    return areCorners(marks.corners, object);
  }
  if (marks.kind === 'points' && object.type === 'fiducial_card') {
    const fit = fitHomography(
      marks.points,
      marks.points.map(({ at }) => at),
    );
    const sides = [0, object.side_mm];
    return (
      fit !== null &&
      areCorners(
        sides.flatMap((xMm) => sides.map((yMm) => toImage(fit.matrix, xMm, yMm))),
        object,
      )
    );
  }
  if (marks.kind === 'coin' && object.type === 'coin') {
    const truth = trueRim(object);
    const offPx = Array.from({ length: 60 }, (_, index) => Math.abs(distanceFrom(truth, pointOn(marks.rim, (Math.PI * index) / 30))));
    return Math.max(...offPx) < 0.03 * truth.semiMajorPx;
  }
  if (marks.kind === 'rule-ticks' && object.type === 'rule') {
    const [first, last] = [object.ticks_at_edge_px.at(0), object.ticks_at_edge_px.at(-1)];
    if (!first || !last) return false;
    const [from, to] = [imagePoint(first), imagePoint(last)];
    const lengthPx = distance(from, to);
    const [x, y] = [(to.xPx - from.xPx) / lengthPx, (to.yPx - from.yPx) / lengthPx];
    const along = ({ xPx, yPx }: ImagePoint): number => ((xPx - from.xPx) * x + (yPx - from.yPx) * y) / lengthPx;
    const off = ({ xPx, yPx }: ImagePoint): number => Math.abs((xPx - from.xPx) * y - (yPx - from.yPx) * x) / lengthPx;
    const [one, other] = marks.ends;
    return (
      Math.abs(along(one) - along(other)) > 2 / 3 && marks.ends.every((end) => along(end) > -0.1 && along(end) < 1.1 && off(end) < 0.06)
    );
  }
  return false;
}

function areCorners(seen: readonly ImagePoint[], object: Extract<ScaleObject, { corners_top_px: unknown }>): boolean {
  const corners = mapQuad(object.corners_top_px);
  const reachPx = 0.01 * Math.max(distance(corners[0], corners[1]), distance(corners[1], corners[2]));
  return corners.every((corner) => seen.some((at) => distance(at, corner) < reachPx));
}

function toImage(planeToImage: Matrix3, xMm: number, yMm: number): ImagePoint {
  const [x, y, w] = transform(planeToImage, xMm, yMm, 1);
  return { xPx: x / w, yPx: y / w };
}

/** How many of the objects were proposed rightly, and how many proposals were no object of their photo. */
export function proposalFigures(all: readonly Proposed[]): readonly Figure[] {
  const sum = (of: (one: Proposed) => number): number => all.reduce((total, one) => total + of(one), 0);
  for (const wrong of all.flatMap((one) => one.wrong)) console.error(`Proposed but not there: ${wrong}`);
  return [
    atLeast('proposal-right-pct', (100 * sum(({ right }) => right)) / sum(({ wanted }) => wanted), '%', 80),
    reported(
      'proposal-false-count',
      sum(({ wrong }) => wrong.length),
      '1',
    ),
  ];
}
