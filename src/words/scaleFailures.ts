import type { Failure } from '../domain/failure.ts';
import { counted, listed } from './counts.ts';
import type { FailureWords } from './failureWords.ts';

export type ScaleFailure = Extract<
  Failure,
  {
    code:
      | 'scale-points-coincide'
      | 'corners-not-convex'
      | 'corners-mirrored'
      | 'corners-collinear'
      | 'rim-not-elliptic'
      | 'rim-not-found'
      | 'rim-cut-off'
      | 'points-on-a-line'
      | 'sides-not-found'
      | 'three-sides-implausible'
      | 'ticks-not-found'
      | 'points-outside-picture'
      | 'finding-stopped'
      | 'not-at-scale'
      | 'nothing-at-scale';
  }
>;

/** Of a rectangle, by the numbers of its corners. */
const SIDES_IN_WORDS = [
  'the side from corner 1 to 2',
  'the side from corner 2 to 3',
  'the side from corner 3 to 4',
  'the side from corner 4 to 1',
];

const IMPLAUSIBLE: Readonly<Record<Extract<ScaleFailure, { code: 'three-sides-implausible' }>['reason'], string>> = {
  'no-rectangle': 'seen from no place would a rectangle of this size look so',
  tilt: 'the camera would have looked more than 60° away from straight down',
  scatter: 'the edge found for one of them is not straight',
  'far-from-handles': 'a corner would lie far from where it was marked',
  'focal-length-unknown': 'that takes the focal length, which this picture does not tell',
};

/** Why a photo gives no scale, or not that one. */
export function wordsForScale(failure: ScaleFailure): FailureWords {
  switch (failure.code) {
    case 'scale-points-coincide':
      return {
        happened: 'The two ends of the scale lie on the same spot.',
        advice: 'Drag one end to the other mark, as far away as you can read.',
      };
    case 'corners-not-convex':
      return {
        happened: 'The four corners do not run round the outside of the object.',
        advice: 'Drag each handle to its own corner, without crossing.',
      };
    case 'corners-mirrored':
      return { happened: 'The four corners run the wrong way round.', advice: 'Drag them so that 1 to 4 run clockwise.' };
    case 'corners-collinear':
      return { happened: 'Three of the four corners lie on one line.', advice: 'Drag each handle to its own corner.' };
    case 'rim-not-elliptic':
      return {
        happened: 'This outline is not one that a coin can have in a photo.',
        advice: 'Click the middle of the coin again, or three points well apart on its rim.',
      };
    case 'rim-not-found':
      return {
        happened: 'No rim was found there: too little of it stands out from the ground.',
        advice: 'Click three points well apart on the rim. If it is still not found, use another scale object or two points.',
      };
    case 'rim-cut-off':
      return {
        happened: 'More than half of this coin’s rim lies outside of the picture; what is left of it tells no size.',
        advice: 'Use another scale object or two points, or a photo that shows more than half of the rim.',
      };
    case 'points-on-a-line':
      return {
        happened: 'The points of the pattern lie on one line, which says nothing about the plane.',
        advice: 'Show more of the card and let it be found again.',
      };
    case 'sides-not-found':
      return {
        happened: `No straight edge was found at ${listed(failure.sides.map((side) => SIDES_IN_WORDS[side] ?? 'a side'))}.`,
        advice: 'Drag the handles nearer to the corners, or keep them where you put them and skip the fit.',
      };
    case 'three-sides-implausible':
      return {
        happened: `Of this card ${SIDES_IN_WORDS[failure.hidden] ?? 'one side'} was not found, and the other three do not tell where it is: ${IMPLAUSIBLE[failure.reason]}.`,
        advice: 'Uncover that side or drag the handles nearer to the corners and fit again; or place all four corners by hand.',
      };
    case 'ticks-not-found':
      return {
        happened:
          failure.found >= failure.needed
            ? `What lies along this line is no row of ticks: ${failure.found} dark or light places in it are uneven or too faint.`
            : `Only ${counted(failure.found, 'tick')} could be found along this line; at least ${failure.needed} are needed.`,
        advice: 'Click two ticks far apart on the row of shortest ticks, and check the graduation.',
      };
    case 'points-outside-picture':
      return {
        happened: `${failure.points.length === 1 ? 'Point' : 'Points'} ${listed(failure.points.map((point) => `${point + 1}`))} ${failure.points.length === 1 ? 'lies' : 'lie'} outside of the picture (${failure.widthPx} x ${failure.heightPx} pixels).`,
        advice: 'Bring all points back into the picture.',
      };
    case 'finding-stopped':
      return {
        happened: 'Looking for a scale in this photo was stopped.',
        advice: 'Open the photo again to look once more, or mark the scale by hand.',
      };
    case 'not-at-scale':
      return {
        happened: 'This photo cannot be laid flat: it has no sound scale.',
        advice: 'Mark something of known size in it on the Bench.',
      };
    case 'nothing-at-scale':
      return {
        happened: 'None of the skins is at scale, so there is nothing to line up.',
        advice: 'Mark something of known size in a photo of each skin on the Bench.',
      };
  }
}
