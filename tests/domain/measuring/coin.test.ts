import { describe, expect, test } from 'vitest';
import { coinMarks } from '../../../src/domain/finding/coin/coinMarks.ts';
import { rimAbout } from '../../../src/domain/finding/coin/findCoin.ts';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { CoinScale, ScaleMarks } from '../../../src/domain/measuring/calibration.ts';
import { coinSolutions, nearEdgeBySecondObject, sayingWidens } from '../../../src/domain/measuring/coinSide.ts';
import { coinsOfDiameter, KNOWN_COINS } from '../../../src/domain/measuring/knownCoins.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { COIN_PHOTOS, coinLight, coinTruth } from '../../support/coinTruth.ts';
import { photoTruths, pictureOf, rectangleOn, tickMarksOn } from '../../support/photoTruth.ts';
import { calibrationOf, quantityOf } from '../../support/trueClicks.ts';

function carapaceOn(photo: (typeof COIN_PHOTOS)[number], marks: CoinScale, focalLengthKnown = true) {
  const { picture, landmarks, heightsMm, trueMm } = coinTruth(photo);
  const calibration = calibrate(marks, focalLengthKnown ? picture : { ...picture, facts: { focalLength35Mm: null } });
  if (!calibration.ok) throw new Error(calibration.failure.code);
  const measurement = measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, calibration.value, { heightsMm });
  const length = quantityOf(measurement, 'carapace-length');
  const expected = trueMm['carapace_length'] ?? Number.NaN;
  return { calibration: calibration.value, length, errorMm: length.estimate.value - expected, expected };
}

/** The truth of the picture decides, as a keeper would who knows how the phone was held: the solution nearest to the true tilt. */
function trueEdge(photo: (typeof COIN_PHOTOS)[number], marks: CoinScale): number {
  const { picture, camera } = coinTruth(photo);
  const solutions = coinSolutions(marks, picture);
  const [nearest] = (solutions ?? []).toSorted(
    (one, other) => Math.abs(one.tiltDeg - camera.tilt_deg) - Math.abs(other.tiltDeg - camera.tilt_deg),
  );
  if (!nearest) throw new Error('No plane was found');
  return nearest.nearEdgeRad;
}

describe.each(COIN_PHOTOS)('a carapace measured by a coin: $name', (photo) => {
  const { rim, marksOn, camera } = coinTruth(photo);

  test('with the true rim: length within 0.5 %, tilt within 0.1 degrees, camera within 0.5 %', () => {
    const marks = marksOn(rim, 0.25, null);
    const { calibration, errorMm, expected } = carapaceOn(photo, { ...marks, nearEdgeRad: trueEdge(photo, marks) });
    expect(Math.abs(errorMm / expected)).toBeLessThan(0.005);
    expect(Math.abs((calibration.tiltDeg ?? 0) - camera.tilt_deg)).toBeLessThan(0.1);
    const aboveTable = (calibration.station?.heightMm ?? 0) + calibration.faceHeightMm;
    expect(Math.abs(aboveTable / camera.height_mm - 1)).toBeLessThan(0.005);
  });

  test('with the rim found from a rough middle: within 3 % and within its uncertainty', async () => {
    const found = rimAbout(await coinLight(photo), { xPx: rim.centre.xPx - 9, yPx: rim.centre.yPx + 7 });
    if (!found.ok) throw new Error(found.failure.code);
    const marks = marksOn(found.value.ellipse, found.value.standardUncertaintyPx, null);
    const { length, errorMm, expected } = carapaceOn(photo, { ...marks, nearEdgeRad: trueEdge(photo, marks) });
    expect(Math.abs(errorMm / expected)).toBeLessThan(0.03);
    expect(Math.abs(errorMm)).toBeLessThan(length.estimate.expandedUncertainty);
  });

  test('undecided: both planes stand in the uncertainty, which then contains the truth', () => {
    const { calibration, length, errorMm } = carapaceOn(photo, marksOn(rim, 0.25, null));
    expect(calibration.tiltDeg).toBeNull();
    expect(calibration.warnings.map(({ code }) => code)).toContain('tilt-direction-open');
    expect(length.flags).toContain('tilt-unknown');
    expect(length.budget.toSorted((one, other) => other.share - one.share)[0]?.source).toBe('tilt-unknown');
    expect(Math.abs(errorMm)).toBeLessThan(length.estimate.expandedUncertainty);
  });

  test('without a focal length: one scale for all, the tilt in the uncertainty, nothing corrected for height', () => {
    const { calibration, length, errorMm } = carapaceOn(photo, marksOn(rim, 0.25, 0), false);
    expect(calibration.station).toBeNull();
    expect(calibration.warnings.map(({ code }) => code)).toEqual(expect.arrayContaining(['tilt-unknown', 'focal-length-unknown']));
    expect(Math.abs(errorMm)).toBeLessThan(length.estimate.expandedUncertainty);
  });

  test('forgetting the thickness of the coin would cost half a percent and more', () => {
    const marks = marksOn(rim, 0.25, null);
    const decided = { ...marks, nearEdgeRad: trueEdge(photo, marks) };
    const flat = carapaceOn(photo, { ...decided, thicknessMm: 0 });
    expect(Math.abs(flat.errorMm / flat.expected)).toBeGreaterThan(0.005);
  });
});

