import type { CalibrationWarning } from '../domain/measuring/calibrate.ts';
import type { CoinName, RectangleObject, ScaleMarks } from '../domain/measuring/calibration.ts';
import {
  CARAPACE_LANDMARKS,
  type CarapaceLandmark,
  FREE_DISTANCES,
  type FreeDistance,
  type FreeLandmark,
  isFreeLandmark,
  type LandmarkName,
  LEG_IDS,
  LEG_JOINTS,
  type LegId,
  type LegJoint,
} from '../domain/measuring/landmarks.ts';
import type { LegPair, PlausibilityWarning } from '../domain/measuring/plausibility.ts';
import type { AbsentQuantity } from '../domain/measuring/quantity.ts';
import { listed } from './counts.ts';
import { capitalized, JOINT_LABELS, LEG_LABELS, SEGMENT_LABELS } from './labels.ts';
import { distanceName, quantityName } from './quantities.ts';

const CARAPACE_NAMES: Readonly<Record<CarapaceLandmark, string>> = {
  'carapace-front': 'front of the carapace, midline',
  'carapace-rear': 'rear of the carapace, midline',
  'carapace-left': 'widest point of the carapace, left',
  'carapace-right': 'widest point of the carapace, right',
};

/**
 * Definitions after the World Spider Trait project (Pekar et al. 2021, Database baab064): carapace along the midline without
 * chelicerae, greatest width; legs without coxa and trochanter. Finer points from memory.
 */
const CARAPACE_DEFINITIONS: Readonly<Record<CarapaceLandmark, string>> = {
  'carapace-front': 'The foremost edge of the carapace on its midline. The chelicerae in front of it do not count.',
  'carapace-rear': 'The hind margin of the carapace on its midline, at the notch above the waist.',
  'carapace-left': "The animal's left edge where the carapace is widest, at a right angle to the midline; mostly beside legs II and III.",
  'carapace-right': "The animal's right edge where the carapace is widest, straight across from the left one.",
};

const JOINT_DEFINITIONS: Readonly<Record<LegJoint, string>> = {
  'trochanter-femur': 'Where the first long article begins, past the two short ones (coxa and trochanter) that are not counted.',
  'femur-patella': 'The knee: end of the femur, the first long article.',
  'patella-tibia': 'End of the patella, the short article after the knee.',
  'tibia-metatarsus': 'End of the tibia, the second long article.',
  'metatarsus-tarsus': 'End of the metatarsus, where the last article begins.',
  'tarsus-tip': 'The tip of the leg; claws and tufts of hair do not count.',
};

const DISTANCE_ENDS: Readonly<Record<FreeDistance, readonly [string, string]>> = {
  'receptacle-width': ['receptacles, left edge', 'receptacles, right edge'],
  'receptacle-height': ['receptacles, base at the furrow', 'receptacles, highest tip'],
  'book-lungs': ['front book lungs, middle of the left one', 'front book lungs, middle of the right one'],
  furrow: ['epigastric furrow, left end', 'epigastric furrow, right end'],
  own: ['your own distance, one end', 'your own distance, other end'],
};

/** No standard defines these distances: what each means is said where it is placed, so that two readers mean the same. */
const DISTANCE_DEFINITIONS: Readonly<Record<FreeDistance, string>> = {
  'receptacle-width': 'Greatest width of the receptacles, both lobes together, from their outer edge to the other.',
  'receptacle-height': 'From the furrow, where the receptacles are hinged, to their highest tip.',
  'book-lungs': 'From the middle of one front book lung to the middle of the other.',
  furrow: 'The fold between the front book lungs, from end to end.',
  own: 'Any two points; give it a name below.',
};

/** "front of the carapace, midline", "leg I left, femur to patella". */
export function landmarkName(name: LandmarkName): string {
  if (isCarapace(name)) return CARAPACE_NAMES[name];
  if (isFreeLandmark(name)) return endName(name);
  const leg = LEG_IDS.find((candidate) => name.startsWith(`leg-${candidate}-`));
  return leg === undefined ? name : `${LEG_LABELS[leg]}, ${JOINT_LABELS[jointOf(name)]}`;
}

/** The name inside its group, where the group stands above it. */
export function landmarkShortName(name: LandmarkName): string {
  if (isFreeLandmark(name)) return endName(name).replace(/^.*, /, '');
  return isCarapace(name) ? CARAPACE_NAMES[name].replace(' of the carapace', '') : JOINT_LABELS[jointOf(name)];
}

