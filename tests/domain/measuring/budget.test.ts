import { describe, expect, it } from 'vitest';
import { budgetInDetail, correlationOf } from '../../../src/domain/measuring/budget.ts';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { edgeDefinitionPx } from '../../../src/domain/measuring/edgeDefinition.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ReadingDraft } from '../../../src/domain/measuring/reading.ts';
import { unwrap } from '../../../src/domain/result.ts';

const at = (xPx: number, yPx: number) => ({ state: 'placed' as const, at: { xPx, yPx } });
const landmarks: Landmarks = {
  'carapace-front': at(1400, 500),
  'carapace-rear': at(1420, 720),
  'carapace-left': at(1310, 610),
  'carapace-right': at(1510, 600),
  'leg-L1-trochanter-femur': at(1330, 540),
  'leg-L1-femur-patella': at(1200, 420),
};
const reading: Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'> = {
  landmarks,
  carapaceHeight: { kind: 'assumed' },
  pointingPx: 1.5,
};

/** A card seen at a slant, not quite marked exactly. */
function calibrated(pointingPx: number, focalLength35Mm: number | null = 26) {
  return unwrap(
    calibrate(
      {
        kind: 'rectangle',
        object: 'id-1',
        corners: [
          { xPx: 400, yPx: 320 },
          { xPx: 1180, yPx: 300 },
          { xPx: 1260, yPx: 820 },
          { xPx: 330, yPx: 850 },
        ],
        widthMm: 85.6,
        heightMm: 53.98,
        widthStandardUncertaintyMm: 0.075,
        heightStandardUncertaintyMm: 0.035,
        thicknessMm: 0.76,
        pointingPx,
      },
      { widthPx: 2016, heightPx: 1512, facts: { focalLength35Mm } },
    ),
  );
}

describe('a budget taken apart', () => {
  it('is the budget that stands beside the length, source by source', () => {
    for (const calibration of [calibrated(1.5), calibrated(1.5, null)]) {
      for (const { name, budget, estimate } of measure(reading, calibration).quantities) {
        const lines = budgetInDetail(name, reading, calibration);
        for (const { source, standardUncertainty } of budget) {
          const sum = Math.hypot(...lines.filter((line) => line.source === source).map(({ contribution }) => contribution));
          expect(Math.abs(sum - standardUncertainty), `${name} ${source}`).toBeLessThan(1e-9 * estimate.standardUncertainty);
        }
        expect(lines.reduce((total, { share }) => total + share, 0)).toBeCloseTo(1, 12);
      }
    }
  });

  it('tells the sensitivity of each input: millimeters for a pixel, for a millimeter of height', () => {
    const calibration = calibrated(0.3);
    const lines = budgetInDetail('carapace-length', reading, calibration);
    const front = lines.find(({ source, landmark }) => source === 'pointing' && landmark === 'carapace-front');
    expect(front?.input).toEqual({ standardUncertainty: 1.5, unit: 'px' });
    expect((front?.sensitivity ?? 0) * 1.5).toBeCloseTo(front?.contribution ?? 0, 9);
    // A point moved by a pixel along the length changes it by about the size of a pixel.
    const moved = { ...reading, landmarks: { ...landmarks, 'carapace-front': at(1400, 499) } };
    const lengthOf = (of: typeof reading) =>
      measure(of, calibration).quantities.find(({ name }) => name === 'carapace-length')?.estimate.value ?? 0;
    expect(Math.abs(lengthOf(moved) - lengthOf(reading)) / (front?.sensitivity ?? 1)).toBeCloseTo(1, 1);
  });

  it('gives a point found on an edge its own uncertainty with what the definition leaves open, and a stated height its own', () => {
    const stated: typeof reading = {
      ...reading,
      landmarks: {
        ...landmarks,
        'carapace-front': { ...at(1400, 500), pointingPx: 0.6, height: { heightMm: 7, standardUncertaintyMm: 0.25 } },
      },
    };
    const inputs = budgetInDetail('carapace-length', stated, calibrated(0.3))
      .filter(({ landmark }) => landmark === 'carapace-front')
      .map(({ input }) => input);
    expect(inputs).toContainEqual({ standardUncertainty: Math.hypot(0.6, edgeDefinitionPx(stated.pointingPx)), unit: 'px' });
    expect(inputs).toContainEqual({ standardUncertainty: 0.25, unit: 'mm' });
  });

  it('is empty for a quantity without a value', () => {
    expect(budgetInDetail('carapace-length', { ...reading, landmarks: {} }, calibrated(0.3))).toEqual([]);
  });
});

describe('two lengths on one card', () => {
  it('are correlated through it, and their ratio is better known than that of two lengths that share nothing', () => {
    const calibration = calibrated(4);
    const r = correlationOf(['carapace-length', 'carapace-width'], reading, calibration) ?? 0;
    expect(r).toBeGreaterThan(0.2);
    const of = (wanted: string) => measure(reading, calibration).quantities.find(({ name }) => name === wanted)?.estimate;
    const [length, width, ratio] = [of('carapace-length'), of('carapace-width'), of('carapace-ratio')];
    if (!length || !width || !ratio) throw new Error('Expected all three');
    const [one, other] = [length.standardUncertainty / length.value, width.standardUncertainty / width.value];
    // JCGM 100:2008, equation 13 for a quotient: u2 = u1^2 + u2^2 - 2 r u1 u2, relative.
    const expected = Math.sqrt(one ** 2 + other ** 2 - 2 * r * one * other);
    expect(Math.abs(ratio.standardUncertainty / ratio.value / expected - 1)).toBeLessThan(0.05);
    expect(ratio.standardUncertainty / ratio.value).toBeLessThan(Math.hypot(one, other));
  });

  it('have no correlation while one of them has no value', () => {
    expect(correlationOf(['carapace-length', 'span-L1-R4'], reading, calibrated(1))).toBeNull();
    expect(correlationOf(['carapace-length', 'carapace-length'], reading, calibrated(1))).toBeCloseTo(1, 12);
  });
});
