import { fail, type Result, succeed } from '../result.ts';
import type { RectangleScale } from './calibration.ts';
import { focalStandardUncertaintyPx, type Lens, lensOf, type PictureFacts } from './camera.ts';
import type { Corners } from './corners.ts';
import { planeExcursions } from './planeExcursions.ts';
import { viewOfPlane } from './slopedPlane.ts';
import { cornersOfThree, fitThreeSides, type Parameters, shift, type ThreeSides } from './threeSides.ts';
import type { View, ViewExcursion } from './view.ts';

/** Nobody photographs a card on a table from so low, and an error of a side weighs four times there. Own judgment. */
const LARGEST_TILT_DEG = 60;
/** The points of a side scatter by more about a straight line than their uncertainty explains, by this ratio: something else was seen. */
const LARGEST_SCATTER = 3;

/** The plane of a rectangle with one side hidden, and its corners there. */
export interface ThreeSidedView {
  readonly view: View;
  readonly excursions: readonly ViewExcursion[];
  readonly tiltDeg: number;
  readonly corners: Corners;
  /** The same with each input moved up by its standard uncertainty. */
  readonly moved: readonly Corners[];
}

/**
 * View through three fitted sides, the object's known size and the picture's focal length.
 *
 * @returns `three-sides-implausible` when no camera over a table shows them so, or one of them is not straight.
 */
export function viewOfThreeSides(
  sides: ThreeSides,
  size: Pick<RectangleScale, 'widthMm' | 'heightMm' | 'widthStandardUncertaintyMm' | 'heightStandardUncertaintyMm'>,
  picture: PictureFacts,
): Result<ThreeSidedView> {
  const lens = lensOf(picture);
  const refused = (reason: 'no-rectangle' | 'tilt' | 'scatter') => fail({ code: 'three-sides-implausible', hidden: sides.hidden, reason });
  if (sides.lines.some(({ excess }) => excess > LARGEST_SCATTER ** 2)) return refused('scatter');
  const fit = fitThreeSides(sides, lens);
  const corners = fit && cornersOfThree(sides, lens, fit.parameters);
  if (!fit || !corners) return refused('no-rectangle');
  const tiltDeg = tiltOf(fit.parameters);
  if (tiltDeg > LARGEST_TILT_DEG) return refused('tilt');

  const viewAt = (parameters: Parameters, through: Lens = lens): View => viewOfPlane(slopedPlane(parameters), through);
  const excursions = planeExcursions(fit.covariance, (by) => viewAt(shift(fit.parameters, by)));
  const share = sides.hidden % 2 === 0 ? size.widthStandardUncertaintyMm / size.widthMm : size.heightStandardUncertaintyMm / size.heightMm;
  if (share > 0) {
    // The side that was seen gives the scale of all; how long the others are decides nothing.
    const longer = (sign: number): View => viewAt(shift(fit.parameters, [0, 0, Math.log1p(sign * share)]));
    excursions.push({ source: 'scale-object', below: longer(-1), above: longer(1) });
  }
  // Another focal length makes another plane of the same lines.
  const focalPx = focalStandardUncertaintyPx(lens, picture);
  const refocused = (sign: number): { readonly parameters: Parameters; readonly lens: Lens } => {
    const other = { ...lens, focalPx: lens.focalPx + sign * focalPx };
    return { parameters: fitThreeSides(sides, other)?.parameters ?? fit.parameters, lens: other };
  };
  const [nearer, farther] = [refocused(-1), refocused(1)];
  if (focalPx > 0) {
    excursions.push({
      source: 'camera-distance',
      below: viewAt(nearer.parameters, nearer.lens),
      above: viewAt(farther.parameters, farther.lens),
    });
  }
  const moved = [
    ...fit.changes.map((by) => cornersOfThree(sides, lens, shift(fit.parameters, by))),
    cornersOfThree(sides, farther.lens, farther.parameters),
  ];
  return succeed({ view: viewAt(fit.parameters), excursions, tiltDeg, corners, moved: moved.map((at) => at ?? corners) });
}

function slopedPlane([slopeX, slopeY, logDepth]: Parameters) {
  return { slopeX, slopeY, depthMm: Math.exp(logDepth) };
}

function tiltOf([slopeX, slopeY]: Parameters): number {
  return (Math.atan(Math.hypot(slopeX, slopeY)) * 180) / Math.PI;
}
