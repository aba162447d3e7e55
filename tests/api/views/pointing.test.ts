import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { agreementIn, pointingIn } from '../../../src/api/views/pointing.ts';
import { type Landmarks, LEG_JOINTS, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import type { CarapaceHeight } from '../../../src/domain/measuring/reading.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { cardMarks, readingDraft } from '../../contract/drafts.ts';
import { skinWithPhoto, TestArchive } from '../../support/testArchive.ts';

/** A carapace and one leg beside the card, its joints 12 px apart, all moved by so much. */
function landmarks(byPx: number): Landmarks {
  const leg = LEG_JOINTS.map((joint, index) => [
    legLandmark('L1', joint),
    { state: 'placed', at: { xPx: 40 + 12 * index + byPx, yPx: 150 - byPx } },
  ]);
  const carapace = Object.entries(readingDraft.landmarks).map(([name, landmark]) => [
    name,
    'at' in landmark ? { ...landmark, at: { xPx: landmark.at.xPx - byPx, yPx: landmark.at.yPx + byPx } } : landmark,
  ]);
  return Object.fromEntries([...carapace, ...leg]);
}

describe('what repeated passes tell', () => {
  let test_: TestArchive;
  let photoId: string;
  beforeEach(async () => {
    test_ = await TestArchive.open();
    ({ id: photoId } = skinWithPhoto(test_.archive).photo);
    unwrap(test_.archive.calibrations.put(photoId, 0, cardMarks));
  });
  afterEach(() => test_.remove());

  const read = (pass: number, ...marks: Landmarks[]) => readAt({ kind: 'assumed' }, pass, ...marks);
  const readAt = (carapaceHeight: CarapaceHeight, pass: number, ...marks: Landmarks[]) =>
    unwrap(test_.archive.readings.create(photoId, { ...readingDraft, carapaceHeight, pass, landmarks: Object.assign({}, ...marks) }));

  test('lengths between points that were repeated by an unsteady hand count', () => {
    read(1, landmarks(0));
    read(2, landmarks(4));
    expect(agreementIn(test_.archive).within.map(({ kind, things }) => [kind, things])).toEqual([
      ['carapace-length', 1],
      ['carapace-width', 1],
      ['leg', 1],
      ['segment', 5],
    ]);
  });

  test('a height that was said in the second pass is no error of the hand', () => {
    read(1, landmarks(0));
    readAt({ kind: 'entered', heightMm: 6, standardUncertaintyMm: 0.2 }, 2, landmarks(0));
    expect(agreementIn(test_.archive).within.map(({ error }) => error.technicalError)).toEqual([0, 0, 0, 0]);
  });

  test('lengths from a point named wrongly in one pass do not count, nor does the point; all others do', () => {
    read(1, landmarks(0));
    // Half a pixel beside the joint after it: 11.5 px from its own place would be no slip of a hand that errs by 1.5 px.
    const wrong = legLandmark('L1', 'femur-patella');
    const slipped = { ...landmarks(0.5)[legLandmark('L1', 'metatarsus-tarsus')] } as Landmarks[typeof wrong];
    read(2, landmarks(0.5), { [wrong]: slipped });
    expect(agreementIn(test_.archive).within.map(({ kind, things }) => [kind, things])).toEqual([
      ['carapace-length', 1],
      ['carapace-width', 1],
      ['segment', 3],
    ]);
    const pointing = pointingIn(test_.archive).get(readingDraft.observer);
    expect(pointing?.overall.degreesOfFreedom).toBe(2 * 9);
    // Two clicks that lie 0.5 px apart in each coordinate: 0.5 / sqrt 2.
    expect(pointing?.overall.pointingPx).toBeCloseTo(0.5 / Math.SQRT2, 9);
  });
});
