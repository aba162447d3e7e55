import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pointingFrom, scattersOf } from '../../../src/domain/agreement/pointing.ts';
import type { Pass } from '../../../src/domain/agreement/scatter.ts';
import { slipsIn } from '../../../src/domain/agreement/slips.ts';
import {
  CARAPACE_LANDMARKS,
  DORSAL_SKIN_PROTOCOL,
  type LandmarkName,
  type Landmarks,
  pointOf,
} from '../../../src/domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { randomSource } from '../../support/random.ts';

const APART_PX = 80;

/** A pass over landmarks that lie in a grid, by a hand that scatters. */
function pass(scatterPx: number, seed: number, names: readonly LandmarkName[] = DORSAL_SKIN_PROTOCOL): Pass {
  const random = randomSource(seed);
  const landmarks = names.map((name, index) => {
    const at = { xPx: APART_PX * (index % 8) + random.normal(scatterPx), yPx: APART_PX * Math.floor(index / 8) + random.normal(scatterPx) };
    return [name, { state: 'placed' as const, at }];
  });
  return { observer: 'A', photoId: 'one', landmarks: Object.fromEntries(landmarks) as Landmarks };
}

function withPoint({ landmarks, ...rest }: Pass, name: LandmarkName, at: ImagePoint): Pass {
  return { ...rest, landmarks: { ...landmarks, [name]: { state: 'placed', at } } };
}

function withPlace({ landmarks, ...rest }: Pass, name: LandmarkName, of: LandmarkName): Pass {
  return { ...rest, landmarks: { ...landmarks, [name]: landmarks[of] } };
}

describe('a point named wrongly in one pass', () => {
  const first = pass(1.5, 1);
  const second = withPlace(pass(1.5, 2), 'leg-L1-femur-patella', 'leg-L1-patella-tibia');

  test('is told with the landmark it was taken for', () => {
    expect(slipsIn([first, second])).toEqual([
      {
        name: 'leg-L1-femur-patella',
        takenFor: 'leg-L1-patella-tibia',
        pass: second,
        other: first,
        places: [second, first].map(({ landmarks }) => pointOf(landmarks['leg-L1-femur-patella'])),
      },
    ]);
    expect(slipsIn([second, first])).toMatchObject([{ name: 'leg-L1-femur-patella', pass: second, other: first }]);
  });

  test('does not widen what is known of the hand', () => {
    const honest = pointingFrom(scattersOf([first, pass(1.5, 2)])).get('A')?.overall.pointingPx ?? Number.NaN;
    const slipped = pointingFrom(scattersOf([first, second])).get('A')?.overall;
    expect(slipped?.pointingPx).toBeCloseTo(honest, 1);
    expect(slipped?.degreesOfFreedom).toBe(2 * (DORSAL_SKIN_PROTOCOL.length - 1));
  });

  test('is no slip of two observers, nor on two photos', () => {
    expect(slipsIn([first, { ...second, observer: 'B' }])).toEqual([]);
    expect(slipsIn([first, { ...second, photoId: 'two' }])).toEqual([]);
  });
});

test('a stray click far from everything is told, without a landmark that it was taken for, and widens nothing', () => {
  const first = pass(1.5, 1);
  const second = withPoint(pass(1.5, 2), 'leg-L1-femur-patella', { xPx: -300, yPx: -300 });
  expect(slipsIn([first, second])).toMatchObject([{ name: 'leg-L1-femur-patella', takenFor: null }]);
  expect(pointingFrom(scattersOf([first, second])).get('A')?.overall.pointingPx).toBeLessThan(2);
});

describe('what is no slip', () => {
  test('a hand that scatters widely, however widely', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 60, noNaN: true }), fc.integer({ min: 1, max: 1e6 }), (scatterPx, seed) => {
        expect(slipsIn([pass(scatterPx, seed), pass(scatterPx, seed + 1), pass(scatterPx, seed + 2)])).toEqual([]);
      }),
      { numRuns: 200 },
    );
  });

  test('one hidden joint that is hard to see, beside its place and near no other', () => {
    const first = pass(1.5, 1);
    const own = pointOf(first.landmarks['leg-L1-femur-patella']);
    if (own === null) throw new Error('Expected the joint to be placed');
    const at = { xPx: own.xPx + APART_PX / 2, yPx: own.yPx + APART_PX / 2 };
    expect(slipsIn([first, withPoint(pass(1.5, 2), 'leg-L1-femur-patella', at)])).toEqual([]);
  });

  test('anything on a photo with few landmarks repeated: nothing tells how the hand scatters there', () => {
    const [few, again] = [pass(1.5, 1, CARAPACE_LANDMARKS), pass(1.5, 2, CARAPACE_LANDMARKS)];
    expect(slipsIn([few, withPlace(again, 'carapace-front', 'carapace-rear')])).toEqual([]);
  });
});
