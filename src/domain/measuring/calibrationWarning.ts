import type { ScaleMarks } from './calibration.ts';
import type { SideNumber } from './threeSides.ts';

/** What the keeper should know about a calibration. Facts only. */
export type CalibrationWarning =
  /** The camera looked more than 30 degrees away from straight down. */
  | { readonly code: 'strong-tilt'; readonly tiltDeg: number }
  /** The longest side of the object covers less than a tenth of the picture's width. */
  | { readonly code: 'scale-object-small'; readonly shareOfWidth: number }
  /** The expanded uncertainty of the object's size is half a per cent or more. */
  | { readonly code: 'scale-object-coarse'; readonly relativeStandardUncertainty: number }
  /** Two points say nothing about tilt, a coin little without a focal length, nor do a few short ticks or three sides of some cards. */
  | { readonly code: 'tilt-unknown'; readonly by: Extract<ScaleMarks['kind'], 'two-points' | 'coin' | 'rule-ticks' | 'rectangle'> }
  /** Two corners of a card follow from three sides and the focal length: a wrong one no longer shows in the shape. */
  | { readonly code: 'side-hidden'; readonly side: SideNumber }
  /** Corners that a hand put beside the picture, where nothing shows whether they lie right. */
  | { readonly code: 'corners-beside-picture'; readonly corners: readonly number[] }
  /** A coin's outline is that of two planes; which was real is not decided. */
  | { readonly code: 'tilt-direction-open'; readonly tiltsDeg: readonly [number, number] }
  /** The points scatter more about their plane than they should: a bent card, a distorting lens, a wrong point. */
  | { readonly code: 'points-scatter'; readonly scatterPx: number }
  /** The ticks lie farther off an even row than finding them and a sound rule explain: bent, worn, or another graduation. */
  | { readonly code: 'ticks-scatter'; readonly scatterPx: number; readonly scatterMm: number; readonly expectedPx: number }
  /** The printed card is seen as in a mirror: lengths are right, left and right of the animal are exchanged. */
  | { readonly code: 'picture-mirrored' }
  /** The picture does not tell its 35 mm equivalent focal length: no tilt, no residual, no height correction. */
  | { readonly code: 'focal-length-unknown' }
  /** What was marked does not fit its own shape seen through this lens: a wrong corner, another object, or a cropped picture. */
  | {
      readonly code: 'shape-disagrees';
      readonly of: Extract<ScaleMarks['kind'], 'rectangle' | 'points'>;
      readonly aspectErrorPercent: number;
      readonly angleErrorDeg: number;
    };
