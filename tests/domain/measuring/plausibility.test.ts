import { describe, expect, test } from 'vitest';
import { type LandmarkName, type Landmarks, LEG_JOINTS, legLandmark } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { doubtsAbout } from '../../../src/domain/measuring/plausibility.ts';
import { type PhotoTruth, photoTruths, rectangleOn, trueClicksOn } from '../../support/photoTruth.ts';
import { calibrationOf } from '../../support/trueClicks.ts';

/** The rendered skin, with its regenerating legs marked as such, as a careful keeper would. */
function readingOf(truth: PhotoTruth): Landmarks {
  const { landmarks } = trueClicksOn(truth);
  for (const name of Object.keys(landmarks) as LandmarkName[]) {
    const landmark = landmarks[name];
    const leg = /^leg-(..)-/.exec(name)?.[1];
    const isRegrown = leg !== undefined && truth.legs[leg]?.state === 'regenerating';
    if (isRegrown && landmark && 'at' in landmark) landmarks[name] = { state: 'regenerated', at: landmark.at };
  }
  return landmarks;
}

function doubtsOn(truth: PhotoTruth, landmarks: Landmarks) {
  const calibration = calibrationOf(truth, rectangleOn(truth).marks);
  return doubtsAbout(landmarks, measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, calibration), 'above');
}

const skin = photoTruths().find(({ name }) => name === 'specimen-a_instar-08_dorsal');
if (!skin) throw new Error('Expected the rendered skin of instar 8');
const codes = (landmarks: Landmarks) => doubtsOn(skin, landmarks).map(({ code }) => code);

function exchanged(landmarks: Landmarks, one: LandmarkName, other: LandmarkName): Landmarks {
  const [first, second] = [landmarks[one], landmarks[other]];
  if (!first || !second) throw new Error(`Expected ${one} and ${other} to be placed`);
  return { ...landmarks, [one]: second, [other]: first };
}

