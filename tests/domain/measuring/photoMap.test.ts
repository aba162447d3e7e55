import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { PointsScale } from '../../../src/domain/measuring/calibration.ts';
import { viewFromAbove } from '../../../src/domain/measuring/fromAbove.ts';
import { radialShiftOf, shifted, unshifted } from '../../../src/domain/measuring/lens/radialShift.ts';
import { ontoCopy, photoPointOf } from '../../../src/domain/measuring/photoMap.ts';
import { transform } from '../../../src/domain/numerics/matrix3.ts';
import { plateOf } from '../../../src/domain/plate/plate.ts';
import { rasterOf } from '../../../src/domain/plate/raster.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { openCvDistortion } from '../../support/opencv.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';

const { see, picture } = pinhole({ ...FIXTURE_A, aim: { xMm: 75, yMm: 50 } });
const K1 = -0.08;
const PLACES = Array.from({ length: 11 * 8 }, (_, index) => ({ xMm: 15 * (index % 11), yMm: 15 * Math.floor(index / 11) }));

/** A grid over most of the picture as OpenCV's projectPoints draws it with this k1, in the frame of this program. */
async function gridThroughLens(): Promise<PointsScale> {
  const distort = await openCvDistortion();
  const { focalPx, widthPx, heightPx } = FIXTURE_A;
  const centre = { xPx: widthPx / 2, yPx: heightPx / 2 };
  const rays = PLACES.map(({ xMm, yMm }) => {
    const { xPx, yPx } = see(xMm, yMm);
    return { x: (xPx - centre.xPx) / focalPx, y: (yPx - centre.yPx) / focalPx };
  });
  const seen = distort(rays, K1, focalPx, centre);
  return {
    kind: 'points',
    object: 'scale-card',
    points: PLACES.flatMap((place, index) => {
      const at = seen[index];
      return at ? [{ at, ...place }] : [];
    }),
    pointPx: 0.05,
    print: { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0 },
    printCheck: null,
    mirrored: false,
    thicknessMm: 0,
  };
}

describe('a photo laid flat whose lens is known', () => {
  it('has every corner of a grid where the millimeters say, in the view from straight above', async () => {
    const marks = await gridThroughLens();
    expect(marks.points).toHaveLength(PLACES.length);
    const calibration = unwrap(calibrate(marks, picture));
    expect(calibration.lens.isCorrected).toBe(true);
    const view = viewFromAbove(calibration, [], 10, 10);
    if (view === null) throw new Error('Expected a view');
    const quarter = ontoCopy(view.toPhoto, 0.25);
    for (const { at, xMm, yMm } of marks.points) {
      const [x, y] = [(xMm - view.topLeft.xMm) * view.pxPerMm, (yMm - view.topLeft.yMm) * view.pxPerMm];
      const shown = photoPointOf(view.toPhoto, x, y);
      expect(Math.hypot((shown?.xPx ?? 0) - at.xPx, (shown?.yPx ?? 0) - at.yPx)).toBeLessThan(0.05);
      const onCopy = photoPointOf(quarter, x, y);
      expect(Math.hypot(4 * (onCopy?.xPx ?? 0) - at.xPx, 4 * (onCopy?.yPx ?? 0) - at.yPx)).toBeLessThan(0.05);
    }
    // Left as it is, the lens would put the outermost corner more than half a millimeter beside its place: the test can fail.
    const { radialShift: _, ...asItIs } = view.toPhoto;
    const [first] = marks.points;
    const off = photoPointOf(asItIs, -view.topLeft.xMm * view.pxPerMm, -view.topLeft.yMm * view.pxPerMm);
    expect(Math.hypot((off?.xPx ?? 0) - (first?.at.xPx ?? 0), (off?.yPx ?? 0) - (first?.at.yPx ?? 0))).toBeGreaterThan(5);
  });

  it('has them there in a cut for the gallery too, head up', async () => {
    const marks = await gridThroughLens();
    const { view } = unwrap(calibrate(marks, picture));
    const seenAt = (xMm: number, yMm: number) => {
      const at = marks.points.find((point) => point.xMm === xMm && point.yMm === yMm)?.at;
      if (!at) throw new Error('Expected a corner of the grid');
      return { state: 'placed', at } as const;
    };
    const plate = plateOf(picture, view, { 'carapace-front': seenAt(15, 45), 'carapace-rear': seenAt(45, 45) });
    if (plate === null) throw new Error('Expected a plate');
    const raster = rasterOf(plate, 1400);
    // The head points to smaller x: turned up, x of the grid runs down the cut, and y to its left.
    const flat = unshifted(seenAt(30, 45).at, plate.radialShift ?? radialShiftOf(picture, 0));
    const [midX, midY, factor] = transform(plate.toPlateMm, flat.xPx, flat.yPx, 1);
    expect(plate.carapaceFromLeftMm).toBeCloseTo(midX / factor, 2);
    expect(plate.carapaceAtMm).toBeCloseTo(midY / factor, 2);
    for (const { at, xMm, yMm } of marks.points) {
      const acrossMm = plate.carapaceFromLeftMm - (yMm - 45);
      const downMm = plate.carapaceAtMm + (xMm - 30);
      const shown = photoPointOf(raster.toPhoto, acrossMm * raster.pxPerMm, downMm * raster.pxPerMm);
      expect(Math.hypot((shown?.xPx ?? 0) - at.xPx, (shown?.yPx ?? 0) - at.yPx)).toBeLessThan(0.2);
    }
  });

  it('shows nothing of what lies so far out that the lens would fold it back into the picture', () => {
    const radialShift = radialShiftOf({ widthPx: 800, heightPx: 600 }, -0.1);
    const toPinhole = [1, 0, 0, 0, 1, 0, 0, 0, 1] as const;
    // It turns back where 1 - 3 x 0.1 (r / 500)^2 vanishes: 912.9 pixels from the middle.
    expect(photoPointOf({ toPinhole, radialShift }, 400 + 912, 300)).toEqual(shifted({ xPx: 1312, yPx: 300 }, radialShift));
    expect(photoPointOf({ toPinhole, radialShift }, 400 + 914, 300)).toBeNull();
    expect(photoPointOf({ toPinhole }, 400 + 914, 300)).toEqual({ xPx: 1314, yPx: 300 });
  });
});
