import { type CarapaceLandmark, LEG_JOINTS, type LegLandmark, legLandmark } from '../../domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../domain/measuring/points.ts';

/** A place on the guide drawing, in units of its own: x right, y down, head up, midline at x = 200. */
export interface PlatePoint {
  readonly x: number;
  readonly y: number;
}

export const PLATE_SIZE = { width: 400, height: 372 } as const;
const MIDLINE_X = PLATE_SIZE.width / 2;
/** What the drawing is turned about. */
export const PLATE_MIDDLE: PlatePoint = { x: MIDLINE_X, y: PLATE_SIZE.height / 2 };
/** Half of the side of a square that holds the drawing however it is turned. */
export const PLATE_REACH = 218;

/** Joints of the left legs from the body outwards; the right ones mirror them. */
const LEFT_LEGS: Readonly<Record<'1' | '2' | '3' | '4', readonly PlatePoint[]>> = {
  '1': [at(177, 148), at(141, 108), at(123, 88), at(104, 58), at(93, 33), at(90, 15)],
  '2': [at(171, 163), at(119, 138), at(96, 124), at(65, 99), at(42, 76), at(31, 61)],
  '3': [at(171, 181), at(126, 193), at(105, 202), at(75, 219), at(49, 239), at(37, 252)],
  '4': [at(177, 198), at(142, 234), at(127, 256), at(105, 295), at(90, 334), at(87, 353)],
};

/** Palps are drawn, not measured. */
export const LEFT_PALP: readonly PlatePoint[] = [at(187, 138), at(171, 110), at(165, 95), at(165, 74), at(170, 60)];

/** Where each landmark stands on the drawing. */
export function platePointOf(name: CarapaceLandmark | LegLandmark): PlatePoint {
  switch (name) {
    case 'carapace-front':
      return at(MIDLINE_X, 139);
    case 'carapace-rear':
      return at(MIDLINE_X, 209);
    case 'carapace-left':
      return at(169, 172);
    case 'carapace-right':
      return at(231, 172);
    default:
      return legPoint(name);
  }
}

function legPoint(name: LegLandmark): PlatePoint {
  for (const number of ['1', '2', '3', '4'] as const) {
    const index = LEG_JOINTS.findIndex((joint) => name === legLandmark(`L${number}`, joint) || name === legLandmark(`R${number}`, joint));
    const point = index < 0 ? undefined : LEFT_LEGS[number][index];
    if (point !== undefined) return name.startsWith('leg-L') ? point : mirrored(point);
  }
  throw new RangeError(`Expected a joint of a leg but received ${name}`);
}

/**
 * By how much the drawing is turned so that it lies as the skin does in the picture, in degrees clockwise: the direction from
 * the rear of the carapace to its front. 0 until both are marked.
 */
export function plateTurnDeg(front: ImagePoint | null, rear: ImagePoint | null): number {
  if (front === null || rear === null) return 0;
  const [right, up] = [front.xPx - rear.xPx, rear.yPx - front.yPx];
  return right === 0 && up === 0 ? 0 : (Math.atan2(right, up) * 180) / Math.PI;
}

/** A place turned clockwise about the middle of the drawing. */
export function turned({ x, y }: PlatePoint, byDeg: number): PlatePoint {
  const [cosine, sine] = [Math.cos((byDeg * Math.PI) / 180), Math.sin((byDeg * Math.PI) / 180)];
  const [right, down] = [x - PLATE_MIDDLE.x, y - PLATE_MIDDLE.y];
  return { x: PLATE_MIDDLE.x + cosine * right - sine * down, y: PLATE_MIDDLE.y + sine * right + cosine * down };
}

export function mirrored({ x, y }: PlatePoint): PlatePoint {
  return { x: 2 * MIDLINE_X - x, y };
}

/**
 * The outline of one segment of a leg from joint to joint: a spindle, `baseWidth` and `tipWidth` wide at its ends and a
 * little fuller before the middle, as SVG path data.
 */
export function segmentPath(from: PlatePoint, to: PlatePoint, baseWidth: number, tipWidth: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const across = { x: -(to.y - from.y) / length, y: (to.x - from.x) / length };
  const place = (share: number, width: number): string => {
    const x = from.x + share * (to.x - from.x) + (width / 2) * across.x;
    const y = from.y + share * (to.y - from.y) + (width / 2) * across.y;
    return `${x.toFixed(1)} ${y.toFixed(1)}`;
  };
  const belly = 1.25 * Math.max(baseWidth, tipWidth);
  return [
    `M${place(0, baseWidth)}Q${place(0.4, belly)} ${place(1, tipWidth)}`,
    `L${place(1, -tipWidth)}Q${place(0.4, -belly)} ${place(0, -baseWidth)}Z`,
  ].join('');
}

/** Short strokes that stand off a segment on both sides, as hairs do; one path. */
export function hairPath(from: PlatePoint, to: PlatePoint, width: number, count: number): string {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  return Array.from({ length: count }, (_, index) => {
    const share = (index + 0.6) / count;
    const side = index % 2 === 0 ? 1 : -1;
    const root = { x: from.x + share * (to.x - from.x), y: from.y + share * (to.y - from.y) };
    const off = { x: -along.y * side, y: along.x * side };
    const start = { x: root.x + (width / 2) * off.x, y: root.y + (width / 2) * off.y };
    const end = { x: start.x + 4 * off.x + 3 * along.x, y: start.y + 4 * off.y + 3 * along.y };
    return `M${start.x.toFixed(1)} ${start.y.toFixed(1)}L${end.x.toFixed(1)} ${end.y.toFixed(1)}`;
  }).join('');
}

function at(x: number, y: number): PlatePoint {
  return { x, y };
}
