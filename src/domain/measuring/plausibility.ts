import {
  type LandmarkName,
  type Landmarks,
  LEG_IDS,
  LEG_JOINTS,
  LEG_SEGMENTS,
  type LegId,
  type LegSegment,
  legLandmark,
  pointOf,
} from './landmarks.ts';
import type { ImagePoint } from './points.ts';
import { estimateFrom, type Measurement, type Quantity } from './quantity.ts';

/** The number of a pair of legs, from the front. */
export type LegPair = 1 | 2 | 3 | 4;
const LEG_PAIRS: readonly LegPair[] = [1, 2, 3, 4];

/** What looks as if a point had got another point's name. Facts only; nothing here proves a mistake. */
export type PlausibilityWarning =
  /** The left edge of the carapace lies right of the line from rear to front, or the right edge left of it. */
  | { readonly code: 'carapace-sides-crossed' }
  /** Legs that begin on the other side of that line. */
  | { readonly code: 'legs-on-other-side'; readonly legs: readonly LegId[] }
  | { readonly code: 'carapace-proportion'; readonly lengthToWidth: number }
  /** A leg, or one segment of it when the whole legs agree or are not known, beside its fellow of the other side. */
  | {
      readonly code: 'sides-differ';
      readonly pair: LegPair;
      readonly segment: LegSegment | null;
      readonly leftMm: number;
      readonly rightMm: number;
    }
  /** A leg, or one segment of it, that no tarantula has beside this carapace. */
  | {
      readonly code: 'leg-proportion';
      readonly leg: LegId;
      readonly segment: LegSegment | null;
      readonly lengthMm: number;
      readonly carapaceMm: number;
    }
  | {
      readonly code: 'span-too-long' | 'span-too-short';
      readonly span: SpanName;
      readonly spanMm: number;
      readonly legsAndCarapaceMm: number;
    };

export type SpanName = 'span-L1-R4' | 'span-R1-L4';

/**
 * Carapace length over width. Theraphosids in print: 1.04 to 1.15 in Hamilton et al. 2016 (ZooKeys 560:1), 1.17 in Yamamoto et
 * al. 2012 (Zootaxa 3172:1); how far beyond them is still believed is our judgment.
 */
export const BELIEVED_LENGTH_TO_WIDTH = { least: 0.9, most: 1.4 } as const;

/**
 * Left and right are told when they differ by more than this share of the longer one. Our judgment: legs of one pair are alike
 * unless one was lost and has grown again, but the two seldom lie alike. On rendered skins with every point in its place whole
 * legs differ by up to 0.13 in the picture, segments, of which one lies steeper, by up to 0.57.
 */
const DIFFERENCE_OF_LEGS = 0.2;
const DIFFERENCE_OF_ARTICLES = 0.65;

/**
 * Femur to tarsus, and one segment, as multiples of the carapace length. In print: legs of two species of
 * Aphonopelma 2.1 to 3.7 times the carapace, their longest segment 1.0 (Hamilton et al. 2016, ZooKeys 560:1). Arboreal genera have
 * longer ones (common practice, no source), and an arched leg looks shorter in the picture; the bounds are our judgment.
 */
const BELIEVED_LEG_TO_CARAPACE = { least: 0.8, most: 6 } as const;
const MOST_ARTICLE_TO_CARAPACE = 2;

/**
 * A span as a share of both its legs and the carapace. Longer than 1.25: coxae and trochanters lie between and are not in the
 * legs, but they are short. Shorter than 0.4: a hunched animal can read as little as half of its span (common practice, no
 * source). Both bounds are our judgment.
 */
const BELIEVED_SPAN_SHARE = { least: 0.4, most: 1.25 } as const;

/**
 * What about one reading cannot quite be believed.
 *
 * @param landmarks in the upright frame of the picture.
 * @param measurement what they give in millimeters; null without a scale, then only sides are looked at.
 * @param seenFrom a picture of the underside shows left and right exchanged.
 */
export function doubtsAbout(
  landmarks: Landmarks,
  measurement: Measurement | null,
  seenFrom: 'above' | 'below',
): readonly PlausibilityWarning[] {
  return [
    ...crossedSides(landmarks, seenFrom),
    ...(measurement === null
      ? []
      : [...carapaceDoubts(measurement), ...legDoubts(measurement), ...pairDoubts(measurement), ...spanDoubts(measurement)]),
  ];
}

function crossedSides(landmarks: Landmarks, seenFrom: 'above' | 'below'): PlausibilityWarning[] {
  const [front, rear] = [pointOf(landmarks['carapace-front']), pointOf(landmarks['carapace-rear'])];
  if (front === null || rear === null) return [];
  const sideOf = (at: ImagePoint): 'left' | 'right' => {
    // y runs down, so that a point to the left of somebody looking from rear to front has a negative product.
    const product = (front.xPx - rear.xPx) * (at.yPx - rear.yPx) - (front.yPx - rear.yPx) * (at.xPx - rear.xPx);
    return product < 0 === (seenFrom === 'above') ? 'left' : 'right';
  };
  const isAcross = (name: LandmarkName, side: 'left' | 'right'): boolean => {
    const at = pointOf(landmarks[name]);
    return at !== null && sideOf(at) !== side;
  };
  const legs = LEG_IDS.filter((leg) => {
    // Only its beginning: further out a leg may lie across the body.
    return isAcross(legLandmark(leg, LEG_JOINTS[0]), leg.startsWith('L') ? 'left' : 'right');
  });
  const carapaceIsCrossed = isAcross('carapace-left', 'left') || isAcross('carapace-right', 'right');
  return [
    ...(carapaceIsCrossed ? [{ code: 'carapace-sides-crossed' } as const] : []),
    ...(legs.length > 0 ? [{ code: 'legs-on-other-side', legs } as const] : []),
  ];
}

