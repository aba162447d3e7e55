import { describe, expect, it } from 'vitest';
import {
  CARAPACE_HEIGHT_SHARES,
  type CarapaceOnPlane,
  heightsOf,
  TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM,
  typedStandardUncertaintyMm,
} from '../../../src/domain/measuring/heights.ts';

const ON_PLANE: CarapaceOnPlane = { widthMm: 20, lengthMm: 22, cameraHeightMm: 200, faceHeightMm: 0.76 };
const ASSUMED = { kind: 'assumed' } as const;
const LEG = 'leg-L1-tibia-metatarsus';

describe('heights above the table', () => {
  it('take the carapace at its share of the true width, which the height itself makes look larger', () => {
    const { of } = heightsOf(ASSUMED, ON_PLANE);
    const { heightMm, assumed, sharedStandardUncertaintyMm } = of('carapace-front');
    const trueWidthMm = heightMm / CARAPACE_HEIGHT_SHARES.skin.share;
    // Seen from 200 mm above the card's face a width at that height is enlarged by 200 / (200 - height + face).
    expect((trueWidthMm * 200) / (200 - heightMm + 0.76)).toBeCloseTo(20, 10);
    expect(sharedStandardUncertaintyMm).toBeCloseTo(0.12 * trueWidthMm, 10);
    expect(assumed).toBe(true);
  });

  it('take the carapace of an animal on its legs higher, and less surely', () => {
    const [skin, animal] = [heightsOf(ASSUMED, ON_PLANE), heightsOf(ASSUMED, ON_PLANE, {}, 'animal')].map(({ of }) => of('carapace-left'));
    // Enlarged as a width at that height is, 0.6 of 18.9 mm.
    expect(animal?.heightMm).toBeCloseTo((0.6 * 20 * 200.76) / (200 + 0.6 * 20), 10);
    expect(animal?.heightMm).toBeGreaterThan(1.5 * (skin?.heightMm ?? Number.NaN));
    expect(animal?.sharedStandardUncertaintyMm).toBeGreaterThan(1.9 * (skin?.sharedStandardUncertaintyMm ?? Number.NaN));
    expect(animal?.assumed).toBe(true);
  });

  it('take the carapace as entered, and judge its unevenness by the width at that height', () => {
    const { of } = heightsOf({ kind: 'entered', heightMm: 10.76, standardUncertaintyMm: 0.5 }, ON_PLANE);
    expect(of('carapace-rear').heightMm).toBe(10.76);
    expect(of('carapace-rear').assumed).toBe(false);
    expect(of('carapace-rear').ownStandardUncertaintyMm).toBeCloseTo(0.05 * 19, 10);
    expect(of('carapace-rear').sharedStandardUncertaintyMm).toBe(0.5);
  });

  it('lay the legs on the table, with a doubt that grows with the animal', () => {
    const { of } = heightsOf({ kind: 'entered', heightMm: 0.76, standardUncertaintyMm: 0.5 }, ON_PLANE);
    expect(of(LEG)).toEqual({
      heightMm: 0,
      ownStandardUncertaintyMm: 4,
      sharedStandardUncertaintyMm: 0,
      assumed: true,
      waitsForWidth: false,
    });
  });

  it('guess the width from the length when only that was placed, and the legs without either', () => {
    const flat = { kind: 'entered', heightMm: 0.76, standardUncertaintyMm: 0 } as const;
    const fromLength = heightsOf(flat, { ...ON_PLANE, widthMm: null });
    expect(fromLength.of(LEG).ownStandardUncertaintyMm).toBeCloseTo(0.2 * 0.9 * 22, 10);
    const fromNothing = heightsOf(ASSUMED, { ...ON_PLANE, widthMm: null, lengthMm: null });
    expect(fromNothing.of(LEG).ownStandardUncertaintyMm).toBe(2);
    // A share of a width that nobody knows is no height of zero.
    expect(fromNothing.of('carapace-front').waitsForWidth).toBe(true);
    for (const known of [fromLength, heightsOf(ASSUMED, ON_PLANE)]) expect(known.of('carapace-front').waitsForWidth).toBe(false);
    expect(heightsOf(flat, { ...ON_PLANE, widthMm: null, lengthMm: null }).of('carapace-front').waitsForWidth).toBe(false);
    expect(fromNothing.of(LEG).waitsForWidth).toBe(false);
  });

  it('give way to what the caller knows', () => {
    const { of } = heightsOf(ASSUMED, ON_PLANE, { [LEG]: 4.2, 'carapace-left': 9 });
    expect(of(LEG)).toEqual({
      heightMm: 4.2,
      ownStandardUncertaintyMm: 0,
      sharedStandardUncertaintyMm: 0,
      assumed: false,
      waitsForWidth: false,
    });
    expect(of('carapace-left').heightMm).toBe(9);
    expect(of('carapace-right').heightMm).not.toBe(9);
  });
});

describe('how well a typed height is known', () => {
  const known = (standardUncertaintyMm: number) => ({ heightMm: 5, standardUncertaintyMm });

  it('is as the heights typed before are, where they agree', () => {
    expect(typedStandardUncertaintyMm(ASSUMED, [known(0.1), known(0.1)])).toBe(0.1);
  });

  it('is as by default for the first one, and where those before differ', () => {
    expect(typedStandardUncertaintyMm(ASSUMED, [])).toBe(TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM);
    expect(typedStandardUncertaintyMm(ASSUMED, [known(0.1), known(0.4)])).toBe(TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM);
  });

  it('is as the height of the edge is, where that was the one typed before: a point of it is read no worse', () => {
    const edge = (standardUncertaintyMm: number) => ({ kind: 'entered' as const, ...known(standardUncertaintyMm) });
    expect(typedStandardUncertaintyMm(edge(0.15), [])).toBe(0.15);
    expect(typedStandardUncertaintyMm(edge(0.15), [known(0.15)])).toBe(0.15);
    expect(typedStandardUncertaintyMm(edge(0.15), [known(0.4)])).toBe(TYPED_HEIGHT_STANDARD_UNCERTAINTY_MM);
  });
});
