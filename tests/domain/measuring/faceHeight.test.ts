import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { uprightCard } from '../../support/uprightCard.ts';

const PICTURE = { widthPx: 2400, heightPx: 1800, facts: { focalLength35Mm: 26 } };

function heightInputs(change: Partial<RectangleScale>): number {
  const { excursions, view } = unwrap(calibrate(uprightCard(400, 300, change), PICTURE));
  return Math.max(
    0,
    ...excursions.filter(({ source }) => source === 'scale-object').map(({ above }) => above.station.heightMm - view.station.heightMm),
  );
}

describe('the height of an object’s face', () => {
  it('is that of its kind for a bank card, and only assumed for an object of the keeper’s own whose thickness nobody typed', () => {
    const own = (thicknessMm: number) => heightInputs({ object: 'own', thicknessMm });
    // Both share what the size of the object leaves open of the distance.
    const bySize = heightInputs({ object: 'id-1', thicknessMm: 0.76 });
    expect(own(0) - bySize).toBeGreaterThan(0.05);
    expect(own(4)).toBeLessThan(own(0));
  });
});