describe('an object beside the coin', () => {
  const [, photo] = COIN_PHOTOS;
  const seen = photoTruths().find(({ name }) => photo.truth.endsWith(name));
  if (!seen) throw new Error('The photo with both is missing');
  const { rim, marksOn, picture } = coinTruth(photo);
  const marks = marksOn(rim, 0.25, null);
  const card = rectangleOn(seen).marks;
  const sideBy = (scale: ScaleMarks) => nearEdgeBySecondObject(marks, picture, calibrationOf(seen, scale));

  test('decides which plane was real, as the truth has it, where it is a card', () => {
    expect(pictureOf(seen)).toEqual(picture);
    expect(sideBy(card)).toBe(trueEdge(photo, marks));
  });

  test('decides it also where it is a rule whose ticks are long enough to tell its plane', () => {
    const [, , withRule] = COIN_PHOTOS;
    const truth = photoTruths().find(({ name }) => withRule.truth.endsWith(name));
    if (!truth) throw new Error('The photo with coin and rule is missing');
    const seenWith = coinTruth(withRule);
    const coin = seenWith.marksOn(seenWith.rim, 0.25, null);
    expect(nearEdgeBySecondObject(coin, seenWith.picture, calibrationOf(truth, tickMarksOn(truth)))).toBe(trueEdge(withRule, coin));
  });

  test('decides nothing where its own tilt is too uncertain', () => {
    expect(sideBy({ ...card, pointingPx: 60 })).toBeNull();
  });

  test('decides nothing where it tells no tilt at all: two points, a few short ticks', () => {
    const [from, to] = card.corners;
    expect(
      sideBy({ kind: 'two-points', ends: [from, to], distanceMm: 85.6, distanceStandardUncertaintyMm: 0, pointingPx: 0.5, heightMm: 0 }),
    ).toBeNull();
    const at = (xMm: number, yMm: number) => ({ xPx: 900 + 9 * xMm, yPx: 700 + 9 * yMm });
    for (const count of [15, 22, 30]) {
      const calibration = calibrationOf(seen, {
        kind: 'rule-ticks',
        ends: [at(0, 0), at(count - 1, 0)],
        graduationMm: 1,
        spanStandardUncertaintyMm: 0,
        ticks: Array.from({ length: count }, (_, number) => ({ number, from: at(number, 0), to: at(number, 3) })),
        tickPx: 0.3,
        heightMm: 0,
      });
      expect(calibration.excursions.map(({ source }) => source)).toContain('tilt-unknown');
      expect(nearEdgeBySecondObject(marks, picture, calibration)).toBeNull();
    }
  });
});

