import { describe, expect, test } from 'vitest';
import type { CoinScale } from '../../../src/domain/measuring/calibration.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { CarapaceHeight } from '../../../src/domain/measuring/reading.ts';
import { type SimulatedMarks, simulateReading } from '../../../src/domain/measuring/simulation.ts';
import { seededGenerator } from '../../../src/domain/numerics/generator.ts';
import { symmetricInterval } from '../../../src/domain/numerics/monteCarlo.ts';
import { COIN_PHOTOS, coinTruth } from '../../support/coinTruth.ts';
import { photoTruths, pictureOf, rectangleOn, trueClicksOn } from '../../support/photoTruth.ts';
import { pointsOnGrid } from '../../support/pointsOnGrid.ts';
import { calibrated } from '../../support/simulatedCard.ts';
import { quantityOf } from '../../support/trueClicks.ts';

/** Their 95 % intervals then scatter by 0.03 u. */
const DRAWS = 6_000;
const HEIGHT: CarapaceHeight = { kind: 'entered', heightMm: 4, standardUncertaintyMm: 0.5 };

function truthOf(name: string) {
  const truth = photoTruths().find((photo) => photo.name === name);
  if (!truth) throw new Error(`${name} is missing`);
  return truth;
}

/** Landmarks of the carapace and of one leg: the rest only takes time. */
function someClicksOn(photo: ReturnType<typeof truthOf>): Landmarks {
  const all = Object.entries(trueClicksOn(photo).landmarks);
  return Object.fromEntries(all.filter(([name]) => name.startsWith('carapace-') || name.startsWith('leg-L1-')));
}

/** For each quantity: root mean square deviation when drawn over the first order's u, and the middle of the 95 % interval, in u. */
function compared(marks: SimulatedMarks, photo: ReturnType<typeof truthOf>) {
  const picture = pictureOf(photo);
  const reading = { landmarks: someClicksOn(photo), carapaceHeight: HEIGHT, pointingPx: 1.5 };
  const first = measure(reading, calibrated(marks, picture));
  const simulated = simulateReading(reading, marks, picture, DRAWS, seededGenerator(42));
  if (!simulated.ok) throw new Error(simulated.failure.code);
  return (quantity: string) => {
    const { value, standardUncertainty } = quantityOf(first, quantity).estimate;
    const drawn = simulated.value.get(quantity);
    if (!drawn) throw new Error(`${quantity} was not drawn`);
    const [low, high] = symmetricInterval(drawn, 0.95);
    return {
      ratio: Math.hypot(drawn.standardDeviation, drawn.mean - value) / standardUncertainty,
      shift: Math.abs((low + high) / 2 - value) / standardUncertainty,
    };
  };
}

// JCGM 101:2008, 8: the first order is validated where the Monte Carlo method gives the same within the digits that are stated.
describe.each([
  ['a card', 'specimen-a_instar-09_dorsal', (photo: ReturnType<typeof truthOf>): SimulatedMarks => rectangleOn(photo).marks],
  ['many points', 'specimen-c_instar-10_dorsal', (photo: ReturnType<typeof truthOf>): SimulatedMarks => pointsOnGrid(photo)],
])('on %s the first order is what drawing gives', (_, name, marksOn) => {
  const photo = truthOf(name);
  const of = compared(marksOn(photo), photo);

  test.each(['carapace-length', 'carapace-width', 'carapace-ratio'])('for %s, to a twelfth', (quantity) => {
    const { ratio, shift } = of(quantity);
    expect(Math.abs(ratio - 1)).toBeLessThan(1 / 12);
    expect(shift).toBeLessThan(0.25);
  });

  // Every joint off its plane makes a chain longer: a shift, which the statement carries in its uncertainty.
  test('for a leg, whose unknown heights count in second order, to a tenth', () => {
    expect(Math.abs(of('leg-L1').ratio - 1)).toBeLessThan(0.1);
  });
});

test('on a coin far enough from frontal the first order holds within a sixth', () => {
  const [, photo] = COIN_PHOTOS;
  const { rim, marksOn } = coinTruth(photo);
  const marks: CoinScale = marksOn(rim, 0.25, 1.03);
  const { ratio } = compared(marks, truthOf('specimen-c_instar-09_dorsal'))('carapace-length');
  expect(Math.abs(ratio - 1)).toBeLessThan(1 / 6);
});

test('the same seed gives the same draws', () => {
  const photo = truthOf('specimen-a_instar-08_dorsal');
  const reading = { landmarks: trueClicksOn(photo).landmarks, carapaceHeight: HEIGHT, pointingPx: 1.5 };
  const run = (seed: number) => simulateReading(reading, rectangleOn(photo).marks, pictureOf(photo), 5, seededGenerator(seed));
  expect(run(3)).toEqual(run(3));
  expect(run(3)).not.toEqual(run(4));
});

test('a reading that many draws give no scale for is refused, and not told from the rest', () => {
  const photo = truthOf('specimen-a_instar-08_dorsal');
  const { marks } = rectangleOn(photo);
  const reading = { landmarks: someClicksOn(photo), carapaceHeight: HEIGHT, pointingPx: 1.5 };
  const run = (pointingPx: number) => () => simulateReading(reading, { ...marks, pointingPx }, pictureOf(photo), 200, seededGenerator(8));
  // Corners this uncertain cross in many draws.
  expect(run(100)).toThrow(/of 200 gave none/);
  const sound = run(1)();
  expect(sound.ok && [...sound.value.values()].map(({ failed }) => failed)).toContain(0);
});