function carapaceDoubts(measurement: Measurement): PlausibilityWarning[] {
  const ratio = named(measurement, 'carapace-ratio');
  if (ratio === null) return [];
  const { value, expandedUncertainty } = ratio.estimate;
  const { least, most } = BELIEVED_LENGTH_TO_WIDTH;
  return value + expandedUncertainty < least || value - expandedUncertainty > most
    ? [{ code: 'carapace-proportion', lengthToWidth: value }]
    : [];
}

/** What one leg tells without its fellow of the other side. A regenerated leg may be as short as it likes. */
function legDoubts(measurement: Measurement): PlausibilityWarning[] {
  const carapace = named(measurement, 'carapace-length');
  if (carapace === null || carapace.estimate.value <= 0) return [];
  const carapaceMm = carapace.estimate.value;
  return LEG_IDS.flatMap((leg): PlausibilityWarning[] => {
    const doubtful = [null, ...LEG_SEGMENTS].flatMap((segment): PlausibilityWarning[] => {
      const length = named(measurement, segment === null ? `leg-${leg}` : `leg-${leg}-${segment}`);
      if (length === null) return [];
      const mostMm = carapaceMm * (segment === null ? BELIEVED_LEG_TO_CARAPACE.most : MOST_ARTICLE_TO_CARAPACE);
      const leastMm = segment === null && !length.flags.includes('regenerated') ? carapaceMm * BELIEVED_LEG_TO_CARAPACE.least : 0;
      const lengthMm = length.estimate.value;
      return lengthMm > mostMm || lengthMm < leastMm ? [{ code: 'leg-proportion', leg, segment, lengthMm, carapaceMm }] : [];
    });
    // The whole leg says it once for all its segments.
    return doubtful.slice(0, 1);
  });
}

function pairDoubts(measurement: Measurement): PlausibilityWarning[] {
  return LEG_PAIRS.flatMap((pair) => {
    const whole = sideDoubt(measurement, pair, null);
    return whole === null ? LEG_SEGMENTS.flatMap((segment) => sideDoubt(measurement, pair, segment) ?? []) : [whole];
  });
}

function sideDoubt(measurement: Measurement, pair: LegPair, segment: LegSegment | null): PlausibilityWarning | null {
  const suffix = segment === null ? '' : `-${segment}`;
  const [left, right] = [named(measurement, `leg-L${pair}${suffix}`), named(measurement, `leg-R${pair}${suffix}`)];
  if (left === null || right === null || [left, right].some(({ flags }) => flags.includes('regenerated'))) return null;
  const [leftMm, rightMm] = [left.estimate.value, right.estimate.value];
  const awayMm = Math.abs(leftMm - rightMm);
  const believedMm = (segment === null ? DIFFERENCE_OF_LEGS : DIFFERENCE_OF_ARTICLES) * Math.max(leftMm, rightMm);
  const { expandedUncertainty } = estimateFrom(awayMm, Math.hypot(uncertaintyInPicture(left), uncertaintyInPicture(right)));
  if (awayMm <= Math.max(believedMm, expandedUncertainty)) return null;
  return { code: 'sides-differ', pair, segment, leftMm, rightMm };
}

/** Standard uncertainty without heights: what an arch hides is allowed for by the bounds, and would excuse any misplaced joint. */
function uncertaintyInPicture({ budget }: Quantity): number {
  return Math.hypot(...budget.map(({ source, standardUncertainty }) => (source === 'height' ? 0 : standardUncertainty)));
}

const SPANS: readonly { readonly span: SpanName; readonly legs: readonly [LegId, LegId] }[] = [
  { span: 'span-L1-R4', legs: ['L1', 'R4'] },
  { span: 'span-R1-L4', legs: ['R1', 'L4'] },
];

function spanDoubts(measurement: Measurement): PlausibilityWarning[] {
  return SPANS.flatMap(({ span, legs }): PlausibilityWarning[] => {
    const parts = [...legs.map((leg) => named(measurement, `leg-${leg}`)), named(measurement, 'carapace-length')];
    const length = named(measurement, span);
    if (length === null || parts.includes(null)) return [];
    const spanMm = length.estimate.value;
    const legsAndCarapaceMm = parts.reduce((sum, part) => sum + (part?.estimate.value ?? 0), 0);
    const { least, most } = BELIEVED_SPAN_SHARE;
    if (spanMm > most * legsAndCarapaceMm) return [{ code: 'span-too-long', span, spanMm, legsAndCarapaceMm }];
    return spanMm < least * legsAndCarapaceMm ? [{ code: 'span-too-short', span, spanMm, legsAndCarapaceMm }] : [];
  });
}

function named(measurement: Measurement, name: string): Quantity | null {
  return measurement.quantities.find((quantity) => quantity.name === name) ?? null;
}
