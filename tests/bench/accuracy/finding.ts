import { objectsIn } from '../../../src/domain/finding/lookRound.ts';
import { distance } from '../../../src/domain/measuring/corners.ts';
import { type Ellipse, pointOn } from '../../../src/domain/measuring/ellipse.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { distanceFrom } from '../../support/ellipseDistance.ts';
import { imagePoint, mapQuad, type ScaleObject } from '../../support/photoTruth.ts';
import { atLeast, atMost, type Figure, median } from '../figure.ts';
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

export function proposedOn({ light, picture, truth }: SeenPhoto): Proposed {
  const wanted = truth.scale_objects.filter(({ type }) => type !== 'fiducial_card');
  const { straight, coins } = objectsIn(light, picture);
  const proposals: readonly Sketch[] = [
    ...straight.map(
      (proposal): Sketch =>
        proposal.kind === 'rule' ? { type: 'rule', ends: proposal.ends } : { type: 'id1_card', corners: proposal.corners },
    ),
    ...coins.map(({ rim }): Sketch => ({ type: 'coin', rim: rim.ellipse })),
  ];
  const right = wanted.filter((object) => proposals.some((proposal) => isRight(proposal, object))).length;
  const wrong = proposals
    .filter((proposal) => !wanted.some((object) => isRight(proposal, object)))
    .map(({ type }) => `${truth.name}: ${type}`);
  return { wanted: wanted.length, right, wrong };
}

type Sketch =
  | { readonly type: 'id1_card'; readonly corners: readonly ImagePoint[] }
  | { readonly type: 'rule'; readonly ends: readonly [ImagePoint, ImagePoint] }
  | { readonly type: 'coin'; readonly rim: Ellipse };

/** Corners within 1 % of a card's width; a rim within 3 % of its radius; a row on the rule and two thirds of its length long. */
function isRight(proposal: Sketch, object: ScaleObject): boolean {
  if (proposal.type === 'id1_card' && object.type === 'id1_card') {
    const corners = mapQuad(object.corners_top_px);
    const reachPx = 0.01 * Math.max(distance(corners[0], corners[1]), distance(corners[1], corners[2]));
    return corners.every((corner) => proposal.corners.some((at) => distance(at, corner) < reachPx));
  }
  if (proposal.type === 'coin' && object.type === 'coin') {
    const truth = trueRim(object);
    const offPx = Array.from({ length: 60 }, (_, index) => Math.abs(distanceFrom(truth, pointOn(proposal.rim, (Math.PI * index) / 30))));
    return Math.max(...offPx) < 0.03 * truth.semiMajorPx;
  }
  if (proposal.type === 'rule' && object.type === 'rule') {
    const [first, last] = [object.ticks_at_edge_px.at(0), object.ticks_at_edge_px.at(-1)];
    if (!first || !last) return false;
    const [from, to] = [imagePoint(first), imagePoint(last)];
    const lengthPx = distance(from, to);
    const [x, y] = [(to.xPx - from.xPx) / lengthPx, (to.yPx - from.yPx) / lengthPx];
    const along = ({ xPx, yPx }: ImagePoint): number => ((xPx - from.xPx) * x + (yPx - from.yPx) * y) / lengthPx;
    const off = ({ xPx, yPx }: ImagePoint): number => Math.abs((xPx - from.xPx) * y - (yPx - from.yPx) * x) / lengthPx;
    const [one, other] = proposal.ends;
    return (
      Math.abs(along(one) - along(other)) > 2 / 3 && proposal.ends.every((end) => along(end) > -0.1 && along(end) < 1.1 && off(end) < 0.06)
    );
  }
  return false;
}

export function proposalFigure(all: readonly Proposed[]): Figure {
  const sum = (of: (one: Proposed) => number): number => all.reduce((total, one) => total + of(one), 0);
  for (const wrong of all.flatMap((one) => one.wrong)) console.error(`Proposed but not there: ${wrong}`);
  return atLeast('proposal-right-pct', (100 * sum(({ right }) => right)) / sum(({ wanted }) => wanted), '%', 80);
}
