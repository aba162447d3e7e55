import type { FoundScale, ScaleEvidence, ScaleProposal } from '../../../../domain/finding/foundScale.ts';
import { PLAIN_MARKER_CARD } from '../../../../domain/finding/markers/markerCard.ts';
import { GRADUATION_MM } from '../../../../domain/finding/refinement.ts';
import type { RectangleScale, RuleTicksScale, ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import type { CoinDistanceDoubt } from '../../../../domain/measuring/coinDistance.ts';
import type { Comparison } from '../../../../domain/measuring/contradiction.ts';
import { distance } from '../../../../domain/measuring/corners.ts';
import { farthestCornerPx, middleOf } from '../../../../domain/measuring/sameObject.ts';
import { inchesFromMm } from '../../../../domain/units.ts';
import { counted } from '../../../../words/counts.ts';
import { scaleObjectName } from '../../../../words/scaleObjects.ts';

const CLEAR = 0.8;
const LIKELY = 0.65;

export function isClearlySeen({ confidence }: Pick<ScaleProposal, 'confidence'>): boolean {
  return confidence >= CLEAR;
}

/** A figure would be read as a probability, which it is not. */
export function confidenceInWords(proposal: Pick<ScaleProposal, 'confidence'>): string {
  const { confidence } = proposal;
  if (isClearlySeen(proposal)) return 'clearly seen';
  return confidence >= LIKELY ? 'seen fairly well' : 'uncertain: compare it with the photo';
}

const SIDE_NAMES = ['1 to 2', '2 to 3', '3 to 4', '4 to 1'] as const;

/** What found marks rest on, and what was lost. */
export function evidenceInWords({ evidence }: Pick<FoundScale, 'evidence'>): string {
  switch (evidence.kind) {
    case 'markers':
      return `${counted(evidence.markers, 'marker')} and ${counted(evidence.points, 'point')} of the card were placed.${
        evidence.sizeAssumed
          ? ` The markers do not tell the card’s size: that of the common kind is taken, ${PLAIN_MARKER_CARD.sideMm} × ${PLAIN_MARKER_CARD.sideMm} mm, and its ± allows for others, until you measure it and type it in.`
          : ''
      }`;
    case 'sides': {
      const unseen = SIDE_NAMES.filter((_, index) => evidence.sides[index] === null);
      if (unseen.length === 0) return 'All four edges were found; the corners are where they meet.';
      return `The edge ${unseen.join(' and ')} was not seen; its corners follow from the other three and the size. What is lost: a wrong corner no longer shows in the shape, and an error of the focal length turns the plane.`;
    }
    case 'ticks': {
      const missing =
        evidence.missing.length === 0 ? '' : ` ${counted(evidence.missing.length, 'tick')} between them worn or covered and left out.`;
      return `${counted(evidence.found, 'tick')} used, off a straight row by ${evidence.scatterPx.toFixed(2)} px.${missing}`;
    }
    case 'rim':
      return rimInWords(evidence);
  }
}

/** How long the row is by the graduation it is taken for, to be held against the numbers printed on the rule. */
export function ticksSpanInWords({ ticks, graduationMm }: RuleTicksScale): string {
  const numbers = ticks.map(({ number }) => number);
  const spannedMm = (Math.max(...numbers) - Math.min(...numbers)) * graduationMm;
  const inInches = graduationMm === GRADUATION_MM['sixteenth-inch'] ? ` (${inchesFromMm(spannedMm).toFixed(2)} in)` : '';
  return `From the first tick to the last it would be ${spannedMm.toFixed(1)} mm${inInches}: do the numbers on the rule say so?`;
}

/** A rim this far in the picture needs no word about it. */
const WHOLE = 0.95;

function rimInWords({ coverage, visible, residualPx, settled }: Extract<ScaleEvidence, { kind: 'rim' }>): string {
  const cut =
    visible < WHOLE ? ` ${(100 * (1 - visible)).toFixed(0)} % of it lies outside of the picture, which makes it less certain.` : '';
  const doubt = settled
    ? ''
    : ' Rim, wall and shadow could not be told apart for sure: the outline may run beside the rim on one side, and its uncertainty allows for that. Compare it with the picture.';
  return `The rim was seen along ${(100 * coverage).toFixed(0)} % of its way, off an ellipse by ${residualPx.toFixed(2)} px.${cut}${doubt}`;
}

/** What a stated diameter makes of the picture, as a question. */
export function coinDoubtInWords(diameterMm: number, doubt: CoinDistanceDoubt): string {
  const consequence =
    doubt.code === 'camera-height'
      ? `the camera would have been ${roughLength(doubt.heightMm)} above the coin`
      : `the longer side of the picture would show ${roughLength(doubt.longerSideMm)}`;
  return `Can that be? With a diameter of ${Number(diameterMm.toPrecision(6))} mm ${consequence}. Check the figure, and that it is in millimeters.`;
}

const MM_PER_M = 1000;
const MM_PER_CM = 10;

/** "12 m", "1.4 cm": two figures are enough to doubt. */
function roughLength(lengthMm: number): string {
  const [length, unit] = lengthMm >= MM_PER_M ? [lengthMm / MM_PER_M, 'm'] : [lengthMm / MM_PER_CM, 'cm'];
  return `${length >= MM_PER_CM ? length.toFixed(0) : Number(length.toPrecision(2))} ${unit}`;
}

const DIRECTIONS = ['right', 'lower right', 'lower', 'lower left', 'left', 'upper left', 'upper', 'upper right'] as const;

/** An angle in the picture, from x (right) towards y (down), as the nearest of eight directions. */
export function directionInWords(angleRad: number): string {
  const eighth = Math.round((4 * angleRad) / Math.PI);
  return DIRECTIONS[((eighth % 8) + 8) % 8] ?? DIRECTIONS[0];
}

/** Names of two objects that tell them apart: two of one name by where they lie to each other. */
export function namesApart(one: ScaleMarks, other: ScaleMarks): readonly [string, string] {
  const names = [scaleObjectName(one), scaleObjectName(other)] as const;
  if (names[0] !== names[1]) return names;
  const [from, to] = [middleOf(one), middleOf(other)];
  const [acrossPx, downPx] = [to.xPx - from.xPx, to.yPx - from.yPx];
  const sides = Math.abs(acrossPx) >= Math.abs(downPx) ? (['left', 'right'] as const) : (['upper', 'lower'] as const);
  const isFirst = (Math.abs(acrossPx) >= Math.abs(downPx) ? acrossPx : downPx) > 0;
  const [first, second] = isFirst ? sides : [sides[1], sides[0]];
  return [`${names[0]}, the ${first} one`, `${names[1]}, the ${second} one`];
}

/** Corners this near to those of another rectangle, as a share of its longest side, are of the same thing. Own judgment: handles are put down within 3 %. */
const SAME_CORNERS_SHARE = 0.1;

/** Whether two rectangles of different names were marked on one and the same thing: corner lies by corner. */
export function areInOnePlace(one: ScaleMarks, other: ScaleMarks): boolean {
  if (one.kind !== 'rectangle' || other.kind !== 'rectangle') return false;
  return farthestCornerPx(one.corners, other.corners) < SAME_CORNERS_SHARE * longestSidePx(other.corners);
}

function longestSidePx(corners: RectangleScale['corners']): number {
  return Math.max(...corners.map((from, index) => distance(from, corners[(index + 1) % corners.length] ?? from)));
}

/** Two objects that cannot both be right: what each says. */
export function contradictionInWords(
  one: ScaleMarks,
  other: ScaleMarks,
  { itselfMm, byOtherMm, expandedUncertaintyMm }: Comparison,
): string {
  const [name, otherName] = namesApart(one, other);
  const figures = expandedUncertaintyMm < 1 ? 2 : expandedUncertaintyMm < 10 ? 1 : 0;
  return `By “${name}” the longest extent of “${otherName}” would be ${byOtherMm.toFixed(figures)} mm; by itself it is ${itselfMm.toFixed(Math.max(1, figures))} mm (${percentInWords(byOtherMm / itselfMm)}). Together they are known to ± ${expandedUncertaintyMm.toFixed(figures)} mm.`;
}

/** A check that leaves this share of the length open tells nothing. Own judgment: a coin taken for its neighbor is a tenth off or less. */
const WEAK_CHECK = 0.1;

/** Two objects that do not contradict each other: how closely they agree, or that this is no check. */
export function comparisonInWords({ itselfMm, byOtherMm, expandedUncertaintyMm }: Comparison): string {
  const figures = expandedUncertaintyMm < 1 ? 2 : expandedUncertaintyMm < 10 ? 1 : 0;
  const verdict = expandedUncertaintyMm > WEAK_CHECK * itselfMm ? 'This check is too weak to tell whether both agree.' : 'Both agree.';
  return `${verdict} By the present scale its longest extent is ${byOtherMm.toFixed(figures)} mm, by itself ${itselfMm.toFixed(figures)} mm: ${percentInWords(byOtherMm / itselfMm)}, within the ± ${expandedUncertaintyMm.toFixed(figures)} mm that both are known to together.`;
}

/** Handles of a card that do not lie where the edges of that card were found. */
export function displacedInWords(one: RectangleScale, found: RectangleScale, { itselfMm, byOtherMm }: Comparison): string {
  const awayPx = farthestCornerPx(one.corners, found.corners);
  return `Its edges were found in the picture, drawn yellow: one handle is ${awayPx.toFixed(0)} px away from where they meet. By the handles as they lie the card would be ${byOtherMm.toFixed(1)} mm from corner to corner instead of ${itselfMm.toFixed(1)} mm (${percentInWords(byOtherMm / itselfMm)}), and every length is wrong with it.`;
}

function percentInWords(ratio: number): string {
  if (ratio >= 2) return `${ratio.toFixed(ratio < 10 ? 1 : 0)} times that`;
  const percent = 100 * (ratio - 1);
  return `${percent < 0 ? '−' : '+'}${Math.abs(percent).toFixed(1)} %`;
}
