import { describe, expect, test } from 'vitest';
import { estimateFrom, type Measurement, type Quantity } from '../../../../src/domain/measuring/quantity.ts';
import { heightDoubtInWords } from '../../../../src/renderer/pages/bench/landmarks/heightDoubt.ts';

function carapace(sizes: { lengthMm?: number; widthMm?: number }): Measurement {
  const of = (name: string, sizeMm: number | undefined): Quantity[] =>
    sizeMm === undefined ? [] : [{ name, unit: 'mm', estimate: estimateFrom(sizeMm, 0.05), budget: [], flags: [], heightCorrection: null }];
  return { quantities: [...of('carapace-length', sizes.lengthMm), ...of('carapace-width', sizes.widthMm)], absent: [] };
}

describe('a typed height', () => {
  test('is asked about where its point has slipped: 47 mm for 4.7 mm beside a carapace of 10 mm', () => {
    const measured = carapace({ lengthMm: 10.04, widthMm: 9.1 });
    expect(heightDoubtInWords(47, measured, 'skin')).toBe(
      'Can that be? 47 mm above the table is more than the carapace is wide (9.1 mm as measured now). Check the figure, and that it is in millimeters.',
    );
    expect(heightDoubtInWords(4.7, measured, 'skin')).toBeNull();
  });

  test('is held against whichever size is known, and against none before one is', () => {
    expect(heightDoubtInWords(47, carapace({ lengthMm: 10 }), 'skin')).toContain('carapace is long (10 mm');
    expect(heightDoubtInWords(47, carapace({}), 'skin')).toBeNull();
    expect(heightDoubtInWords(47, null, 'skin')).toBeNull();
  });

  test('may be more of an animal that stands on its legs than of a skin', () => {
    const measured = carapace({ lengthMm: 20, widthMm: 18 });
    expect(heightDoubtInWords(20, measured, 'skin')).not.toBeNull();
    expect(heightDoubtInWords(20, measured, 'animal')).toBeNull();
    expect(heightDoubtInWords(30, measured, 'animal')).not.toBeNull();
  });
});
