import fc from 'fast-check';
import { CARAPACE_LANDMARKS, type Landmark } from '../../../src/domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import type { Patch } from '../../../src/renderer/bench/change.ts';
import type { BenchDocument, BenchEntries } from '../../../src/renderer/bench/document.ts';

export const imagePoints: fc.Arbitrary<ImagePoint> = fc.record({
  xPx: fc.integer({ min: 0, max: 3 }),
  yPx: fc.integer({ min: 0, max: 1 }),
});

const landmarks: fc.Arbitrary<Landmark> = fc.oneof(
  fc.record({ state: fc.constantFrom('placed' as const, 'regenerated' as const), at: imagePoints }),
  fc.record({ state: fc.constantFrom('missing' as const, 'not-visible' as const) }),
);

const heights: fc.Arbitrary<BenchEntries['height']> = fc.oneof(
  fc.constant({ kind: 'assumed' as const }),
  fc.record({ kind: fc.constant('entered' as const), heightMm: fc.integer({ min: 0, max: 9 }), standardUncertaintyMm: fc.constant(1) }),
);

/** Few keys and few values, so that changes meet, cancel and come back often. */
export const patches: fc.Arbitrary<Patch<BenchEntries>> = fc
  .record(
    {
      'carapace-front': fc.option(landmarks, { nil: undefined }),
      'carapace-rear': fc.option(landmarks, { nil: undefined }),
      height: fc.option(heights, { nil: undefined }),
    },
    { requiredKeys: [] },
  )
  .map((patch) => patch as Patch<BenchEntries>);

export const documents: fc.Arbitrary<BenchDocument> = fc.record(
  { [CARAPACE_LANDMARKS[0]]: landmarks, [CARAPACE_LANDMARKS[1]]: landmarks, height: heights },
  { requiredKeys: [] },
);
