import { calibrate } from '../measuring/calibrate.ts';
import type { ScaleMarks } from '../measuring/calibration.ts';
import type { PictureFacts } from '../measuring/camera.ts';
import type { Corners } from '../measuring/corners.ts';
import { fitHomography } from '../measuring/homography.ts';
import { KNOWN_RECTANGLES } from '../measuring/knownRectangles.ts';
import { toPlane } from '../measuring/onPlane.ts';
import type { ImagePoint, PlanePoint } from '../measuring/points.ts';
import { adjugate, transform } from '../numerics/matrix3.ts';
import { CARD_FRAME_MM } from '../scaleCard/layout.ts';
import { UNCHECKED_PRINT } from '../scaleCard/printCheck.ts';
import { coinMarks } from './coin/coinMarks.ts';
import type { CoinProposal } from './coin/proposeCoins.ts';
import { enlargedRim } from './coin/search.ts';
import type { ScaleProposal } from './foundScale.ts';
import type { JudgedPicture } from './judged.ts';
import type { FoundPoints, SeenMarkers } from './markers/found.ts';
import { pointsMarks } from './markers/pointsMarks.ts';
import { type PrintedCard, printedCards } from './markers/printedCards.ts';
import { proposeStraightObjects, type StraightProposal } from './proposals.ts';
import type { LightOfPicture } from './refine.ts';
import { rectangleMarks, ruleMarks, sidesEvidence, ticksEvidence } from './scaleMarks.ts';
import { likelyCoins } from './whichCoin.ts';

/** What was seen in a picture, each kind looked for apart from the others so that several threads can work on one picture. */
export interface SeenObjects {
  /** In pixels of the whole picture. */
  readonly markers: SeenMarkers;
  readonly straight: readonly StraightProposal[];
  /** In pixels of the judged picture. */
  readonly coins: readonly CoinProposal[];
}

/** Points that say which they are and agree on one plane to a tenth of a pixel are no chance. */
const MARKERS_CONFIDENCE = 1;
/** A mirrored picture gives right lengths, but the animal's sides exchanged: the keeper should look twice. Own judgment. */
const MIRRORED_CONFIDENCE = 0.3;
/** A card that was cut or printed by anybody is off by less than this share of its size. */
const SIZE_TOLERANCE = 0.05;

/** Everything straight that is looked for in a picture; see `proposeStraightObjects`. */
export function straightIn({ factor }: LightOfPicture, judged: JudgedPicture, picture: PictureFacts): readonly StraightProposal[] {
  return proposeStraightObjects(judged, reduced(picture, factor));
}

/**
 * All scale objects in a picture as marks ready to be taken over, in pixels of `light`, the clearest first.
 *
 * @param toFull how much smaller the judged picture is, see `JudgedPicture`.
 */
export function proposalsFrom(
  { image, colors, factor }: LightOfPicture,
  seen: SeenObjects,
  toFull: number,
  picture: PictureFacts,
): readonly ScaleProposal[] {
  const cards = printedCards(image, colors, seen.markers);
  const board = cards.find(({ object }) => object === 'scale-card')?.found;
  const proposals: ScaleProposal[] = cards.map(cardProposal);
  const card = proposals[0]?.marks;
  const straight = seen.straight.filter((proposal) =>
    proposal.kind === 'rule' ? !(board && isOnCard(board, proposal)) : !(card && contradicts(card, proposal, reduced(picture, factor))),
  );
  proposals.push(...straight.map(straightProposal));
  const others = proposals.map(({ marks }) => marks);
  const coins = seen.coins
    .map(({ rim, confidence }) => ({ rim: enlargedRim(rim, toFull), confidence }))
    .filter(({ rim }) => !straight.some((proposal) => proposal.kind === 'id-1' && liesOn(proposal.found.corners, rim.ellipse.centre)));
  proposals.push(...coins.map((coin) => coinProposal(coin, likelyCoins(coin.rim, others, reduced(picture, factor)))));
  return proposals.toSorted((one, other) => other.confidence - one.confidence);
}

