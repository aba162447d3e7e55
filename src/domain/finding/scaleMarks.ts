import type { EdgePoint, PointsScale, RectangleScale, RuleTicksScale, ScaleMarks } from '../measuring/calibration.ts';
import { RULE_STANDARD_UNCERTAINTY_MM } from '../measuring/knownRules.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { assertNever } from '../result.ts';
import type { ScaleEvidence, ScaleProposal } from './foundScale.ts';
import type { SeenTicks } from './proposals.ts';
import { cornerUncertaintyPx, enlargedEdgePoint, type FoundRectangle } from './rectangle.ts';

/** No tick and no corner is known better than this: the camera's own unevenness. Own assumption. */
const LEAST_TICK_PX = 0.03;
const LEAST_CORNER_PX = 0.03;

/** The marks of a rectangle whose corners were found; size and thickness stay what the keeper said. */
export function rectangleMarks(size: Omit<RectangleScale, 'corners' | 'pointingPx'>, found: FoundRectangle): RectangleScale {
  const [top, right, bottom, left] = found.sides;
  const points = (side: typeof top) => side?.points.map(rounded) ?? [];
  return {
    ...size,
    corners: [...found.corners],
    pointingPx: Math.max(LEAST_CORNER_PX, cornerUncertaintyPx(found)),
    sidePoints: [points(top), points(right), points(bottom), points(left)],
  };
}

/** To thousandths of a pixel: more is never known and would only be stored. */
function rounded({ xPx, yPx, acrossPx }: EdgePoint): EdgePoint {
  const thousandth = (value: number): number => Math.round(1000 * value) / 1000;
  return { xPx: thousandth(xPx), yPx: thousandth(yPx), acrossPx: Math.max(0.001, thousandth(acrossPx)) };
}

export function sidesEvidence({ sides }: FoundRectangle): ScaleEvidence {
  const [top, right, bottom, left] = sides;
  const seen = (side: FoundRectangle['sides'][number]) => side && { support: side.support, residualPx: side.line.residualPx };
  return {
    kind: 'sides',
    sides: [seen(top), seen(right), seen(bottom), seen(left)],
    lost: sides.includes(null) ? ['shape-unchecked', 'leans-on-focal-length'] : [],
  };
}

interface RuleKnown extends Pick<RuleTicksScale, 'graduationMm' | 'heightMm'> {
  readonly faceHeightStandardUncertaintyMm?: number | undefined;
}

/** The marks of a rule whose ticks were found between two ends. */
export function ruleMarks(
  found: SeenTicks,
  ends: readonly [ImagePoint, ImagePoint],
  { graduationMm, heightMm, faceHeightStandardUncertaintyMm }: RuleKnown,
): RuleTicksScale {
  return {
    kind: 'rule-ticks',
    ends: [...ends],
    graduationMm,
    spanStandardUncertaintyMm: RULE_STANDARD_UNCERTAINTY_MM,
    ticks: [...found.ticks],
    tickPx: Math.max(LEAST_TICK_PX, found.placePx),
    heightMm,
    ...(faceHeightStandardUncertaintyMm === undefined ? {} : { faceHeightStandardUncertaintyMm }),
  };
}

export function ticksEvidence({ ticks, missing, scatterPx }: SeenTicks, graduationAssumed: boolean): ScaleEvidence {
  return { kind: 'ticks', found: ticks.length, missing: [...missing], scatterPx, graduationAssumed };
}

type FoundMarks = Exclude<ScaleMarks, { kind: 'two-points' }>;

/** Marks found in a picture that was reduced by a whole factor, in pixels of the whole one. */
export function enlargedMarks<Marks extends FoundMarks>(marks: Marks, factor: number): Marks;
export function enlargedMarks(marks: FoundMarks, factor: number): FoundMarks {
  const at = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: factor * xPx, yPx: factor * yPx });
  switch (marks.kind) {
    case 'rectangle': {
      const [a, b, c, d] = marks.corners;
      const corners: RectangleScale['corners'] = [at(a), at(b), at(c), at(d)];
      const pointingPx = factor * marks.pointingPx;
      if (marks.sidePoints === undefined) return { ...marks, corners, pointingPx };
      const [top, right, bottom, left] = marks.sidePoints;
      const larger = (side: typeof top) => side.map((point) => enlargedEdgePoint(point, factor));
      return { ...marks, corners, pointingPx, sidePoints: [larger(top), larger(right), larger(bottom), larger(left)] };
    }
    case 'coin': {
      const { centre, semiMajorPx, semiMinorPx, angleRad } = marks.rim;
      const rim = { centre: at(centre), semiMajorPx: factor * semiMajorPx, semiMinorPx: factor * semiMinorPx, angleRad };
      return { ...marks, rim, rimPx: factor * marks.rimPx };
    }
    case 'points':
      return {
        ...marks,
        points: marks.points.map((point) => ({ ...point, at: at(point.at) })),
        pointPx: factor * marks.pointPx,
      } satisfies PointsScale;
    case 'rule-ticks': {
      const [from, to] = marks.ends;
      const ticks = marks.ticks.map((tick) => ({ number: tick.number, from: at(tick.from), to: at(tick.to) }));
      return { ...marks, ends: [at(from), at(to)], ticks, tickPx: factor * marks.tickPx };
    }
  }
}

/** The same of a whole proposal. */
export function enlargedProposal(proposal: ScaleProposal, factor: number): ScaleProposal {
  if (factor === 1 || proposal.marks.kind === 'two-points') return proposal;
  return { ...proposal, marks: enlargedMarks(proposal.marks, factor), evidence: enlargedEvidence(proposal.evidence, factor) };
}

/** What of the evidence is told in pixels. */
export function enlargedEvidence(evidence: ScaleEvidence, factor: number): ScaleEvidence {
  switch (evidence.kind) {
    case 'markers':
      return evidence;
    case 'sides': {
      const [a, b, c, d] = evidence.sides;
      const larger = (side: typeof a) => side && { ...side, residualPx: factor * side.residualPx };
      return { ...evidence, sides: [larger(a), larger(b), larger(c), larger(d)] };
    }
    case 'ticks':
      return { ...evidence, scatterPx: factor * evidence.scatterPx };
    case 'rim':
      return { ...evidence, residualPx: factor * evidence.residualPx };
    default:
      return assertNever(evidence);
  }
}
