import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { type Landmarks, LEG_JOINTS, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { randomSource } from '../../support/random.ts';
import { quantityOf } from '../../support/trueClicks.ts';

const [FOCAL_PX, ABOVE_MM, WIDTH_MM] = [3028.66, 300, 20];
const SEGMENTS_MM = [22, 11, 18, 16, 11];
const see = (xMm: number, yMm: number, zMm: number) => ({
  xPx: 2016 + (FOCAL_PX * xMm) / (ABOVE_MM - zMm),
  yPx: 1512 + (FOCAL_PX * yMm) / (ABOVE_MM - zMm),
});

/** A card of 85.6 x 53.98 mm on the table, seen from straight above. */
function seenFromAbove() {
  const corner = (xMm: number, yMm: number) => see(xMm - 90, yMm - 80, 0.76);
  const card = { kind: 'rectangle', object: 'id-1', widthMm: 85.6, heightMm: 53.98, thicknessMm: 0.76, pointingPx: 0.3 } as const;
  const known = { widthStandardUncertaintyMm: 0.075, heightStandardUncertaintyMm: 0.035 };
  const corners = [corner(0, 0), corner(85.6, 0), corner(85.6, 53.98), corner(0, 53.98)] as const;
  return unwrap(calibrate({ ...card, ...known, corners: [...corners] }, { widthPx: 4032, heightPx: 3024, facts: { focalLength35Mm: 26 } }));
}

describe('a leg of a living animal, which stands on it', () => {
  // Knees 0.2 to 0.6 of its width above a carapace at 0.6 of it: an assumption of ours.
  it('is as uncertain as how high it may stand: every segment within its interval in 93 of 100 poses', () => {
    const calibration = seenFromAbove();
    const random = randomSource(7);
    const within = Array.from({ length: 300 }, () => {
      const carapace = Math.max(0.1, 0.6 + random.normal(0.25));
      const knee = carapace + random.uniform(0.2, 0.6);
      const heights = [0.75 * carapace, knee, knee * 0.9, knee * random.uniform(0.3, 0.5), random.uniform(0, 0.16), 0];
      const direction = random.uniform(0, 2 * Math.PI);
      const landmarks: Landmarks = {};
      const put = (name: keyof Landmarks, xMm: number, yMm: number, height: number) => {
        const at = see(xMm, yMm, height * WIDTH_MM);
        landmarks[name] = { state: 'placed', at: { xPx: at.xPx + random.normal(1.5), yPx: at.yPx + random.normal(1.5) } };
      };
      put('carapace-left', 10, 20, carapace);
      put('carapace-right', 30, 20, carapace);
      let outMm = 9;
      LEG_JOINTS.forEach((joint, index) => {
        const riseMm = ((heights[index] ?? 0) - (heights[index - 1] ?? heights[0] ?? 0)) * WIDTH_MM;
        outMm += index === 0 ? 0 : Math.sqrt(Math.max(0, (SEGMENTS_MM[index - 1] ?? 0) ** 2 - riseMm ** 2));
        put(legLandmark('R1', joint), 20 + outMm * Math.cos(direction), 20 + outMm * Math.sin(direction), heights[index] ?? 0);
      });
      const measured = measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, calibration, { shown: 'animal' });
      return ['femur', 'patella', 'tibia', 'metatarsus', 'tarsus'].map((segment, index) => {
        const { value, expandedUncertainty } = quantityOf(measured, `leg-R1-${segment}`).estimate;
        return Math.abs(value - (SEGMENTS_MM[index] ?? 0)) <= expandedUncertainty;
      });
    });
    for (const index of SEGMENTS_MM.keys())
      expect(within.filter((segments) => segments[index]).length / within.length).toBeGreaterThan(0.93);
  });
});