export function landmarkDefinition(name: LandmarkName): string {
  if (isFreeLandmark(name)) return DISTANCE_DEFINITIONS[distanceOf(name)];
  return isCarapace(name) ? CARAPACE_DEFINITIONS[name] : JOINT_DEFINITIONS[jointOf(name)];
}

/** @param own what the keeper calls the distance of their own. */
export function groupName(group: 'carapace' | LegId | FreeDistance, own: string | null = null): string {
  if (group === 'carapace') return 'Carapace';
  const leg = LEG_IDS.find((one) => one === group);
  if (leg) return capitalized(LEG_LABELS[leg]);
  return distanceName(FREE_DISTANCES.find((one) => one === group) ?? 'own', own);
}

function endName(name: FreeLandmark): string {
  const [from, to] = DISTANCE_ENDS[distanceOf(name)];
  return name.endsWith('-from') ? from : to;
}

function distanceOf(name: FreeLandmark): FreeDistance {
  return FREE_DISTANCES.find((distance) => name.startsWith(`free-${distance}-`)) ?? 'own';
}

function isCarapace(name: LandmarkName): name is CarapaceLandmark {
  return CARAPACE_LANDMARKS.some((landmark) => landmark === name);
}

function jointOf(name: LandmarkName): LegJoint {
  return LEG_JOINTS.find((joint) => name.endsWith(joint)) ?? 'tarsus-tip';
}

const PAIR_NAMES: Readonly<Record<LegPair, string>> = { 1: 'I', 2: 'II', 3: 'III', 4: 'IV' };

/** What looks like a point with another point's name, and where to look. */
export function doubtInWords(doubt: PlausibilityWarning): string {
  switch (doubt.code) {
    case 'carapace-sides-crossed':
      return 'Left and right of the carapace lie on the wrong sides of the line from its rear to its front. Left is the animal’s own left: on a photo with the head down it is on your right. Or front and rear are exchanged, or the photo itself is mirrored, as some front cameras save it.';
    case 'legs-on-other-side':
      return `${capitalized(listed(doubt.legs.map((leg) => LEG_LABELS[leg])))} ${doubt.legs.length === 1 ? 'begins' : 'begin'} on the other side of the carapace. Left and right may be exchanged, or front and rear.`;
    case 'carapace-proportion':
      return `This carapace would be ${doubt.lengthToWidth.toFixed(2)} times as long as wide; tarantulas have about 1.0 to 1.2. One of its four points may lie wrong.`;
    case 'sides-differ': {
      const what =
        doubt.segment === null ? `Leg ${PAIR_NAMES[doubt.pair]}` : `The ${SEGMENT_LABELS[doubt.segment]} of leg ${PAIR_NAMES[doubt.pair]}`;
      return `${what} measures ${doubt.leftMm.toFixed(1)} mm left and ${doubt.rightMm.toFixed(1)} mm right. A joint may lie wrong, or a leg has grown again: then mark it as regenerated.`;
    }
    case 'leg-proportion': {
      const what =
        doubt.segment === null ? capitalized(LEG_LABELS[doubt.leg]) : `The ${SEGMENT_LABELS[doubt.segment]} of ${LEG_LABELS[doubt.leg]}`;
      return `${what} measures ${doubt.lengthMm.toFixed(1)} mm beside a carapace of ${doubt.carapaceMm.toFixed(1)} mm; no tarantula is built so. A joint may lie wrong, or have another joint’s name.`;
    }
    case 'span-too-long':
      return `${quantityName(doubt.span)}, ${doubt.spanMm.toFixed(1)} mm, is longer than both its legs and the carapace allow (${doubt.legsAndCarapaceMm.toFixed(1)} mm). A tip or a first joint may lie wrong.`;
    case 'span-too-short':
      return `${quantityName(doubt.span)}, ${doubt.spanMm.toFixed(1)} mm, is much shorter than both its legs and the carapace (${doubt.legsAndCarapaceMm.toFixed(1)} mm). A tip may lie wrong, or the skin lies folded.`;
  }
}

/** Beside every ± that can be typed. */
export const PLUS_MINUS_MEANS = 'Every ± is an expanded uncertainty, k = 2: in about 95 of 100 cases the true figure lies within it.';

export const SCALE_OBJECT_LABELS: Readonly<Record<RectangleObject | 'two-points', string>> = {
  'two-points': 'A rule, or a length you know',
  'id-1': 'A bank-size card (ISO/IEC 7810 ID-1)',
  a6: 'A6 sheet',
  a5: 'A5 sheet',
  a4: 'A4 sheet',
  own: 'Another rectangle of known size',
};