function reduced(picture: PictureFacts, factor: number): PictureFacts {
  return { ...picture, widthPx: picture.widthPx / factor, heightPx: picture.heightPx / factor };
}

function cardProposal({ found, object, mirrored }: PrintedCard): ScaleProposal {
  return {
    marks: { ...pointsMarks(found, object, UNCHECKED_PRINT), mirrored },
    evidence: { kind: 'markers', markers: found.markers, points: found.points.length, sizeAssumed: object === 'markers' },
    confidence: mirrored ? MIRRORED_CONFIDENCE : MARKERS_CONFIDENCE,
  };
}

function straightProposal(proposal: StraightProposal): ScaleProposal {
  const { confidence } = proposal;
  if (proposal.kind === 'id-1') {
    const { cornerRadiusMm: _, ...size } = KNOWN_RECTANGLES['id-1'];
    const marks = rectangleMarks({ kind: 'rectangle', object: 'id-1', ...size }, proposal.found);
    return { marks, evidence: sidesEvidence(proposal.found), confidence };
  }
  const marks = ruleMarks(proposal.found, proposal.ends, { graduationMm: 1, heightMm: 0 });
  return { marks, evidence: ticksEvidence(proposal.found, true), confidence };
}

function coinProposal({ rim, confidence }: CoinProposal, coins: ReturnType<typeof likelyCoins>): ScaleProposal {
  const { coverage, agreement, residualPx, settled, visible } = rim;
  return {
    marks: coinMarks(rim, coins[0]),
    evidence: { kind: 'rim', coverage, agreement, residualPx, settled, visible, coinAssumed: true, coins: [...coins] },
    confidence,
  };
}

/** Without a focal length any sheet of paper may look like a bank card; next to a card that tells its size it does not. */
function contradicts(card: ScaleMarks, { corners }: Extract<StraightProposal, { kind: 'id-1' }>, picture: PictureFacts): boolean {
  const calibration = calibrate(card, picture);
  if (!calibration.ok) return false;
  const [a, b, c] = corners.map((corner) => toPlane(calibration.value, corner));
  if (!a || !b || !c) return true;
  const { widthMm, heightMm } = KNOWN_RECTANGLES['id-1'];
  const off = (from: PlanePoint, to: PlanePoint, lengthMm: number): number =>
    Math.abs(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm) / lengthMm - 1);
  return Math.max(off(a, b, widthMm), off(b, c, heightMm)) > SIZE_TOLERANCE;
}

/** The rules printed along the scale card are as large as its printer made them: the card itself says more. */
function isOnCard({ points }: FoundPoints, { ends }: Extract<StraightProposal, { kind: 'rule' }>): boolean {
  const fit = fitHomography(
    points,
    points.map(({ at }) => at),
  );
  if (!fit) return false;
  const imageToCard = adjugate(fit.matrix);
  return ends.every(({ xPx, yPx }) => {
    const [x, y, w] = transform(imageToCard, xPx, yPx, 1);
    return isWithin(x / w, CARD_FRAME_MM.width) && isWithin(y / w, CARD_FRAME_MM.height);
  });
}

/** What is round on a bank card is printed on it: a letter, a mark, a seal. */
function liesOn(corners: Corners, at: ImagePoint): boolean {
  const sides = corners.map((from, index) => {
    const to = corners[(index + 1) % 4] ?? from;
    return Math.sign((to.xPx - from.xPx) * (at.yPx - from.yPx) - (to.yPx - from.yPx) * (at.xPx - from.xPx));
  });
  return sides.every((side) => side === sides[0]);
}

const CARD_MARGIN_MM = 5;

function isWithin(mm: number, lengthMm: number): boolean {
  return mm > -CARD_MARGIN_MM && mm < lengthMm + CARD_MARGIN_MM;
}
