import { describe, expect, it } from 'vitest';
import type { PointsScale } from '../../../../src/domain/measuring/calibration.ts';
import { shiftedMarks, WITHIN_BOUND } from '../../../../src/domain/measuring/distortion.ts';
import { lensFound } from '../../../../src/domain/measuring/lens/lensFound.ts';
import { radialShiftOf } from '../../../../src/domain/measuring/lens/radialShift.ts';
import { FIXTURE_A, pinhole } from '../../../support/pinhole.ts';
import { type RandomSource, randomSource } from '../../../support/random.ts';

const camera = pinhole({ ...FIXTURE_A, tiltDeg: 8 });
const DRAWS = 60;

/** A printed grid 8 x 6 about the middle of the picture, bulging by as much as paper is taken to. */
function bulgingGrid(pitchMm: number, random: RandomSource): PointsScale {
  const halfMm = Math.hypot(3.5, 2.5) * pitchMm;
  const bulgeMm = random.normal(1e-3 * 2 * halfMm);
  const points = Array.from({ length: 48 }, (_, index) => {
    const [xMm, yMm] = [((index % 8) - 3.5) * pitchMm, (Math.floor(index / 8) - 2.5) * pitchMm];
    const heightMm = bulgeMm * (1 - (xMm * xMm + yMm * yMm) / (halfMm * halfMm));
    const { xPx, yPx } = camera.see(xMm + FIXTURE_A.aim.xMm, yMm + FIXTURE_A.aim.yMm, heightMm);
    return { at: { xPx: xPx + random.normal(0.05), yPx: yPx + random.normal(0.05) }, xMm, yMm };
  });
  const print = { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0 };
  return { kind: 'points', object: 'scale-card', points, pointPx: 0.05, print, printCheck: null, mirrored: false, thicknessMm: 0 };
}

function drawn(pitchMm: number, cornerShare: number) {
  return Array.from({ length: DRAWS }, (_, index) => {
    const marks = shiftedMarks(bulgingGrid(pitchMm, randomSource(index + 1)), radialShiftOf(camera.picture, cornerShare));
    const found = lensFound(marks, camera.picture);
    return { ...found, isWithin: Math.abs(found.shift.cornerShare - cornerShare) <= 2 * found.shift.standardUncertainty };
  });
}

/** Pitches at which the lens is told a little better and a little worse than by the bound, whose own uncertainty is 0.29 %. */
const BETTER_MM = 39;
const WORSE_MM = 31;
/** At which it is told by 0.54 %. */
const NEARLY_TWICE_MM = 19;

function reasonsOf(all: ReturnType<typeof drawn>): ReadonlySet<string> {
  return new Set(all.map(({ reason }) => reason));
}

function shareWithin(all: ReturnType<typeof drawn>): number {
  return all.filter(({ isWithin }) => isWithin).length / all.length;
}

describe('a lens that is told about as well as by the bound', () => {
  it.each([-0.01, -0.007, 0.007])(
    'is taken at a corner shift of %d where it is told a little better, and is within what is said',
    (share) => {
      const all = drawn(BETTER_MM, share);
      const taken = all.filter(({ isCorrected }) => isCorrected);
      // Now and then the paper bulges so much that it is called uneven.
      expect(reasonsOf(all)).not.toContain('not-significant');
      expect(taken.length).toBeGreaterThan(0.8 * DRAWS);
      expect(shareWithin(taken)).toBeGreaterThan(0.9);
    },
  );

  it.each([-0.01, -0.007, 0.007])('is taken at %d, or allowed for with more than the bound, where it is told a little worse', (share) => {
    const all = drawn(WORSE_MM, share);
    expect(reasonsOf(all)).toContain('found');
    expect(reasonsOf(all)).toContain('not-significant');
    // Measured: 0.94 to 0.95; 0.6 to 0.82 when the bound was widened by the disagreement alone.
    expect(shareWithin(all)).toBeGreaterThanOrEqual(0.9);
  });

  it.each([-0.01, 0.007, 0.01])('is allowed for at %d with nearly twice the uncertainty of the bound, too', (share) => {
    expect(shareWithin(drawn(NEARLY_TWICE_MM, share))).toBeGreaterThanOrEqual(0.9);
  });

  it.each([0, 0.004])('at %d is left where it is told a little worse, and within what is said', (share) => {
    const all = drawn(WORSE_MM, share);
    const left = all.filter(({ isCorrected }) => !isCorrected);
    expect(left.length).toBeGreaterThan(0.85 * DRAWS);
    expect(shareWithin(all)).toBeGreaterThan(0.93);
    expect(left.some(({ shift }) => shift.standardUncertainty === WITHIN_BOUND.standardUncertainty)).toBe(true);
  });
});
