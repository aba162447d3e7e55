import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { heightCorrectionOf } from '../../../src/domain/measuring/heightCorrections.ts';
import { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ReadingDraft } from '../../../src/domain/measuring/reading.ts';
import { unwrap } from '../../../src/domain/result.ts';

/** Straight above a card of 100 x 60 mm, 10 px for a millimeter, from 300 mm: a focal length of 3000 px. */
const picture = { widthPx: 2400, heightPx: 1800, facts: { focalLength35Mm: Math.hypot(36, 24) } };
const calibration = unwrap(
  calibrate(
    {
      kind: 'rectangle',
      object: 'own',
      corners: [
        { xPx: 100, yPx: 100 },
        { xPx: 1100, yPx: 100 },
        { xPx: 1100, yPx: 700 },
        { xPx: 100, yPx: 700 },
      ],
      widthMm: 100,
      heightMm: 60,
      widthStandardUncertaintyMm: 0,
      heightStandardUncertaintyMm: 0,
      thicknessMm: 2,
      pointingPx: 0.1,
    },
    picture,
  ),
);

function reading(heights: readonly [number | null, number | null]): Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'> {
  const landmark = (xPx: number, heightMm: number | null) => ({
    state: 'placed' as const,
    at: { xPx, yPx: 900 },
    ...(heightMm === null ? {} : { height: { heightMm, standardUncertaintyMm: 0.5 } }),
  });
  return {
    carapaceHeight: { kind: 'entered', heightMm: 2, standardUncertaintyMm: 0 },
    pointingPx: 0.1,
    landmarks: { 'leg-L1-trochanter-femur': landmark(1200, heights[0]), 'leg-L1-femur-patella': landmark(1800, heights[1]) },
  };
}

describe('the correction for one height', () => {
  it('is that of similar triangles: height above the face over the height of the camera, times the distance from its foot', () => {
    // The foot lies at the middle of the picture; the point 600 px = 60 mm from it, 14 mm above the table and 12 above the face.
    const of = heightCorrectionOf('leg-L1-femur-patella', reading([null, 14]), calibration);
    expect(calibration.station?.heightMm).toBeCloseTo(300, 0);
    expect(of.shiftMm).toBeCloseTo((60 * 12) / 300, 1);
    expect(of).toMatchObject({ heightMm: 14, standardUncertaintyMm: 0.5, assumed: false });
  });

  it('counts from the face of the object: a point as high as that is not moved', () => {
    expect(heightCorrectionOf('leg-L1-femur-patella', reading([null, 2]), calibration).shiftMm).toBeCloseTo(0, 9);
    const onTable = heightCorrectionOf('leg-L1-femur-patella', reading([null, null]), calibration);
    expect(onTable.assumed).toBe(true);
    expect(onTable.shiftMm).toBeCloseTo((60 * 2) / 300, 1);
  });

  it('is what measuring does with the stored height, and its doubt stands in the budget', () => {
    const length = (of: ReturnType<typeof reading>) =>
      measure(of, calibration).quantities.find(({ name }) => name === 'leg-L1-femur')?.estimate.value ?? Number.NaN;
    // The one end moves 2.4 mm inwards and rises by 12: a segment is measured in space.
    expect(length(reading([2, 14]))).toBeCloseTo(Math.hypot(60 - 2.4, 12), 1);
    const known = measure(reading([2, 14]), calibration).quantities.find(({ name }) => name === 'leg-L1-femur');
    expect(known?.flags).not.toContain('height-assumed');
    expect(known?.budget.find(({ source }) => source === 'height')?.standardUncertainty).toBeGreaterThan(0.05);
  });
});

describe('a stored landmark', () => {
  it('is read as it was before heights and edges were kept', () => {
    const old = { 'carapace-front': { state: 'placed', at: { xPx: 1, yPx: 2 } }, 'carapace-rear': { state: 'missing' } };
    expect(Landmarks.parse(old)).toEqual(old);
  });
});
