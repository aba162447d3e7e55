import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import type { LightPlanes } from '../../src/domain/finding/light.ts';
import type { CoinScale } from '../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../src/domain/measuring/camera.ts';
import type { Ellipse } from '../../src/domain/measuring/ellipse.ts';
import type { KnownHeights } from '../../src/domain/measuring/heights.ts';
import { CARAPACE_LANDMARKS, type CarapaceLandmark, type Landmarks } from '../../src/domain/measuring/landmarks.ts';
import { readLight } from '../../src/images/light.ts';

const ROOT = join(import.meta.dirname, '../..');

/** Rendered photos that show a coin: the truth's file and the same picture in the sample cabinet. */
export const COIN_PHOTOS = [
  { name: 'gold coin on soil, 24 degrees', truth: 'scale-truth/specimen-a_live_2025-04', photo: 'plaster-live' },
  { name: 'silver coin on gray, 22 degrees', truth: 'photo-truth/specimen-c_instar-09_dorsal', photo: 'saffron-09-dorsal' },
  { name: 'two-colored coin on gray, 5 degrees', truth: 'photo-truth/specimen-c_instar-11_dorsal', photo: 'saffron-11-dorsal' },
] as const;
export type CoinPhoto = (typeof COIN_PHOTOS)[number];

const CoinTruth = z.object({
  display_width: z.number(),
  display_height: z.number(),
  camera: z.object({ focal_35mm_equiv: z.number(), height_mm: z.number(), tilt_deg: z.number() }),
  scale_objects: z.array(z.looseObject({ type: z.string() })),
  landmarks: z.record(
    z.string(),
    z.object({ xyz_mm: z.tuple([z.number(), z.number(), z.number()]), px: z.tuple([z.number(), z.number()]) }),
  ),
  measurements_mm: z.record(z.string(), z.number()),
});

const CoinObject = z.object({
  diameter_mm: z.number(),
  thickness_mm: z.number(),
  ellipse_top_edge_px: z.object({
    centre: z.tuple([z.number(), z.number()]),
    semi_major: z.number(),
    semi_minor: z.number(),
    angle_deg: z.number(),
  }),
});

const TRUTH_NAMES: Record<CarapaceLandmark, string> = {
  'carapace-front': 'carapace_anterior_mid',
  'carapace-rear': 'carapace_posterior_mid',
  'carapace-left': 'carapace_left_widest',
  'carapace-right': 'carapace_right_widest',
};

export function coinTruth({ truth }: CoinPhoto) {
  const found = CoinTruth.parse(JSON.parse(readFileSync(join(ROOT, `tests/fixtures/${truth}.json`), 'utf8')));
  const coin = CoinObject.parse(found.scale_objects.find(({ type }) => type === 'coin'));
  const { centre, semi_major, semi_minor, angle_deg } = coin.ellipse_top_edge_px;
  const rim: Ellipse = {
    centre: { xPx: centre[0], yPx: centre[1] },
    semiMajorPx: semi_major,
    semiMinorPx: semi_minor,
    angleRad: (angle_deg * Math.PI) / 180,
  };
  const picture: PictureFacts = {
    widthPx: found.display_width,
    heightPx: found.display_height,
    facts: { focalLength35Mm: found.camera.focal_35mm_equiv },
  };
  const landmarks: Landmarks = {};
  const heightsMm: KnownHeights = {};
  for (const name of CARAPACE_LANDMARKS) {
    const landmark = found.landmarks[TRUTH_NAMES[name]];
    if (!landmark) continue;
    landmarks[name] = { state: 'placed', at: { xPx: landmark.px[0], yPx: landmark.px[1] } };
    heightsMm[name] = Math.round(2 * landmark.xyz_mm[2]) / 2;
  }
  const marksOn = (ellipse: Ellipse, rimPx: number, nearEdgeRad: number | null): CoinScale => ({
    kind: 'coin',
    coin: 'own',
    rim: ellipse,
    rimPx,
    diameterMm: coin.diameter_mm,
    diameterStandardUncertaintyMm: 0.05 / Math.sqrt(3),
    thicknessMm: coin.thickness_mm,
    nearEdgeRad,
  });
  return { rim, picture, landmarks, heightsMm, marksOn, camera: found.camera, trueMm: found.measurements_mm };
}

const decoded = new Map<string, Promise<LightPlanes>>();

/** The photo in linear light, decoded once. */
export function coinLight({ photo }: CoinPhoto): Promise<LightPlanes> {
  const decoding = decoded.get(photo) ?? decode(photo);
  decoded.set(photo, decoding);
  return decoding;
}

async function decode(photo: string): Promise<LightPlanes> {
  const read = await readLight({ path: join(ROOT, `resources/sample/photos/${photo}.jpg`), name: photo });
  if (!read.ok) throw new Error(read.failure.code);
  return read.value.colors;
}
