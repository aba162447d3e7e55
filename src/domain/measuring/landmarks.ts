import { z } from 'zod';
import { ImagePoint } from './points.ts';

/** Left and right are the animal's own, as seen from above with the head up. Legs run I (front) to IV (rear). */
export const LEG_IDS = ['L1', 'L2', 'L3', 'L4', 'R1', 'R2', 'R3', 'R4'] as const;
export type LegId = (typeof LEG_IDS)[number];

/** Joints of one leg, from the body outwards. Coxa and trochanter are not part of leg length (World Spider Trait project). */
export const LEG_JOINTS = [
  'trochanter-femur',
  'femur-patella',
  'patella-tibia',
  'tibia-metatarsus',
  'metatarsus-tarsus',
  'tarsus-tip',
] as const;
export type LegJoint = (typeof LEG_JOINTS)[number];

export const LEG_SEGMENTS = ['femur', 'patella', 'tibia', 'metatarsus', 'tarsus'] as const;
export type LegSegment = (typeof LEG_SEGMENTS)[number];

export const CARAPACE_LANDMARKS = ['carapace-front', 'carapace-rear', 'carapace-left', 'carapace-right'] as const;
export type CarapaceLandmark = (typeof CARAPACE_LANDMARKS)[number];

export type LegLandmark = `leg-${LegId}-${LegJoint}`;

/**
 * Distances on an opened abdomen, seen from inside, each between two ends. They stand beside the protocol: any of them may be
 * placed or left out. `own` is whatever the keeper calls it.
 */
export const FREE_DISTANCES = ['receptacle-width', 'receptacle-height', 'book-lungs', 'furrow', 'own'] as const;
export type FreeDistance = (typeof FREE_DISTANCES)[number];
export const DISTANCE_ENDS = ['from', 'to'] as const;
export type FreeLandmark = `free-${FreeDistance}-${(typeof DISTANCE_ENDS)[number]}`;

export type LandmarkName = CarapaceLandmark | LegLandmark | FreeLandmark;

export function legLandmark(leg: LegId, joint: LegJoint): LegLandmark {
  return `leg-${leg}-${joint}`;
}

/**
 * The protocol `dorsal skin`: the order in which the guide asks. Span tips are the tarsus tips of legs I and IV, so they
 * are not asked twice.
 */
export const DORSAL_SKIN_PROTOCOL: readonly (CarapaceLandmark | LegLandmark)[] = [
  ...CARAPACE_LANDMARKS,
  ...LEG_IDS.flatMap((leg) => LEG_JOINTS.map((joint) => legLandmark(leg, joint))),
];

export function freeLandmarks(distance: FreeDistance): readonly [FreeLandmark, FreeLandmark] {
  return [`free-${distance}-from`, `free-${distance}-to`];
}

export const FREE_LANDMARKS: readonly FreeLandmark[] = FREE_DISTANCES.flatMap(freeLandmarks);

/** Whatever a reading can hold. */
export const ALL_LANDMARKS: readonly LandmarkName[] = [...DORSAL_SKIN_PROTOCOL, ...FREE_LANDMARKS];

export const LandmarkNameSchema = z.enum(ALL_LANDMARKS as [LandmarkName, ...LandmarkName[]]);

export function isFreeLandmark(name: LandmarkName): name is FreeLandmark {
  return name.startsWith('free-');
}

export const LandmarkState = z.enum(['placed', 'missing', 'regenerated', 'not-visible']).meta({ id: 'LandmarkState' });
export type LandmarkState = z.infer<typeof LandmarkState>;

/** How high one landmark lies above the table, where the keeper knows better than the default. */
export const PointHeight = z
  .object({
    heightMm: z.number().min(0).max(100),
    standardUncertaintyMm: z.number().min(0).max(50),
  })
  .meta({ id: 'PointHeight' });
export type PointHeight = z.infer<typeof PointHeight>;

const Place = {
  at: ImagePoint,
  pointingPx: z
    .number()
    .positive()
    .max(100)
    .optional()
    .describe('Standard uncertainty per coordinate of the edge this point was found on; left out for a point placed by hand'),
  aimedPx: z
    .number()
    .positive()
    .max(500)
    .optional()
    .describe('Standard uncertainty per coordinate that a photo shown small left to the hand; left out where the stated one is no finer'),
  height: PointHeight.optional().describe('Left out where the default counts'),
  called: z
    .string()
    .trim()
    .min(1)
    .max(80)
    .optional()
    .describe('What the keeper calls the distance that begins here; of `free-own-from` alone'),
};

/** `placed` and `regenerated` carry a point; `missing` (the part is not there) and `not-visible` carry none. */
export const Landmark = z
  .discriminatedUnion('state', [
    z.object({ state: z.literal('placed'), ...Place }),
    z.object({ state: z.literal('regenerated'), ...Place }),
    z.object({ state: z.literal('missing') }),
    z.object({ state: z.literal('not-visible') }),
  ])
  .meta({ id: 'Landmark' });
export type Landmark = z.infer<typeof Landmark>;
export type PlacedLandmark = Extract<Landmark, { readonly state: 'placed' | 'regenerated' }>;

export const Landmarks = z.partialRecord(LandmarkNameSchema, Landmark).meta({ id: 'Landmarks' });
export type Landmarks = z.infer<typeof Landmarks>;

/** Where the landmark lies; null where it has no point. */
export function pointOf(landmark: Landmark | undefined): ImagePoint | null {
  return landmark !== undefined && 'at' in landmark ? landmark.at : null;
}

/** What the keeper calls the distance of their own; null without a name. */
export function nameOfOwnDistance(landmarks: Landmarks): string | null {
  const [from] = freeLandmarks('own');
  const landmark = landmarks[from];
  return landmark !== undefined && 'at' in landmark ? (landmark.called ?? null) : null;
}

/** The heights the keeper stated for single landmarks. */
export function statedHeights(landmarks: Landmarks): Partial<Record<LandmarkName, PointHeight>> {
  const heights: Partial<Record<LandmarkName, PointHeight>> = {};
  for (const name of ALL_LANDMARKS) {
    const landmark = landmarks[name];
    if (landmark !== undefined && 'at' in landmark && landmark.height !== undefined) heights[name] = landmark.height;
  }
  return heights;
}
