import type { ScaleMarks } from '../calibration.ts';
import type { PictureFacts } from '../camera.ts';
import { CORNER_SHIFT_BOUND, CORNER_SHIFT_STANDARD_UNCERTAINTY, type LensShift, WITHIN_BOUND } from '../distortion.ts';
import { COVERAGE_FACTOR } from '../quantity.ts';
import { fitJointly } from './jointFit.ts';
import { evenTicks, flatPoints, type Straightness, straightSides } from './straightness.ts';

/** What is taken of the lens, and why. */
export interface LensFound {
  /** What the lens does to the picture: undone when `isCorrected`, else only allowed for. */
  readonly shift: LensShift;
  readonly isCorrected: boolean;
  readonly reason: LensReason;
}

export type LensReason =
  /** What is straight in space tells it better than the bound does, or that it is not within the bound. */
  | 'found'
  /** It was found, but the keeper wants the picture left as it is. */
  | 'switched-off'
  /** The marks hold nothing that is straight in space. */
  | 'nothing-straight'
  /** The fit has no answer: too few points, or such as no single lens explains. */
  | 'not-determined'
  /** It is told less well than by the bound, and does not differ from none: the object is too short, or too near to the middle. */
  | 'not-significant'
  /** It would have to bend more than any lens for near objects does. */
  | 'implausible'
  /** What should be straight scatters by more than such a lens could make it. */
  | 'uneven';

/** A lens this many standard uncertainties from none is taken for one that the camera does not correct, however badly it is told. */
const BEYOND_COVERAGE = 3;
/** One parameter does not describe a lens to the last: rings of opposite sign stay. Own assumption, a tenth of the bound. */
const FORM_UNCERTAINTY = CORNER_SHIFT_BOUND / 10;
/** Beyond it the picture folds back at its corners: no camera lens for near objects does that. */
const LARGEST_SHIFT = 0.12;

const LEFT = { shift: WITHIN_BOUND, isCorrected: false } as const;

/** How the lens bends what is straight in the marks, if they tell it. */
export function lensFound(marks: ScaleMarks, picture: PictureFacts): LensFound {
  const straight = straightnessOf(marks, picture);
  if (!straight) return { ...LEFT, reason: 'nothing-straight' };
  const shift = lensShiftOf(straight);
  if (typeof shift === 'string') return { ...LEFT, reason: shift };
  if (!isClear(shift)) return { shift: allowedFor(shift), isCorrected: false, reason: 'not-significant' };
  if ('keepsDistortion' in marks && marks.keepsDistortion) {
    // Not corrected, so what is known of it stays in the lengths as an error.
    const standardUncertainty = Math.hypot(shift.cornerShare, shift.standardUncertainty);
    return { shift: { cornerShare: 0, standardUncertainty }, isCorrected: false, reason: 'switched-off' };
  }
  return { shift, isCorrected: true, reason: 'found' };
}

function straightnessOf(marks: ScaleMarks, picture: PictureFacts): Straightness | null {
  switch (marks.kind) {
    case 'rectangle':
      return straightSides(marks, picture);
    case 'points':
      return flatPoints(marks, picture);
    case 'rule-ticks':
      return evenTicks(marks, picture);
    default:
      return null;
  }
}

/** With its uncertainty: from the scatter of the points, from what the object itself may be off, and from the form of the lens. */
export function lensShiftOf(straight: Straightness): LensShift | 'not-determined' | 'implausible' | 'uneven' {
  const fit = fitJointly(straight);
  if (!fit) return 'not-determined';
  if (fit.excess > straight.largestExcess) return 'uneven';
  if (Math.abs(fit.value) > LARGEST_SHIFT) return 'implausible';
  const own = straight.ownErrors.map(fit.answerTo);
  const scatter = fit.standardUncertainty * Math.sqrt(Math.max(1, fit.excess));
  return { cornerShare: fit.value, standardUncertainty: Math.hypot(scatter, FORM_UNCERTAINTY, ...own) };
}

function isClear({ cornerShare, standardUncertainty }: LensShift): boolean {
  return standardUncertainty < CORNER_SHIFT_STANDARD_UNCERTAINTY || Math.abs(cornerShare) > BEYOND_COVERAGE * standardUncertainty;
}

/** What is told half as well as the bound or worse says nothing against it, but by clear disagreement. Own judgment. */
const LARGEST_TOLD = 2 * CORNER_SHIFT_STANDARD_UNCERTAINTY;
/** Nine in ten normal errors lie below this many standard deviations. */
const ONE_SIDED = 1.282;

/**
 * The bound, or as far as the lens may go for all that was seen (one-sided, 90 %) where that is more: a lens a little beyond the bound is
 * often not seen as far out as it is. Where little was seen, the bound is widened by as much as that disagrees with it (the ratio of
 * Birge 1932, Physical Review 40:207).
 */
function allowedFor({ cornerShare, standardUncertainty }: LensShift): LensShift {
  const bound = CORNER_SHIFT_STANDARD_UNCERTAINTY;
  const widened =
    standardUncertainty < LARGEST_TOLD
      ? (Math.abs(cornerShare) + ONE_SIDED * standardUncertainty) / COVERAGE_FACTOR
      : (bound * Math.abs(cornerShare)) / Math.hypot(standardUncertainty, bound);
  return { cornerShare: 0, standardUncertainty: Math.max(bound, widened) };
}
