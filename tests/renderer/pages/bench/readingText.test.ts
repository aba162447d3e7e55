import { expect, test } from 'vitest';
import type { Measurement } from '../../../../src/domain/measuring/quantity.ts';
import { readingAsText } from '../../../../src/renderer/pages/bench/lengths/readingText.ts';

const measurement: Measurement = {
  quantities: [
    {
      name: 'carapace-length',
      unit: 'mm',
      estimate: { value: 25.4, standardUncertainty: 0.127, expandedUncertainty: 0.254 },
      flags: ['height-assumed'],
      budget: [],
      heightCorrection: -0.2,
    },
    {
      name: 'carapace-ratio',
      unit: '1',
      estimate: { value: 1.113, standardUncertainty: 0.005, expandedUncertainty: 0.01 },
      flags: [],
      budget: [],
      heightCorrection: 0,
    },
  ],
  absent: [
    { name: 'leg-L2', reason: 'missing' },
    { name: 'leg-R1', reason: 'not-placed' },
  ],
};

test('a copied reading gives each length in both units with its remarks, and names what is missing but not what was not asked', () => {
  const lines = readingAsText(measurement, { lines: ['A-1, Mira', 'Pass 1, A. Keeper'] }).split('\n');
  expect(lines.slice(0, 2)).toEqual(['A-1, Mira', 'Pass 1, A. Keeper']);
  expect(lines).toContain('Carapace length\t25.40 mm ± 0.25 mm\t1.000 in ± 0.010 in\theight assumed');
  expect(lines).toContain('Carapace length to width\t1.113 ± 0.010');
  expect(lines).toContain('Leg II left\t\t\tpart missing');
  expect(lines.some((line) => line.startsWith('Leg I right'))).toBe(false);
});
