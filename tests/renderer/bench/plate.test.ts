import { describe, expect, test } from 'vitest';
import { DORSAL_SKIN_PROTOCOL, LEG_IDS, LEG_JOINTS, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import { mirrored, PLATE_MIDDLE, PLATE_REACH, PLATE_SIZE, platePointOf, plateTurnDeg, turned } from '../../../src/renderer/bench/plate.ts';

type SkinPoint = (typeof DORSAL_SKIN_PROTOCOL)[number];

const otherSide = (name: SkinPoint): SkinPoint =>
  (name.startsWith('leg-L')
    ? name.replace('leg-L', 'leg-R')
    : name.startsWith('leg-R')
      ? name.replace('leg-R', 'leg-L')
      : name.replace(/left|right/, (side) => (side === 'left' ? 'right' : 'left'))) as SkinPoint;

describe('the guide drawing', () => {
  test('has a place of its own for every point, inside the drawing', () => {
    const places = DORSAL_SKIN_PROTOCOL.map(platePointOf);
    expect(new Set(places.map(({ x, y }) => `${x} ${y}`)).size).toBe(DORSAL_SKIN_PROTOCOL.length);
    for (const { x, y } of places) {
      expect(x).toBeGreaterThan(0);
      expect(x).toBeLessThan(PLATE_SIZE.width);
      expect(y).toBeGreaterThan(0);
      expect(y).toBeLessThan(PLATE_SIZE.height);
    }
  });

  test("shows the animal's left on the left of the drawing, its right as the mirror image", () => {
    for (const name of DORSAL_SKIN_PROTOCOL) expect(platePointOf(otherSide(name))).toEqual(mirrored(platePointOf(name)));
    expect(platePointOf('carapace-left').x).toBeLessThan(platePointOf('carapace-right').x);
  });

  test('turns as the skin lies in the picture: head right, head down, and not at all before its midline is marked', () => {
    const rear = { xPx: 100, yPx: 100 };
    expect(plateTurnDeg({ xPx: 100, yPx: 40 }, rear)).toBe(0);
    expect(plateTurnDeg({ xPx: 160, yPx: 100 }, rear)).toBe(90);
    expect(Math.abs(plateTurnDeg({ xPx: 100, yPx: 160 }, rear))).toBe(180);
    expect(plateTurnDeg(null, rear)).toBe(0);
    const front = turned(platePointOf('carapace-front'), 90);
    expect(front.x).toBeGreaterThan(turned(platePointOf('carapace-rear'), 90).x);
    expect(front.y).toBeCloseTo(turned(platePointOf('carapace-rear'), 90).y, 9);
    // With the head down the animal's left is on the right.
    expect(turned(platePointOf('carapace-left'), 180).x).toBeGreaterThan(turned(platePointOf('carapace-right'), 180).x);
  });

  test('stays inside its frame however it is turned', () => {
    for (const name of DORSAL_SKIN_PROTOCOL) {
      const { x, y } = platePointOf(name);
      expect(Math.hypot(x - PLATE_MIDDLE.x, y - PLATE_MIDDLE.y)).toBeLessThan(PLATE_REACH);
    }
  });

  test('leads each leg outwards, legs I to IV from front to rear', () => {
    for (const leg of LEG_IDS) {
      const away = LEG_JOINTS.map((joint) => legLandmark(leg, joint)).map((name) =>
        Math.hypot(platePointOf(name).x - 200, platePointOf(name).y - 172),
      );
      expect(away).toEqual(away.toSorted((one, other) => one - other));
    }
    const tips = (['L1', 'L2', 'L3', 'L4'] as const).map((leg) => platePointOf(`leg-${leg}-tarsus-tip`).y);
    expect(tips).toEqual(tips.toSorted((one, other) => one - other));
  });
});