export const COIN_LABELS: Readonly<Record<CoinName | 'own', string>> = {
  'us-cent': 'US cent',
  'us-nickel': 'US nickel (5 cents)',
  'us-dime': 'US dime (10 cents)',
  'us-quarter': 'US quarter dollar',
  'us-half-dollar': 'US half dollar',
  'us-dollar': 'US dollar coin',
  'euro-1-cent': '1 euro cent',
  'euro-2-cent': '2 euro cents',
  'euro-5-cent': '5 euro cents',
  'euro-10-cent': '10 euro cents',
  'euro-20-cent': '20 euro cents (notched)',
  'euro-50-cent': '50 euro cents',
  'euro-1': '1 euro',
  'euro-2': '2 euros',
  own: 'Another disk of known diameter',
};

export function scaleObjectName(marks: ScaleMarks): string {
  switch (marks.kind) {
    case 'two-points':
      return SCALE_OBJECT_LABELS['two-points'];
    case 'rectangle':
      return SCALE_OBJECT_LABELS[marks.object];
    case 'coin':
      return COIN_LABELS[marks.coin];
    case 'rule-ticks':
      return 'The ticks of a rule';
    case 'points':
      return marks.object === 'scale-card' ? 'The Exuviary scale card' : 'A card with printed markers';
  }
}

export const ABSENT_LABELS: Readonly<Record<AbsentQuantity['reason'], string>> = {
  'not-placed': 'points not placed yet',
  missing: 'part missing',
  'not-visible': 'not visible',
  'no-position': 'point lies outside the plane of the scale',
};

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
      return `The size of this object is known to ${(200 * warning.relativeStandardUncertainty).toFixed(1)} % only (95 %). A measured object, or a card, would be better.`;
    case 'tilt-unknown':
      return `${TILT_UNKNOWN[warning.by]} The uncertainty allows for it; a card or a sheet of paper would remove it.`;
    case 'side-hidden':
      return `The edge from corner ${warning.side + 1} to ${((warning.side + 1) % 4) + 1} was not seen. Lengths rest on the other three and on the focal length, and no wrong corner would show in the shape. The uncertainty allows for the first, not for a wrong edge: compare the outline with the card, or take a photo that shows all of it.`;
    case 'tilt-direction-open':
      return `The outline of a coin leaves two planes possible (tilted ${warning.tiltsDeg[0].toFixed(0)}° and ${warning.tiltsDeg[1].toFixed(0)}°). The uncertainty allows for both: say which edge of the coin was nearer to the camera, or mark a second object.`;
    case 'points-scatter':
      return `The points of the card scatter by ${warning.scatterPx.toFixed(1)} px about a flat plane. The card may be bent, or the lens distort: lay it flat and near the middle of the picture.`;
    case 'ticks-scatter':
      return `The ticks lie ${warning.scatterPx.toFixed(1)} px (${warning.scatterMm.toFixed(2)} mm) off an even row, where ${warning.expectedPx.toFixed(1)} px would be usual. The rule may be bent or worn, its graduation another one than stated, or lines between the ticks were taken for ticks. The uncertainty allows for the scatter, not for a wrong graduation: compare the lines drawn with the rule, lay it flat, or use another scale.`;
    case 'picture-mirrored':
      return 'This picture is mirrored: the printed card shows as in a mirror, and so does the animal. Lengths still come out right, but left and right are exchanged, so every leg of the left side would be recorded as one of the right. Import the unmirrored original (some front cameras save the mirror image), or turn the picture over and import that.';
    case 'focal-length-unknown':
      return 'The picture does not tell its focal length, so tilt, distance and height above the plane cannot be worked out. The uncertainty allows for it.';
    case 'shape-disagrees':
      if (warning.of === 'points')
        return `The printed card does not show its own shape (sides ${Math.abs(warning.aspectErrorPercent).toFixed(1)} %, angle ${Math.abs(warning.angleErrorDeg).toFixed(1)}° off). The picture was probably cropped, so the tilt is told wrong and lengths away from the card with it: import the whole picture. The card may also be bent, or printed larger one way than the other.`;
      if (Math.abs(warning.aspectErrorPercent) > HOPELESS_SHAPE_PERCENT)
        return 'These corners fit no rectangle of this size, from wherever it is seen: the card is seen almost edge-on, a corner is wrong, or the object is another one. No length from this picture can be trusted. Mark the corners anew, or take a photo from straight above.';
      return `These corners do not fit a rectangle of this size (sides ${Math.abs(warning.aspectErrorPercent).toFixed(1)} %, angle ${Math.abs(warning.angleErrorDeg).toFixed(1)}° off). A corner may be wrong, the object another one, or the picture cropped.`;
  }
}
