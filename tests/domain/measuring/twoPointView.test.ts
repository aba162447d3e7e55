import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { viewOfSlopedPlane } from '../../../src/domain/measuring/twoPointView.ts';
import { planePointOf, spacePointOf } from '../../../src/domain/measuring/view.ts';
import { FIXTURE_A, pinhole } from '../../support/pinhole.ts';

const LENS = { focalPx: 3000, centre: { xPx: 2016, yPx: 1512 }, known: true };

describe('the view of a plane of known slope', () => {
  it('is that of a camera tilted by as much: lengths, heights and the camera itself', () => {
    // Whole tenths of degrees: doubles drawn by their bits would nearly all lie next to zero.
    const tenths = (most: number) => fc.integer({ min: 0, max: 10 * most }).map((value) => value / 10);
    fc.assert(
      fc.property(tenths(40), tenths(360), (tiltDeg, axisDeg) => {
        const axis = (axisDeg * Math.PI) / 180;
        const { see } = pinhole({ ...FIXTURE_A, tiltDeg, axisDeg, rollDeg: 0, aim: { xMm: 0, yMm: 0 } });
        // Turning about an axis lifts what lies to one side of it: depth grows along the axis turned by a right angle.
        const slope = Math.tan((tiltDeg * Math.PI) / 180);
        const view = viewOfSlopedPlane({
          ends: [see(-50, 20), see(40, 10)],
          distanceMm: Math.hypot(90, 10),
          lens: LENS,
          slopeX: -slope * Math.sin(axis),
          slopeY: slope * Math.cos(axis),
        });
        expect(view.station.heightMm).toBeCloseTo(300 * Math.cos((tiltDeg * Math.PI) / 180), 6);

        const [from, to] = [planePointOf(view.imageToPlane, see(30, 60)), planePointOf(view.imageToPlane, see(-20, -45))];
        if (!from || !to) throw new Error('Expected both pixels to show points of the plane');
        expect(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm)).toBeCloseTo(Math.hypot(50, 105), 6);

        const raised = spacePointOf(view, see(30, 60, 9), 9);
        expect(raised?.xMm).toBeCloseTo(from.xMm, 6);
        expect(raised?.yMm).toBeCloseTo(from.yMm, 6);
      }),
      { numRuns: 100 },
    );
  });
});
