import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { RectangleScale, RuleTicksScale, TwoPointScale } from '../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../src/domain/measuring/camera.ts';
import { orderCorners } from '../../src/domain/measuring/corners.ts';
import { KNOWN_RECTANGLES } from '../../src/domain/measuring/knownRectangles.ts';
import {
  type CarapaceLandmark,
  type LandmarkName,
  type Landmarks,
  LEG_IDS,
  LEG_JOINTS,
  legLandmark,
} from '../../src/domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../src/domain/measuring/points.ts';

const FOLDER = join(import.meta.dirname, '../fixtures/photo-truth');

const ABDOMENS = join(import.meta.dirname, '../fixtures/abdomen-truth');

const Pixel = z.tuple([z.number(), z.number()]);
const Row = z.tuple([z.number(), z.number(), z.number()]);
const Quad = z.tuple([Pixel, Pixel, Pixel, Pixel]);

/** The parts of a rendered photo's truth that measuring is checked against; pixels are those of the upright photo. */
export const PhotoTruth = z.object({
  name: z.string(),
  display_width: z.number(),
  display_height: z.number(),
  camera: z.object({
    focal_35mm_equiv: z.number(),
    height_mm: z.number(),
    tilt_deg: z.number(),
    k1: z.number(),
    k2: z.number(),
    R_world_to_cam: z.tuple([Row, Row, Row]),
  }),
  scale_objects: z.array(
    z.discriminatedUnion('type', [
      z.object({ type: z.literal('id1_card'), thickness_mm: z.number(), corners_top_px: Quad }),
      z.looseObject({
        type: z.literal('fiducial_card'),
        thickness_mm: z.number(),
        side_mm: z.number(),
        marker_mm: z.number(),
        margin_mm: z.number(),
        corners_top_px: Quad,
      }),
      z.object({
        type: z.literal('rule'),
        thickness_mm: z.number(),
        size_mm: z.tuple([z.number(), z.number()]),
        tick_values_mm: z.array(z.number()),
        ticks_at_edge_px: z.array(Pixel),
        ticks_inner_end_px: z.array(Pixel),
        outline_top_px: Quad,
      }),
      z.object({
        type: z.literal('coin'),
        diameter_mm: z.number(),
        thickness_mm: z.number(),
        ellipse_top_edge_px: z.object({ centre: Pixel, semi_major: z.number(), semi_minor: z.number(), angle_deg: z.number() }),
      }),
    ]),
  ),
  landmarks: z.record(z.string(), z.object({ xyz_mm: z.tuple([z.number(), z.number(), z.number()]), px: Pixel })),
  legs: z.record(z.string(), z.object({ state: z.string(), pose: z.string().nullish() })),
  measurements_mm: z.record(z.string(), z.number()),
});
export type PhotoTruth = z.infer<typeof PhotoTruth>;

/** All rendered dorsal photos, by name. */
export function photoTruths(): readonly PhotoTruth[] {
  return readdirSync(FOLDER)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => PhotoTruth.parse(JSON.parse(readFileSync(join(FOLDER, file), 'utf8'))));
}

/** The rendered photos of opened abdomens, by name. */
export function abdomenTruths(): readonly PhotoTruth[] {
  return readdirSync(ABDOMENS)
    .filter((file) => file.endsWith('.json'))
    .sort()
    .map((file) => PhotoTruth.parse(JSON.parse(readFileSync(join(ABDOMENS, file), 'utf8'))));
}

export function pictureOf(truth: PhotoTruth): PictureFacts {
  return { widthPx: truth.display_width, heightPx: truth.display_height, facts: { focalLength35Mm: truth.camera.focal_35mm_equiv } };
}

export function imagePoint([xPx, yPx]: readonly [number, number]): ImagePoint {
  return { xPx, yPx };
}

/** Corners of one marker of the photo's fiducial card, clockwise from its own top left. */
export function markerCornersOf(truth: PhotoTruth, markerId: number): readonly ImagePoint[] {
  const card = truth.scale_objects.find((object) => object.type === 'fiducial_card');
  return Quad.parse(card?.[`marker_${markerId}_px`]).map(imagePoint);
}

const CARAPACE_NAMES: Record<CarapaceLandmark, string> = {
  'carapace-front': 'carapace_anterior_mid',
  'carapace-rear': 'carapace_posterior_mid',
  'carapace-left': 'carapace_left_widest',
  'carapace-right': 'carapace_right_widest',
};

/** The truth's name of each of our landmarks. */
const TRUTH_NAMES: ReadonlyMap<LandmarkName, string> = new Map<LandmarkName, string>([
  ...(Object.entries(CARAPACE_NAMES) as [CarapaceLandmark, string][]),
  ...LEG_IDS.flatMap((leg) =>
    LEG_JOINTS.map((joint): [LandmarkName, string] => [legLandmark(leg, joint), `leg_${leg}_${joint.replace('-', '_')}`]),
  ),
]);

