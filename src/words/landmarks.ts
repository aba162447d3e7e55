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
import { capitalized, JOINT_LABELS, LEG_LABELS } from './labels.ts';
import { distanceName } from './quantities.ts';

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
  'trochanter-femur': 'Where the first long segment begins, past the two short ones (coxa and trochanter) that are not counted.',
  'femur-patella': 'The knee: end of the femur, the first long segment.',
  'patella-tibia': 'End of the patella, the short segment after the knee.',
  'tibia-metatarsus': 'End of the tibia, the second long segment.',
  'metatarsus-tarsus': 'End of the metatarsus, where the last segment begins.',
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
