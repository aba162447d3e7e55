import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { growthRatio } from '../../../src/domain/growth/ratio.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';

describe('growthRatio', () => {
  it.each([
    // Francke OF, Jones SK (1982) J. Arachnol. 10:223-239: carapace lengths of female Centruroides gracilis, by instar.
    [1.6, 2.25, '1.4062'],
    [2.25, 2.96, '1.3156'],
    [2.96, 3.93, '1.3277'],
    [3.93, 5.21, '1.3257'],
    [5.21, 6.65, '1.2764'],
    [6.65, 8.16, '1.2271'],
    // Last molt of large males; the abstract gives about 1.25 over six structures.
    [6.85, 8.34, '1.2175'],
    // Moreira VSS, Del-Claro K (2011) Zoologia 28(5):565-570: Aglaoctenus lagotis.
    [0.62, 0.97, '1.5645'],
    [1.76, 2.0, '1.1364'],
    [5.54, 8.6, '1.5523'],
  ])('from %f mm to %f mm is %s', (earlierMm, laterMm, printed) => {
    const { value } = growthRatio(estimateFrom(laterMm, 0), estimateFrom(earlierMm, 0));
    // The table cuts 1.40625 to 1.4062.
    expect(Math.abs(value - Number(printed))).toBeLessThanOrEqual(0.5001e-4);
  });

  it('adds relative uncertainties in quadrature (JCGM 100:2008, 5.1.6)', () => {
    const ratio = growthRatio(estimateFrom(13, 0.13), estimateFrom(10, 0.2));
    expect(ratio.value).toBeCloseTo(1.3, 12);
    expect(ratio.standardUncertainty).toBeCloseTo(1.3 * Math.sqrt(0.01 ** 2 + 0.02 ** 2), 12);
    expect(ratio.expandedUncertainty).toBeCloseTo(2 * ratio.standardUncertainty, 12);
  });

  it('has the same relative uncertainty whichever way up, and does not depend on the unit', () => {
    const size = fc.tuple(fc.double({ min: 0.5, max: 40, noNaN: true }), fc.double({ min: 0, max: 0.2, noNaN: true }));
    fc.assert(
      fc.property(size, size, fc.double({ min: 0.01, max: 100, noNaN: true }), (a, b, unit) => {
        const up = growthRatio(estimateFrom(...a), estimateFrom(...b));
        const down = growthRatio(estimateFrom(...b), estimateFrom(...a));
        const scaled = growthRatio(estimateFrom(a[0] * unit, a[1] * unit), estimateFrom(b[0] * unit, b[1] * unit));
        expect(up.value * down.value).toBeCloseTo(1, 9);
        expect(up.standardUncertainty / up.value).toBeCloseTo(down.standardUncertainty / down.value, 9);
        expect(scaled.standardUncertainty / up.value).toBeCloseTo(up.standardUncertainty / up.value, 9);
      }),
    );
  });
});