test('a found rim becomes marks by the name of its coin, undecided which plane was real', () => {
  const [photo] = COIN_PHOTOS;
  const rim = {
    ellipse: coinTruth(photo).rim,
    residualPx: 0.2,
    standardUncertaintyPx: 0.3,
    settled: true,
    visible: 1,
    coverage: 1,
    agreement: 1,
    coherence: 1,
    contrast: 1,
  };
  expect(coinMarks(rim, 'euro-1')).toMatchObject({ rimPx: 0.3, diameterMm: 23.25, thicknessMm: 2.33, nearEdgeRad: null });
  const [round, notched] = [coinMarks(rim, 'euro-1'), coinMarks(rim, 'euro-20-cent')].map((marks) => marks.diameterStandardUncertaintyMm);
  expect(round).toBeCloseTo(0.05 / Math.sqrt(3), 12);
  expect(notched).toBeGreaterThan(2 * (round ?? 0));
});

describe('known coins', () => {
  test.each([
    // United States Mint, Coin Specifications.
    ['us-cent', 19.05, 1.52],
    ['us-dime', 17.91, 1.35],
    ['us-quarter', 24.26, 1.75],
    // Council Regulation (EU) No 729/2014, Annex I.
    ['euro-1', 23.25, 2.33],
    ['euro-2', 25.75, 2.2],
  ] as const)('%s is %f mm wide and %f mm thick', (name, diameterMm, thicknessMm) => {
    expect(KNOWN_COINS[name]).toMatchObject({ diameterMm, thicknessMm });
  });

  test('only the 20 euro cent piece is notched', () => {
    expect(Object.entries(KNOWN_COINS).flatMap(([name, { notched }]) => (notched ? [name] : []))).toEqual(['euro-20-cent']);
  });

  test('are told from a diameter as far as that goes', () => {
    expect(coinsOfDiameter(24.25, 0.05)).toEqual(['euro-50-cent', 'us-quarter']);
    expect(coinsOfDiameter(30.6, 0.1)).toEqual(['us-half-dollar']);
    expect(coinsOfDiameter(50, 0.5)).toEqual([]);
  });
});

test('saying which edge was nearer widens a length where the rim hardly tells its tilt, and narrows it where it does', () => {
  const [, photo] = COIN_PHOTOS;
  const { rim, marksOn } = coinTruth(photo);
  // A fortieth of the radius: as where the rim could not be told from the wall of the coin.
  const [sharp, vague] = [marksOn(rim, 0.25, null), marksOn(rim, rim.semiMajorPx / 40, null)];
  const said = (marks: CoinScale): CoinScale => ({ ...marks, nearEdgeRad: trueEdge(photo, marks) });
  const lengthBy = (marks: CoinScale) => carapaceOn(photo, marks).length.estimate;
  expect(sayingWidens(said(vague), lengthBy)).toBe(true);
  expect(sayingWidens(said(sharp), lengthBy)).toBe(false);
  expect(sayingWidens(vague, lengthBy)).toBe(false);
  expect(sayingWidens(said(vague), () => null)).toBe(false);
});

describe('an outline that no coin has', () => {
  const [photo] = COIN_PHOTOS;
  const { rim, marksOn, picture } = coinTruth(photo);

  test.each([
    ['its axes are exchanged', { ...rim, semiMajorPx: rim.semiMinorPx, semiMinorPx: rim.semiMajorPx }],
    ['its major axis is no number', { ...rim, semiMajorPx: Number.NaN }],
    ['it is as good as seen edge-on', { ...rim, semiMinorPx: rim.semiMajorPx / 400 }],
  ])('is refused: %s', (_, outline) => {
    expect(calibrate(marksOn(outline, 0.25, 0), picture)).toEqual({ ok: false, failure: { code: 'rim-not-elliptic' } });
  });
});
