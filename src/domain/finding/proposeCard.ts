import { lensOf, type PictureFacts } from '../measuring/camera.ts';
import type { Corners } from '../measuring/corners.ts';
import { refineRectangle } from './card.ts';
import type { LightPlanes } from './light.ts';
import { misfitOf, rectanglesAmong } from './quadrilaterals.ts';
import type { FoundRectangle, RectangleShape } from './rectangle.ts';
import type { Segment } from './strongLines.ts';

export interface ProposedRectangle {
  readonly found: FoundRectangle;
  /** 0 to 1: how much of the outline was seen, and how well its shape fits the lens. */
  readonly confidence: number;
}

/** Quadrilaterals that are looked at closely. */
const CANDIDATES = 3;
/** Misfit of a refined card beyond which it is another object: own assumption, ten times what the edges' uncertainty gives. */
const SHAPE_SCALE = 0.015;
const LEAST_CONFIDENCE = 0.35;
/** No other candidate could be meant. */
const CERTAIN = 0.85;

/** A card that only fits a lens nobody knows: the picture may have been cut, or it is no card. Own judgment. */
const CUT_PICTURE_SHARE = 0.5;

/**
 * A rectangle of known size proposed without a click: the quadrilateral of strong straight edges that, refined, fits the
 * size before the picture's lens; where none does, one that does before some lens, for a picture that was cut has lost its own.
 *
 * @param segments of the same picture, in its pixels.
 * @returns null when nothing fits well enough to be shown.
 */
export function proposeRectangle(
  planes: LightPlanes,
  segments: readonly Segment[],
  shape: RectangleShape,
  picture: PictureFacts,
): ProposedRectangle | null {
  const found = bestRectangle(planes, segments, shape, picture, CANDIDATES);
  if (found !== null || !lensOf(picture).known) return found;
  const cut = bestRectangle(planes, segments, shape, { ...picture, facts: { ...picture.facts, focalLength35Mm: null } }, 1);
  return cut && { ...cut, confidence: CUT_PICTURE_SHARE * cut.confidence };
}

function bestRectangle(
  planes: LightPlanes,
  segments: readonly Segment[],
  shape: RectangleShape,
  picture: PictureFacts,
  candidates: number,
): ProposedRectangle | null {
  const lens = lensOf(picture);
  let best: ProposedRectangle | null = null;
  const tried: Corners[] = [];
  for (const { corners } of rectanglesAmong(segments, shape, lens)) {
    if (tried.length === candidates || (best && best.confidence >= CERTAIN)) break;
    if (tried.some((other) => isNear(other, corners))) continue;
    tried.push(corners);
    const refined = refineRectangle(planes, corners, shape, picture);
    if (!refined.ok) continue;
    const seen = refined.value.sides.reduce((sum, side) => sum + (side?.support ?? 0), 0) / 4;
    const misfit = misfitOf(refined.value.corners, shape, lens) / (lens.known ? SHAPE_SCALE : 10 * SHAPE_SCALE);
    const confidence = seen * Math.exp(-misfit * misfit);
    if (confidence >= LEAST_CONFIDENCE && !(best && best.confidence >= confidence)) best = { found: refined.value, confidence };
  }
  return best;
}

function isNear(one: Corners, other: Corners): boolean {
  const size = Math.hypot(one[2].xPx - one[0].xPx, one[2].yPx - one[0].yPx);
  return one.every((corner) => other.some((at) => Math.hypot(at.xPx - corner.xPx, at.yPx - corner.yPx) < 0.03 * size));
}
