import { describe, expect, it } from 'vitest';
import type { TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import {
  ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM,
  typedFaceHeightStandardUncertaintyMm,
} from '../../../src/domain/measuring/faceHeight.ts';
import { spacePointOf, type View } from '../../../src/domain/measuring/view.ts';
import { contribution } from '../../../src/domain/numerics/propagation.ts';
import { calibrated } from '../../support/simulatedCard.ts';

/** From straight above, 10 px for a millimeter of the rule's face, from 300 mm. */
const picture = { widthPx: 2400, heightPx: 1800, facts: { focalLength35Mm: Math.hypot(36, 24) } };
const rule: TwoPointScale = {
  kind: 'two-points',
  ends: [
    { xPx: 700, yPx: 1200 },
    { xPx: 1700, yPx: 1200 },
  ],
  distanceMm: 100,
  distanceStandardUncertaintyMm: 0,
  pointingPx: 1e-6,
  heightMm: 1,
};

/** A length of about 50 mm on the table, one millimeter below the face. */
function lengthOnTableMm(view: View): number {
  const [one, other] = [spacePointOf(view, { xPx: 950, yPx: 900 }, -1), spacePointOf(view, { xPx: 1450, yPx: 900 }, -1)];
  if (one === null || other === null) throw new TypeError('Expected both ends on the table');
  return Math.hypot(one.xMm - other.xMm, one.yMm - other.yMm);
}

describe('how well the height of a rule over the table is known', () => {
  it('changes lengths on the table as marking by a rule that lies higher does', () => {
    const extra = calibrated({ ...rule, faceHeightStandardUncertaintyMm: 0.5 }, picture).excursions.filter(
      ({ source }) => source === 'scale-object',
    );
    const [excursion] = extra;
    if (excursion === undefined) throw new TypeError('Expected an input for the height');
    // By the higher face the table lies farther below: the same pixels stand for more of it.
    const higher = (300 + 1.5) / 300;
    const lower = (300 + 0.5) / 300;
    expect(contribution(lengthOnTableMm, excursion)).toBeCloseTo((50 * (higher - lower)) / 2, 4);
  });

  it('adds nothing where it is not stated, as in marks from before', () => {
    const before = calibrated(rule, picture).excursions.length;
    expect(calibrated({ ...rule, faceHeightStandardUncertaintyMm: 0 }, picture).excursions).toHaveLength(before);
    expect(calibrated({ ...rule, faceHeightStandardUncertaintyMm: 0.5 }, picture).excursions).toHaveLength(before + 1);
  });

  it('is better once it was typed in, and left alone where the keeper said how well', () => {
    const assumed = ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM;
    expect(typedFaceHeightStandardUncertaintyMm({ heightMm: 0, standardUncertaintyMm: assumed })).toBeLessThan(0.2);
    expect(typedFaceHeightStandardUncertaintyMm({ heightMm: 0, standardUncertaintyMm: 0.4 })).toBe(0.4);
    // Said of a height that had been typed before, the same figure is the keeper's own.
    expect(typedFaceHeightStandardUncertaintyMm({ heightMm: 2, standardUncertaintyMm: assumed })).toBe(assumed);
  });
});
