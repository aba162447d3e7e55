import {
  FREE_DISTANCES,
  type FreeDistance,
  freeLandmarks,
  type LandmarkName,
  LEG_IDS,
  LEG_JOINTS,
  LEG_SEGMENTS,
  type LegId,
  type LegSegment,
  legLandmark,
} from './landmarks.ts';
import type { Quantity } from './quantity.ts';
import type { SpacePoint } from './view.ts';

export type QuantityName =
  | 'carapace-length'
  | 'carapace-width'
  | 'carapace-ratio'
  | `leg-${LegId}`
  | `leg-${LegId}-${LegSegment}`
  | 'span-L1-R4'
  | 'span-R1-L4'
  | `free-${FreeDistance}`;

export interface QuantityDefinition {
  readonly name: QuantityName;
  readonly unit: Quantity['unit'];
  /** Every landmark the quantity needs. */
  readonly landmarks: readonly LandmarkName[];
  /** Takes the landmarks' points in that order; mm, or a number for the unit 1. */
  readonly evaluate: (points: readonly SpacePoint[]) => number;
  /** What the value depends on beside the animal: nothing, an arch of the leg, or how the whole skin was laid out. */
  readonly posture: 'none' | 'arch' | 'layout';
}

/**
 * Quantities of the protocol `dorsal skin`. Carapace length along the midline and greatest width; leg length from femur to
 * tarsus, without coxa and trochanter (World Spider Trait project, Pekar et al. 2021, Database baab064); the diagonal span
 * from tip I to the tip IV of the other side (common practice, no source).
 */
export const DORSAL_SKIN_QUANTITIES: readonly QuantityDefinition[] = [
  { ...between('carapace-length', 'carapace-front', 'carapace-rear'), posture: 'none' },
  { ...between('carapace-width', 'carapace-left', 'carapace-right'), posture: 'none' },
  {
    name: 'carapace-ratio',
    unit: '1',
    landmarks: ['carapace-front', 'carapace-rear', 'carapace-left', 'carapace-right'],
    evaluate: (points) => stretch(points, 0) / stretch(points, 2),
    posture: 'none',
  },
  ...LEG_IDS.flatMap((leg): readonly QuantityDefinition[] => [
    {
      name: `leg-${leg}`,
      unit: 'mm',
      landmarks: LEG_JOINTS.map((joint) => legLandmark(leg, joint)),
      evaluate: chain,
      posture: 'arch',
    },
    ...LEG_SEGMENTS.map((segment, index): QuantityDefinition => {
      const [from, to] = [LEG_JOINTS[index], LEG_JOINTS[index + 1]];
      if (from === undefined || to === undefined) throw new RangeError('Expected one joint more than segments');
      return { ...between(`leg-${leg}-${segment}`, legLandmark(leg, from), legLandmark(leg, to)), posture: 'arch' };
    }),
  ]),
  { ...between('span-L1-R4', legLandmark('L1', 'tarsus-tip'), legLandmark('R4', 'tarsus-tip')), posture: 'layout' },
  { ...between('span-R1-L4', legLandmark('R1', 'tarsus-tip'), legLandmark('L4', 'tarsus-tip')), posture: 'layout' },
];

/** Distances on an opened abdomen. No standard defines them; what each reaches from and to is told where it is placed. */
export const FREE_QUANTITIES: readonly QuantityDefinition[] = FREE_DISTANCES.map((distance) => ({
  ...between(`free-${distance}`, ...freeLandmarks(distance)),
  posture: 'none',
}));

export const ALL_QUANTITIES: readonly QuantityDefinition[] = [...DORSAL_SKIN_QUANTITIES, ...FREE_QUANTITIES];

/** Whether a quantity is measured between any of these landmarks. */
export function dependsOn(name: string, landmarks: ReadonlySet<LandmarkName>): boolean {
  return ALL_QUANTITIES.find((definition) => definition.name === name)?.landmarks.some((landmark) => landmarks.has(landmark)) ?? false;
}

function between(name: QuantityName, from: LandmarkName, to: LandmarkName): Omit<QuantityDefinition, 'posture'> {
  return { name, unit: 'mm', landmarks: [from, to], evaluate: (points) => stretch(points, 0) };
}

/** Distance in space from the point at `index` to the next. */
function stretch(points: readonly SpacePoint[], index: number): number {
  const from = points[index];
  const to = points[index + 1];
  if (!from || !to) throw new RangeError(`Expected a point at ${index} and one after it`);
  const x = to.xMm - from.xMm;
  const y = to.yMm - from.yMm;
  const z = to.zMm - from.zMm;
  return Math.sqrt(x * x + y * y + z * z);
}

function chain(points: readonly SpacePoint[]): number {
  let sum = 0;
  for (let index = 0; index + 1 < points.length; index += 1) sum += stretch(points, index);
  return sum;
}
