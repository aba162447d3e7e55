import { ENOUGH_PHOTOS, isEnough, type ObserverPointing, pointingFor } from '../../../../domain/agreement/pointing.ts';
import type { LandmarkName, Landmarks } from '../../../../domain/measuring/landmarks.ts';
import { COVERAGE_FACTOR } from '../../../../domain/measuring/quantity.ts';

/**
 * Which figure counts for the points, the entered one or that of repeated passes, and why.
 *
 * @param enteredPx standard uncertainty per coordinate, like all others; told expanded.
 */
export function pointingInWords(names: readonly LandmarkName[], pointing: ObserverPointing | undefined, enteredPx: number): string {
  const entered = `the ${expanded(enteredPx)} entered here`;
  if (pointing === undefined) {
    return `k = 2, about 95 %. This figure counts. Passes repeated on at least ${ENOUGH_PHOTOS} photos show how well your hand points.`;
  }
  const fromRepeats = names.filter((name) => {
    const own = pointing.byLandmark.get(name);
    return own !== undefined && isEnough(own);
  });
  const others = names.filter((name) => !fromRepeats.includes(name));
  const wider = others.filter((name) => pointingFor(name, pointing, enteredPx).pointingPx > enteredPx);
  const { overall } = pointing;
  const agree = `Your repeated passes agree to ${expanded(overall.pointingPx)}, on ${overall.photos === 1 ? '1 photo' : `${overall.photos} photos`}.`;
  const own = 'that takes the place of what is entered here';
  if (others.length === 0) return `${agree} Every point has repeats enough of its own, and ${own}.`;
  const some = fromRepeats.length === 0 ? '' : ` ${counted(fromRepeats.length)} enough repeats of their own, and ${own}.`;
  const isFor = fromRepeats.length === 0 ? '' : 'For the other points ';
  if (wider.length === others.length) {
    return `${agree}${some} ${isFor === '' ? 'The' : `${isFor}the`} repeats are wider than ${entered}, so they count.`;
  }
  const but =
    wider.length === 0 ? '' : ` For ${wider.length === 1 ? '1 point' : `${wider.length} points`} the repeats are wider, and they count.`;
  return `${agree}${some} ${isFor === '' ? 'Too' : `${isFor}there are too`} few repeats to narrow ${entered}, so it counts.${but}`;
}

/** Of points that were placed while the photo was shown too small for them; null without any. */
export function coarselyAimedInWords(landmarks: Landmarks): string | null {
  const aimed = Object.values(landmarks).flatMap((landmark) =>
    'at' in landmark && landmark.aimedPx !== undefined ? [landmark.aimedPx] : [],
  );
  if (aimed.length === 0) return null;
  const points = aimed.length === 1 ? '1 point was' : `${aimed.length} points were`;
  const count = aimed.length === 1 ? 'it counts' : 'they count';
  return `${points} placed while the photo was shown so small that a pixel of the screen hides more than that: ${count} as placed to ${expanded(Math.max(...aimed))}. To narrow it, enlarge the photo and place them again, or move them by the arrow keys.`;
}

function counted(points: number): string {
  return points === 1 ? '1 point has' : `${points} points have`;
}

function expanded(standardPx: number): string {
  return `± ${Number((COVERAGE_FACTOR * standardPx).toPrecision(2))} px`;
}
