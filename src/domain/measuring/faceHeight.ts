import { multiply } from '../numerics/matrix3.ts';
import type { ScaleMarks } from './calibration.ts';
import type { View, ViewExcursion } from './view.ts';

/** What a rule's face is taken to be known to where nobody measured it, mm: between flat on the table and a thick rule. Own assumption. */
export const ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM = 0.5;

/** The same where its height was typed in and nothing said of how well it is known: read with a rule or a caliper. Own judgment. */
export const TYPED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM = 0.1;

/**
 * How well a face's height is known once it was typed in: as it was, unless height and uncertainty were both only assumed.
 *
 * @param before what stood there; a height of 0 is that of a rule nobody measured.
 */
export function typedFaceHeightStandardUncertaintyMm(before: {
  readonly heightMm: number;
  readonly standardUncertaintyMm: number;
}): number {
  const { heightMm, standardUncertaintyMm } = before;
  const isAssumed = heightMm === 0 && standardUncertaintyMm === ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM;
  return isAssumed ? TYPED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM : standardUncertaintyMm;
}

/**
 * The height of an object's face above the table as one more input; none for objects whose thickness is that of their kind. An object of
 * the keeper's own is as thick as was typed, and where nothing was typed its height is only assumed, as that of a rule.
 */
export function faceHeightExcursions(marks: ScaleMarks, view: View): readonly ViewExcursion[] {
  const uncertaintyMm = faceHeightUncertaintyMm(marks);
  if (uncertaintyMm === 0) return [];
  return [{ source: 'scale-object', below: withFaceHigher(view, -uncertaintyMm), above: withFaceHigher(view, uncertaintyMm) }];
}

function faceHeightUncertaintyMm(marks: ScaleMarks): number {
  switch (marks.kind) {
    case 'two-points':
    case 'rule-ticks':
      return marks.faceHeightStandardUncertaintyMm ?? 0;
    case 'rectangle':
      return marks.object === 'own' ? ofOwnObject(marks.thicknessMm) : 0;
    case 'coin':
      return marks.coin === 'own' ? ofOwnObject(marks.thicknessMm) : 0;
    case 'points':
      return 0;
  }
}

function ofOwnObject(thicknessMm: number): number {
  return thicknessMm === 0 ? ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM : TYPED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM;
}

/**
 * The view of the plane on which heights are counted from where the face was taken to lie, when it really lies this much higher: the
 * plane stays below the face by so much, and lines of sight meet it farther from the foot.
 */
function withFaceHigher(view: View, byMm: number): View {
  const { foot, heightMm } = view.station;
  const factor = (heightMm + byMm) / heightMm;
  return {
    ...view,
    imageToPlane: multiply([factor, 0, foot.xMm * (1 - factor), 0, factor, foot.yMm * (1 - factor), 0, 0, 1], view.imageToPlane),
    station: { foot, heightMm: heightMm + byMm },
  };
}
