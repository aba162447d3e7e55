import type { ScaleMarks } from '../calibration.ts';
import type { PictureFacts } from '../camera.ts';
import { CORNER_SHIFT_BOUND, CORNER_SHIFT_STANDARD_UNCERTAINTY, type LensShift, WITHIN_BOUND } from '../distortion.ts';
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
  /** What is straight in space tells it clearly better than the bound does. */
  | 'found'
  /** It was found, but the keeper wants the picture left as it is. */
  | 'switched-off'
  /** The marks hold nothing that is straight in space. */
  | 'nothing-straight'
  /** Too short, or too near to the middle of the picture, to bend visibly. */
  | 'too-short'
  /** What should be straight scatters by more than such a lens could make it. */
  | 'uneven';

/** Clearly better than the bound: less than half of it. */
const CLEAR = CORNER_SHIFT_BOUND / 2;
/** A lens this many standard uncertainties from what a camera leaves is taken for one that the camera does not correct. */
const BEYOND_COVERAGE = 3;
/** Residuals larger than this many times their uncertainty come from something else. */
const LARGEST_SCATTER = 3;
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
  if (shift === 'uneven') return { ...LEFT, reason: 'uneven' };
  if (!shift || !isClear(shift)) return { ...LEFT, reason: 'too-short' };
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
export function lensShiftOf(straight: Straightness): LensShift | 'uneven' | null {
  const fit = fitJointly(straight);
  if (!fit || Math.abs(fit.value) > LARGEST_SHIFT) return null;
  if (fit.excess > LARGEST_SCATTER ** 2) return 'uneven';
  const own = straight.ownErrors.map(fit.answerTo);
  const scatter = fit.standardUncertainty * Math.sqrt(Math.max(1, fit.excess));
  return { cornerShare: fit.value, standardUncertainty: Math.hypot(scatter, FORM_UNCERTAINTY, ...own) };
}

function isClear({ cornerShare, standardUncertainty }: LensShift): boolean {
  const usual = Math.hypot(standardUncertainty, CORNER_SHIFT_STANDARD_UNCERTAINTY);
  return standardUncertainty < CLEAR || Math.abs(cornerShare) > BEYOND_COVERAGE * usual;
}
