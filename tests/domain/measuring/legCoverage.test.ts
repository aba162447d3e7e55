import { describe, expect, test } from 'vitest';
import { LEG_IDS, LEG_JOINTS, LEG_SEGMENTS, type LegSegment } from '../../../src/domain/measuring/landmarks.ts';
import { type PhotoTruth, photoTruths, rectangleOn } from '../../support/photoTruth.ts';
import { calibrationOf, measureTrueClicks, trueMm } from '../../support/trueClicks.ts';

/** How large the error of one length is beside its stated uncertainty, with all joints taken to lie on the table. */
interface Covered {
  readonly segment: LegSegment | 'whole leg';
  readonly errorInUncertainties: number;
  readonly errorMm: number;
  readonly flags: readonly string[];
}

function coveredOn(truth: PhotoTruth): Covered[] {
  const { quantities } = measureTrueClicks(truth, calibrationOf(truth, rectangleOn(truth).marks), {});
  return LEG_IDS.flatMap((leg) =>
    (['whole leg', ...LEG_SEGMENTS] as const).flatMap((segment): Covered[] => {
      const found = quantities.find(({ name }) => name === (segment === 'whole leg' ? `leg-${leg}` : `leg-${leg}-${segment}`));
      if (!found) return [];
      const expected = segment === 'whole leg' ? trueMm(truth, `leg_${leg}_chain_femur_to_tip`) : trueSegmentMm(truth, leg, segment);
      const errorMm = found.estimate.value - expected;
      return [{ segment, errorMm, errorInUncertainties: Math.abs(errorMm) / found.estimate.expandedUncertainty, flags: found.flags }];
    }),
  );
}

function trueSegmentMm(truth: PhotoTruth, leg: string, segment: LegSegment): number {
  const index = LEG_SEGMENTS.indexOf(segment);
  const [from, to] = [LEG_JOINTS[index], LEG_JOINTS[index + 1]].map(
    (joint) => truth.landmarks[`leg_${leg}_${joint?.replace('-', '_')}`]?.xyz_mm,
  );
  if (!from || !to) throw new Error(`${truth.name} tells no ${segment} of leg ${leg}`);
  return Math.hypot(to[0] - from[0], to[1] - from[1], to[2] - from[2]);
}

describe('legs of rendered skins, which are arched, measured as if they lay flat', () => {
  const all = photoTruths().flatMap(coveredOn);

  test.each(['whole leg', ...LEG_SEGMENTS] as const)('the stated uncertainty of a %s holds the truth in at least 95 of 100', (segment) => {
    const of = all.filter((covered) => covered.segment === segment);
    expect(of.length).toBeGreaterThan(100);
    expect(of.filter(({ errorInUncertainties }) => errorInUncertainties <= 1).length / of.length).toBeGreaterThanOrEqual(0.95);
  });

  test('come out too short on the whole, and are marked as flat projections', () => {
    expect(all.reduce((sum, { errorMm }) => sum + errorMm, 0)).toBeLessThan(0);
    for (const { flags } of all) expect(flags).toContain('flat-projection');
  });

  test('are not so marked where the height of every joint is known', () => {
    const [truth] = photoTruths();
    if (!truth) throw new Error('Expected a rendered photo');
    const heightsMm = Object.fromEntries(LEG_JOINTS.map((joint) => [`leg-L1-${joint}`, 1]));
    const { quantities } = measureTrueClicks(truth, calibrationOf(truth, rectangleOn(truth).marks), { heightsMm });
    expect(quantities.find(({ name }) => name === 'leg-L1')?.flags).not.toContain('flat-projection');
    expect(quantities.find(({ name }) => name === 'leg-L2')?.flags).toContain('flat-projection');
  });
});