/** Clicks on the true pixels, and the true heights above the table. A leg that is gone is marked missing. */
export function trueClicksOn(truth: PhotoTruth): { landmarks: Landmarks; heightsMm: Partial<Record<LandmarkName, number>> } {
  const landmarks: Landmarks = {};
  const heightsMm: Partial<Record<LandmarkName, number>> = {};
  for (const [name, truthName] of TRUTH_NAMES) {
    const found = truth.landmarks[truthName];
    if (found) {
      landmarks[name] = { state: 'placed', at: imagePoint(found.px) };
      heightsMm[name] = found.xyz_mm[2];
    } else landmarks[name] = { state: 'missing' };
  }
  return { landmarks, heightsMm };
}

/**
 * The first flat object of the photo whose four corners are known: a card, a fiducial board, or the outline of a rule.
 * A coin has no corners.
 */
export function rectangleOn(truth: PhotoTruth): { object: 'card' | 'board' | 'rule'; marks: RectangleScale } {
  for (const object of truth.scale_objects) {
    if (object.type === 'coin') continue;
    const { widthMm, heightMm, widthStandardUncertaintyMm, heightStandardUncertaintyMm } = sizeOf(object);
    const corners = orderCorners(object.type === 'rule' ? mapQuad(object.outline_top_px) : mapQuad(object.corners_top_px), {
      widthMm,
      heightMm,
    });
    if (!corners.ok) throw new Error(`${truth.name}: ${corners.failure.code}`);
    const marks: RectangleScale = {
      kind: 'rectangle',
      object: object.type === 'id1_card' ? 'id-1' : 'own',
      corners: [...corners.value],
      widthMm,
      heightMm,
      widthStandardUncertaintyMm,
      heightStandardUncertaintyMm,
      thicknessMm: object.thickness_mm,
      pointingPx: 1,
    };
    return { object: object.type === 'id1_card' ? 'card' : object.type === 'rule' ? 'rule' : 'board', marks };
  }
  throw new Error(`${truth.name} shows no object with four corners`);
}

export function mapQuad(quad: z.infer<typeof Quad>): [ImagePoint, ImagePoint, ImagePoint, ImagePoint] {
  return [imagePoint(quad[0]), imagePoint(quad[1]), imagePoint(quad[2]), imagePoint(quad[3])];
}

export type ScaleObject = PhotoTruth['scale_objects'][number];
type Sized = Exclude<PhotoTruth['scale_objects'][number], { type: 'coin' }>;

export function sizeOf(
  object: Sized,
): Pick<RectangleScale, 'widthMm' | 'heightMm' | 'widthStandardUncertaintyMm' | 'heightStandardUncertaintyMm'> {
  if (object.type === 'id1_card') return KNOWN_RECTANGLES['id-1'];
  const [widthMm, heightMm] = object.type === 'rule' ? object.size_mm : [object.side_mm, object.side_mm];
  return { widthMm, heightMm, widthStandardUncertaintyMm: 0.05, heightStandardUncertaintyMm: 0.05 };
}

/** The end ticks of the photo's rule as a two-point scale; null when it shows none. */
export function ruleTicksOn(truth: PhotoTruth): TwoPointScale | null {
  const rule = truth.scale_objects.find((object) => object.type === 'rule');
  if (!rule) return null;
  const [first, last] = [rule.ticks_at_edge_px.at(0), rule.ticks_at_edge_px.at(-1)];
  const [from, to] = [rule.tick_values_mm.at(0), rule.tick_values_mm.at(-1)];
  if (!first || !last || from === undefined || to === undefined) throw new Error(`${truth.name}: the rule has no ticks`);
  return {
    kind: 'two-points',
    ends: [imagePoint(first), imagePoint(last)],
    distanceMm: to - from,
    distanceStandardUncertaintyMm: 0.087,
    pointingPx: 1,
    heightMm: rule.thickness_mm,
  } satisfies TwoPointScale;
}

/** All ticks of the photo's rule with their whole length, as they would be read millimeter by millimeter. */
export function tickMarksOn(truth: PhotoTruth): RuleTicksScale {
  const rule = truth.scale_objects.find((object) => object.type === 'rule');
  if (!rule) throw new Error(`${truth.name} shows no rule`);
  const ticks = rule.ticks_at_edge_px.map((outer, index) => {
    const inner = rule.ticks_inner_end_px[index];
    const number = rule.tick_values_mm[index];
    if (!inner || number === undefined) throw new Error(`${truth.name}: a tick of the rule is half written`);
    return { number, from: imagePoint(outer), to: imagePoint(inner) };
  });
  const [first, last] = [ticks.at(0), ticks.at(-1)];
  if (!first || !last) throw new Error(`${truth.name}: the rule has no ticks`);
  return {
    kind: 'rule-ticks',
    ends: [first.from, last.from],
    graduationMm: 1,
    spanStandardUncertaintyMm: 0.06,
    ticks,
    tickPx: 0.3,
    heightMm: rule.thickness_mm,
  };
}
