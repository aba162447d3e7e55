import { describe, expect, test } from 'vitest';
import { agreementOfPasses, type MeasuredPass } from '../../../src/domain/agreement/passes.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';

function pass(observer: string, photoId: string, sizes: Readonly<Record<string, number>>): MeasuredPass {
  const quantities = Object.entries(sizes).map(([name, value]) => ({ name, unit: 'mm' as const, estimate: estimateFrom(value, 0.1) }));
  return { observer, photoId, quantities };
}

describe('passes over the same photos', () => {
  test('give the error of each observer by kind of size: the root of the sum of squared differences over 2 n (Dahlberg 1940)', () => {
    const { within } = agreementOfPasses([
      pass('A', 'one', { 'carapace-length': 20, 'leg-L1': 60, 'leg-L1-femur': 17 }),
      pass('A', 'one', { 'carapace-length': 20.2, 'leg-L1': 60.5, 'leg-L1-femur': 17.1 }),
      pass('A', 'two', { 'carapace-length': 25 }),
      pass('A', 'two', { 'carapace-length': 24.6 }),
      pass('B', 'one', { 'carapace-length': 20.1 }),
    ]);
    const length = within.find(({ kind }) => kind === 'carapace-length');
    expect(length?.error.technicalError).toBeCloseTo(Math.sqrt((0.2 ** 2 + 0.4 ** 2) / 4), 12);
    expect(length).toMatchObject({ observer: 'A', things: 2 });
    expect(within.map(({ kind }) => kind)).toEqual(['carapace-length', 'leg', 'segment']);
  });

  test('give what one observer reads more than the other, from their means on the same size of the same photo', () => {
    const photos = ['one', 'two', 'three', 'four'];
    const passes = photos.flatMap((photoId, index) => [
      pass('A', photoId, { 'carapace-length': 20 + index + 0.3 }),
      pass('A', photoId, { 'carapace-length': 20 + index + 0.1 }),
      pass('B', photoId, { 'carapace-length': 20 + index + (index % 2 === 0 ? 0.02 : -0.02) }),
    ]);
    const [{ first, second, agreement } = { first: '', second: '', agreement: null }] = agreementOfPasses(passes).between;
    expect([first, second]).toEqual(['A', 'B']);
    expect(agreement?.bias).toBeCloseTo(0.2, 12);
    expect(agreement?.pairs).toBe(4);
    // Bland & Altman 1986: bias -+ 1.96 standard deviations of the differences.
    expect(agreement?.limits.high).toBeCloseTo(0.2 + 1.96 * Math.sqrt((4 * 0.02 ** 2) / 3), 4);
  });

  test('say nothing of a single pass, and nothing of two observers with fewer than three sizes in common', () => {
    expect(agreementOfPasses([pass('A', 'one', { 'carapace-length': 20 })])).toEqual({ within: [], between: [] });
    const two = [pass('A', 'one', { 'carapace-length': 20 }), pass('B', 'one', { 'carapace-length': 21 })];
    expect(agreementOfPasses(two).between).toEqual([]);
  });
});
