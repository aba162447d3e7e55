import type { PictureFacts } from '../measuring/camera.ts';
import type { Corners } from '../measuring/corners.ts';
import { KNOWN_RECTANGLES } from '../measuring/knownRectangles.ts';
import type { ImagePoint } from '../measuring/points.ts';
import { edgeMapOf } from './edgeMap.ts';
import type { JudgedPicture } from './judged.ts';
import { factorTo, reducePlanes } from './light.ts';
import { proposeRectangle } from './proposeCard.ts';
import { proposeTicks } from './proposeRule.ts';
import { enlargedRectangle, type FoundRectangle } from './rectangle.ts';
import type { FoundTicks } from './rule.ts';
import { type Segment, strongSegments } from './strongLines.ts';

/** A scale object the program believes to see; the keeper accepts, corrects or declines it. Pixels of the whole picture. */
export type StraightProposal =
  | { readonly kind: 'id-1'; readonly corners: Corners; readonly found: FoundRectangle; readonly confidence: number }
  | { readonly kind: 'rule'; readonly ends: readonly [ImagePoint, ImagePoint]; readonly found: SeenTicks; readonly confidence: number };

/** Ticks with what is told of them. */
export type SeenTicks = Pick<FoundTicks, 'ticks' | 'missing' | 'scatterPx' | 'placePx'>;

/** Straight edges are sought in a picture of this size: an ID-1 card is then 80 px or longer in any usable photo. */
const EDGES_LONGEST_PX = 640;
/** Edges shorter than this share of the longest side belong to nothing a skin is measured by. */
const LEAST_SEGMENT = 0.07;
const SEGMENTS = 48;
/** Ticks are sought along the longest edges alone. */
const RULE_SEGMENTS = 24;

/**
 * ID-1 card and rule in a picture, without a click; at most one of each, the more certain first.
 *
 * @param picture of the whole picture.
 */
export function proposeStraightObjects(
  { image: light, colors, factor }: JudgedPicture,
  picture: PictureFacts,
): readonly StraightProposal[] {
  const toSmall = factorTo(light, EDGES_LONGEST_PX);
  const small = reducePlanes(colors, toSmall);
  const leastPx = LEAST_SEGMENT * Math.max(small[0].widthPx, small[0].heightPx);
  const segments = strongSegments(edgeMapOf(small), leastPx, SEGMENTS).map((segment) => scaled(segment, toSmall));
  const facts: PictureFacts = { ...picture, widthPx: picture.widthPx / factor, heightPx: picture.heightPx / factor };
  const whole = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx * factor, yPx: yPx * factor });

  const proposals: StraightProposal[] = [];
  const card = proposeRectangle(colors, segments, KNOWN_RECTANGLES['id-1'], facts);
  if (card) {
    const found = enlargedRectangle(card.found, factor);
    proposals.push({ kind: 'id-1', corners: found.corners, found, confidence: card.confidence });
  }
  const rule = proposeTicks(light, segments.slice(0, RULE_SEGMENTS));
  if (rule) {
    const { ticks, missing, scatterPx, placePx } = rule.found;
    const found = {
      ticks: ticks.map(({ number, from, to }) => ({ number, from: whole(from), to: whole(to) })),
      missing,
      scatterPx: factor * scatterPx,
      placePx: factor * placePx,
    };
    proposals.push({ kind: 'rule', ends: [whole(rule.ends[0]), whole(rule.ends[1])], found, confidence: rule.confidence });
  }
  return proposals.sort((one, other) => other.confidence - one.confidence);
}

function scaled({ from, to, lengthPx, coverage }: Segment, factor: number): Segment {
  const larger = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx * factor, yPx: yPx * factor });
  return { from: larger(from), to: larger(to), lengthPx: lengthPx * factor, coverage };
}