describe('what cannot quite be believed', () => {
  test.each(photoTruths().map((truth) => [truth.name, truth] as const))('is nothing on %s with every point in its place', (_, truth) => {
    expect(doubtsOn(truth, readingOf(truth))).toEqual([]);
  });

  test('is a carapace twice as long as wide, whatever its uncertainty leaves open', () => {
    const landmarks = readingOf(skin);
    const [left, right] = [landmarks['carapace-left'], landmarks['carapace-right']];
    if (!left || !right || !('at' in left) || !('at' in right)) throw new Error('Expected both sides of the carapace');
    const middle = { xPx: (left.at.xPx + right.at.xPx) / 2, yPx: (left.at.yPx + right.at.yPx) / 2 };
    expect(codes({ ...landmarks, 'carapace-right': { state: 'placed', at: middle } })).toContain('carapace-proportion');
  });

  test('is a carapace whose left and right are exchanged, as on a photo with the head down', () => {
    expect(codes(exchanged(readingOf(skin), 'carapace-left', 'carapace-right'))).toEqual(['carapace-sides-crossed']);
  });

  test('is everything when front and rear are exchanged', () => {
    const doubts = doubtsOn(skin, exchanged(readingOf(skin), 'carapace-front', 'carapace-rear'));
    expect(doubts.map(({ code }) => code)).toEqual(['carapace-sides-crossed', 'legs-on-other-side']);
    expect(doubts[1]).toMatchObject({ legs: expect.arrayContaining(['L1', 'R4']) });
  });

  test('is nothing of that when the underside was photographed', () => {
    const mirrored = exchanged(readingOf(skin), 'carapace-left', 'carapace-right');
    expect(doubtsAbout(pick(mirrored, 'carapace-'), null, 'below')).toEqual([]);
    expect(doubtsAbout(pick(mirrored, 'carapace-'), null, 'above')).toHaveLength(1);
  });

  test('is one leg that ends where another one does', () => {
    const landmarks = readingOf(skin);
    const elsewhere = landmarks[legLandmark('L1', 'tarsus-tip')];
    if (!elsewhere) throw new Error('Expected the tip of leg I');
    const doubts = doubtsOn(skin, { ...landmarks, [legLandmark('L4', 'tarsus-tip')]: elsewhere });
    expect(doubts).toContainEqual(expect.objectContaining({ code: 'sides-differ', pair: 4, segment: null }));
  });

  test('is a leg far too long for its carapace, although its fellow was not measured', () => {
    const landmarks = readingOf(skin);
    const oneLeg = { ...pick(landmarks, 'carapace-'), ...pick(landmarks, 'leg-L4-') };
    expect(codes(oneLeg)).toEqual([]);
    const knee = landmarks[legLandmark('L4', 'femur-patella')];
    if (!knee || !('at' in knee)) throw new Error('Expected the knee of leg IV');
    const away = { state: 'placed', at: { xPx: knee.at.xPx, yPx: knee.at.yPx + 1500 } } as const;
    const doubts = doubtsOn(skin, { ...oneLeg, [legLandmark('L4', 'patella-tibia')]: away });
    expect(doubts).toContainEqual(expect.objectContaining({ code: 'leg-proportion', leg: 'L4', segment: null }));
  });

  test('is one segment where the whole legs still agree', () => {
    const landmarks = readingOf(skin);
    const knee = landmarks[legLandmark('R1', 'patella-tibia')];
    if (!knee) throw new Error('Expected a joint of leg I');
    const doubts = doubtsOn(skin, { ...landmarks, [legLandmark('R1', 'tibia-metatarsus')]: knee });
    expect(doubts).toContainEqual(expect.objectContaining({ code: 'sides-differ', pair: 1, segment: 'tibia' }));
  });

  test('is a tip that fell on the first joint of the other leg of its span', () => {
    const landmarks = readingOf(skin);
    const other = landmarks[legLandmark('L4', 'tarsus-tip')];
    if (!other || !('at' in other)) throw new Error('Expected the tip of leg IV');
    const near = { state: 'placed', at: { xPx: other.at.xPx + 20, yPx: other.at.yPx } } as const;
    expect(codes({ ...landmarks, [legLandmark('R1', 'tarsus-tip')]: near })).toContain('span-too-short');
  });

  test('is a span far longer than its legs, which end where they begin', () => {
    const landmarks = readingOf(skin);
    const collapsed = Object.fromEntries(
      (['L1', 'R4'] as const).flatMap((leg) => {
        const tip = landmarks[legLandmark(leg, 'tarsus-tip')];
        return tip ? LEG_JOINTS.map((joint) => [legLandmark(leg, joint), tip]) : [];
      }),
    );
    expect(codes({ ...landmarks, ...collapsed })).toContain('span-too-long');
  });

  test('is not a leg that has grown again and is shorter', () => {
    const landmarks = readingOf(skin);
    const halved = { ...landmarks };
    const from = landmarks[legLandmark('L2', 'trochanter-femur')];
    if (!from || !('at' in from)) throw new Error('Expected leg II');
    for (const joint of LEG_JOINTS) {
      const landmark = landmarks[legLandmark('L2', joint)];
      if (!landmark || !('at' in landmark)) throw new Error(`Expected ${joint}`);
      const at = { xPx: (from.at.xPx + landmark.at.xPx) / 2, yPx: (from.at.yPx + landmark.at.yPx) / 2 };
      halved[legLandmark('L2', joint)] = { state: 'placed', at };
    }
    expect(codes(halved)).toEqual(['sides-differ']);
    for (const joint of LEG_JOINTS) {
      const landmark = halved[legLandmark('L2', joint)];
      if (landmark && 'at' in landmark) halved[legLandmark('L2', joint)] = { state: 'regenerated', at: landmark.at };
    }
    expect(codes(halved)).toEqual([]);
  });
});

function pick(landmarks: Landmarks, beginning: string): Landmarks {
  return Object.fromEntries(Object.entries(landmarks).filter(([name]) => name.startsWith(beginning)));
}
