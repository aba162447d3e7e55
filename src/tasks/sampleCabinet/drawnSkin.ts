import { z } from 'zod';
import type { ScaleMarks } from '../../domain/measuring/calibration.ts';
import { type LandmarkName, type Landmarks, LEG_IDS, LEG_JOINTS, type LegId, legLandmark } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';
import type { ReadingDraft } from '../../domain/measuring/reading.ts';

/** A skin as the sample draws it: everything is a multiple of the carapace length. */
export const DrawnSkin = z.object({
  carapaceLengthMm: z.number().positive().max(40),
  build: z.enum(['stout', 'leggy']),
  turnDeg: z.number().min(-30).max(30),
  ink: z.string().regex(/^#[0-9a-f]{6}$/),
});
export type DrawnSkin = z.infer<typeof DrawnSkin>;

/** Where everything of a drawing lies, in pixels of its picture. */
export interface DrawnPlaces {
  readonly pxPerMm: number;
  readonly center: ImagePoint;
  readonly carapace: { readonly front: ImagePoint; readonly rear: ImagePoint; readonly left: ImagePoint; readonly right: ImagePoint };
  /** Joints of each leg from the body outwards. */
  readonly legs: Readonly<Record<LegId, readonly ImagePoint[]>>;
  /** Left upper corner and size of the object of known size. */
  readonly scale: { readonly at: ImagePoint; readonly widthMm: number; readonly heightMm: number; readonly object: 'id-1' | 'own' };
}

export const DRAWING_SIZE = { widthPx: 1860, heightPx: 900 } as const;

/** The carapace is as long in every drawing, so that each is as fine as the next. */
const CARAPACE_PX = 138;
export const CARAPACE_WIDTH_SHARE = 0.89;
/** In the middle, so that a thumbnail cut square shows the whole skin. */
const CENTER: ImagePoint = { xPx: 930, yPx: 450 };

/** Femur to tarsus in carapace lengths, by pair: about what the species in print have (Hamilton et al. 2016, ZooKeys 560:1). */
const LEG_SHARES = { stout: [2.7, 2.45, 2.3, 2.95], leggy: [3.1, 2.9, 2.5, 3.05] } as const;
/** Of a leg, from femur to tarsus. */
const ARTICLE_SHARES = [0.27, 0.16, 0.22, 0.2, 0.15] as const;
/** By pair: where a leg begins, across and along in carapace lengths, which way it points and how it bends at each joint. */
const LEG_POSES = [
  { across: 0.36, along: -0.27, towardsDeg: 44, bendDeg: -7 },
  { across: 0.42, along: -0.09, towardsDeg: 76, bendDeg: -5 },
  { across: 0.42, along: 0.1, towardsDeg: 104, bendDeg: 5 },
  { across: 0.36, along: 0.26, towardsDeg: 134, bendDeg: 7 },
] as const;

/** A card of the ISO/IEC 7810 ID-1 size where there is room for one, else a square of graph paper. */
const CARD = { widthMm: 53.98, heightMm: 85.6, object: 'id-1' } as const;
const SQUARES_MM = [20, 10, 5] as const;
/** Ink has no height. */
const FLAT = { heightMm: 0, standardUncertaintyMm: 0 } as const;
const SCALE_ROOM = { xPx: 1385, yPx: 25, widthPx: 455, heightPx: 850 } as const;

/** Lays a skin out head up, a little turned, with its scale beside it. */
export function placesOf({ carapaceLengthMm, build, turnDeg }: DrawnSkin): DrawnPlaces {
  const pxPerMm = CARAPACE_PX / carapaceLengthMm;
  const at = (across: number, along: number): ImagePoint => placed(across * CARAPACE_PX, along * CARAPACE_PX, turnDeg);
  const half = CARAPACE_WIDTH_SHARE / 2;
  const legs = Object.fromEntries(
    LEG_IDS.map((leg) => {
      const pair = Number(leg.slice(1)) - 1;
      return [leg, legOf(leg.startsWith('L') ? -1 : 1, pair, LEG_SHARES[build][pair] ?? 0).map(([across, along]) => at(across, along))];
    }),
  ) as Record<LegId, ImagePoint[]>;
  return {
    pxPerMm,
    center: CENTER,
    carapace: { front: at(0, -0.5), rear: at(0, 0.5), left: at(-half, 0.05), right: at(half, 0.05) },
    legs,
    scale: scaleBeside(pxPerMm),
  };
}

function legOf(side: -1 | 1, pair: number, lengthShare: number): [number, number][] {
  const pose = LEG_POSES[pair];
  if (!pose) throw new RangeError(`Expected one of four pairs of legs but received ${pair + 1}`);
  const joints: [number, number][] = [[side * pose.across, pose.along]];
  for (const [index, share] of ARTICLE_SHARES.entries()) {
    const [across, along] = joints[index] ?? [0, 0];
    const angle = radians(pose.towardsDeg + index * pose.bendDeg);
    const length = share * lengthShare;
    joints.push([across + side * Math.sin(angle) * length, along - Math.cos(angle) * length]);
  }
  return joints;
}

function scaleBeside(pxPerMm: number): DrawnPlaces['scale'] {
  const square = (side: number) => ({ widthMm: side, heightMm: side, object: 'own' }) as const;
  const choices = [CARD, ...SQUARES_MM.map(square)];
  const fitting = choices.find((one) => one.widthMm * pxPerMm <= SCALE_ROOM.widthPx && one.heightMm * pxPerMm <= SCALE_ROOM.heightPx);
  const chosen = fitting ?? square(SQUARES_MM[2]);
  const at = {
    xPx: SCALE_ROOM.xPx + (SCALE_ROOM.widthPx - chosen.widthMm * pxPerMm) / 2,
    yPx: SCALE_ROOM.yPx + (SCALE_ROOM.heightPx - chosen.heightMm * pxPerMm) / 2,
  };
  return { at, ...chosen };
}

function placed(xPx: number, yPx: number, turnDeg: number): ImagePoint {
  const [sine, cosine] = [Math.sin(radians(turnDeg)), Math.cos(radians(turnDeg))];
  return { xPx: CENTER.xPx + xPx * cosine - yPx * sine, yPx: CENTER.yPx + xPx * sine + yPx * cosine };
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** The corners of the scale object, as a keeper would mark them. */
export function marksOn({ scale, pxPerMm }: DrawnPlaces): ScaleMarks {
  const { at, widthMm, heightMm, object } = scale;
  const [right, low] = [at.xPx + widthMm * pxPerMm, at.yPx + heightMm * pxPerMm];
  return {
    kind: 'rectangle',
    object,
    corners: [at, { xPx: right, yPx: at.yPx }, { xPx: right, yPx: low }, { xPx: at.xPx, yPx: low }],
    widthMm,
    heightMm,
    widthStandardUncertaintyMm: 0.05,
    heightStandardUncertaintyMm: 0.05,
    thicknessMm: 0,
    pointingPx: 1,
  };
}

/** All points of the drawing, as a keeper would place them; what is drawn lies flat. */
export function readingOn(places: DrawnPlaces, observer: string): ReadingDraft {
  const { front, rear, left, right } = places.carapace;
  const carapace: [LandmarkName, ImagePoint][] = [
    ['carapace-front', front],
    ['carapace-rear', rear],
    ['carapace-left', left],
    ['carapace-right', right],
  ];
  const legs = LEG_IDS.flatMap((leg) =>
    LEG_JOINTS.flatMap((joint, index): [LandmarkName, ImagePoint][] => {
      const point = places.legs[leg][index];
      return point ? [[legLandmark(leg, joint), point]] : [];
    }),
  );
  const landmarks: Landmarks = Object.fromEntries([
    ...carapace.map(([name, at]) => [name, { state: 'placed', at }]),
    ...legs.map(([name, at]) => [name, { state: 'placed', at, height: FLAT }]),
  ]);
  return {
    protocol: 'dorsal-skin',
    observer,
    pass: 1,
    carapaceHeight: { kind: 'entered', ...FLAT },
    pointingPx: 1.5,
    landmarks,
  };
}
