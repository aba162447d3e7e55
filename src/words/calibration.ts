import type { CalibrationWarning } from '../domain/measuring/calibrationWarning.ts';
import { listed } from './counts.ts';

const TILT_UNKNOWN: Readonly<Record<Extract<CalibrationWarning, { code: 'tilt-unknown' }>['by'], string>> = {
  'two-points': 'Two points say nothing about the tilt of the camera.',
  coin: 'A coin says little about the tilt of the camera while the focal length of the picture is unknown.',
  'rule-ticks': 'These ticks are too few or too short to say how the camera was tilted.',
  rectangle:
    'One side of the card was not seen, and the side opposite to it runs through the middle of the picture: it hardly tells how the camera was tilted.',
};

/** Beyond it a card of 54 mm shows less than half as high as it is. Own judgment. */
const EDGE_ON_DEG = 60;
/** Beyond it a misfit is no inexact corner. */
const HOPELESS_SHAPE_PERCENT = 50;

function cornersInWords(corners: readonly number[]): string {
  return corners.length === 1 ? `Corner ${listed(corners.map(numbered))} lies` : `Corners ${listed(corners.map(numbered))} lie`;
}

function numbered(corner: number): string {
  return `${corner + 1}`;
}

/** What makes every length doubtful comes before what only widens the uncertainty. */
const BY_GRAVITY: readonly CalibrationWarning['code'][] = [
  'picture-mirrored',
  'shape-disagrees',
  'corners-beside-picture',
  'side-hidden',
  'points-scatter',
  'ticks-scatter',
  'strong-tilt',
  'tilt-direction-open',
  'tilt-unknown',
  'focal-length-unknown',
  'scale-object-small',
  'scale-object-coarse',
];

/** The gravest first. */
export function inOrderOfGravity(warnings: readonly CalibrationWarning[]): readonly CalibrationWarning[] {
  return warnings.toSorted((one, other) => BY_GRAVITY.indexOf(one.code) - BY_GRAVITY.indexOf(other.code));
}

/** What a calibration warns of, with what to do about it. */
export function warningInWords(warning: CalibrationWarning): string {
  switch (warning.code) {
    case 'strong-tilt':
      if (warning.tiltDeg > EDGE_ON_DEG)
        return `The scale object is seen almost edge-on: the camera looked ${warning.tiltDeg.toFixed(0)}° away from straight down, or its corners are marked wrong. No length from this picture can be trusted. Take a photo from straight above.`;
      return `The camera looked ${warning.tiltDeg.toFixed(0)}° away from straight down. Beyond 30° small errors of the corners weigh heavily: a photo taken from straight above would be better.`;
    case 'scale-object-small':
      return `The scale object covers only ${(100 * warning.shareOfWidth).toFixed(0)} % of the picture's width. From 10 % up lengths become trustworthy: go nearer, or use a larger object.`;
    case 'scale-object-coarse':
      return `The size of this object is known to ${(200 * warning.relativeStandardUncertainty).toFixed(1)} % only (95 %). Measure it with a caliper and enter what you read below, or use a bank-size card.`;
    case 'tilt-unknown':
      return `${TILT_UNKNOWN[warning.by]} The uncertainty allows for it; a card or a sheet of paper would remove it.`;
    case 'side-hidden':
      return `The edge from corner ${warning.side + 1} to ${((warning.side + 1) % 4) + 1} was not seen. Lengths rest on the other three and on the focal length, and no wrong corner would show in the shape. The uncertainty allows for the first, not for a wrong edge: compare the outline with the card, or take a photo that shows all of it.`;
    case 'corners-beside-picture':
      return `${cornersInWords(warning.corners)} beside the picture, put there by hand: nothing shows whether that is right, and the uncertainty does not allow for it. Press “Fit to the edges”: then what the picture shows of the edges decides, and three of them are enough.`;
    case 'tilt-direction-open':
      return `The outline of a coin leaves two planes possible (tilted ${warning.tiltsDeg[0].toFixed(0)}° and ${warning.tiltsDeg[1].toFixed(0)}°). The uncertainty allows for both: say which edge of the coin was nearer to the camera, or mark a second object.`;
    case 'points-scatter':
      return `The points of the card scatter by ${warning.scatterPx.toFixed(1)} px about a flat plane. The card may be bent, or the lens distort: lay it flat and near the middle of the picture.`;
    case 'ticks-scatter':
      return `The ticks lie ${warning.scatterPx.toFixed(1)} px (${warning.scatterMm.toFixed(2)} mm) off an even row, where ${warning.expectedPx.toFixed(1)} px would be usual. The rule may be bent or worn, its graduation another one than stated, or lines between the ticks were taken for ticks. The uncertainty allows for the scatter, not for a wrong graduation: compare the lines drawn with the rule, lay it flat, or use another scale.`;
    case 'picture-mirrored':
      return 'This picture is mirrored: the printed card shows as in a mirror, and so does the animal. Lengths still come out right, but left and right are exchanged, so every leg of the left side would be recorded as one of the right. Import the unmirrored original (some front cameras save the mirror image), or turn the picture over and import that.';
    case 'focal-length-unknown':
      return 'The picture does not tell its focal length, or was cut or resized after it was taken, so tilt, distance and height above the plane cannot be worked out. The uncertainty allows for it; the camera’s own file tells more.';
    case 'shape-disagrees':
      if (warning.of === 'points')
        return `The printed card does not show its own shape (sides ${Math.abs(warning.aspectErrorPercent).toFixed(1)} %, angle ${Math.abs(warning.angleErrorDeg).toFixed(1)}° off). The picture was probably cropped, so the tilt is told wrong and lengths away from the card with it: import the whole picture. The card may also be bent, or printed larger one way than the other.`;
      if (Math.abs(warning.aspectErrorPercent) > HOPELESS_SHAPE_PERCENT)
        return 'These corners fit no rectangle of this size, from wherever it is seen: the card is seen almost edge-on, a corner is wrong, or the object is another one. No length from this picture can be trusted. Mark the corners anew, or take a photo from straight above.';
      return `These corners do not fit a rectangle of this size (sides ${Math.abs(warning.aspectErrorPercent).toFixed(1)} %, angle ${Math.abs(warning.angleErrorDeg).toFixed(1)}° off). A corner may be wrong, the object another one, or the picture cropped.`;
  }
}
