import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { boardPoints } from '../../src/domain/finding/markers/boardPoints.ts';
import type { FoundPoints } from '../../src/domain/finding/markers/found.ts';
import { markerCardPoints, PLAIN_MARKER_CARD } from '../../src/domain/finding/markers/markerCard.ts';
import { pointsMarks } from '../../src/domain/finding/markers/pointsMarks.ts';
import { calibrate } from '../../src/domain/measuring/calibrate.ts';
import { scaleCardLayout } from '../../src/domain/scaleCard/layout.ts';
import { openFiducialDetector } from '../../src/images/fiducials.ts';
import { readLight } from '../../src/images/light.ts';
import { drawnCard } from '../support/drawnCard.ts';
import { markerCornersOf, photoTruths, pictureOf, trueClicksOn } from '../support/photoTruth.ts';
import { type Pinhole, type PinholePlacement, pinhole } from '../support/pinhole.ts';
import { measureTrueClicks, quantityOf, trueMm } from '../support/trueClicks.ts';

const detector = openFiducialDetector();
afterAll(() => detector.close());

const SHARP = { xFactor: 1, yFactor: 1, relativeStandardUncertainty: 0.0005 };

describe('a plain card with four markers in a rendered photo', () => {
  const seeing = (async () => {
    const truth = photoTruths().find(({ name }) => name === 'specimen-c_instar-10_dorsal');
    if (!truth) throw new Error('The photo is missing');
    const path = join(import.meta.dirname, '../../resources/sample/photos/saffron-10-dorsal.jpg');
    const read = await readLight({ path, name: 'saffron-10' });
    if (!read.ok) throw new Error(read.failure.code);
    const { upright: markers } = await detector.find(read.value.image);
    const found = markerCardPoints(read.value.colors, markers, PLAIN_MARKER_CARD);
    if (!found) throw new Error('The card was not found');
    return { truth, markers, found };
  })();

  test('is found with all four markers, their outlines off by up to a pixel and more', async () => {
    const { truth, markers, found: seen } = await seeing;
    expect(markers.map(({ markerId }) => markerId).toSorted((one, other) => one - other)).toEqual([2, 8, 9, 11]);
    expect(seen.markers).toBe(4);
    const off = markers.flatMap(({ markerId, corners }) =>
      corners.map(({ xPx, yPx }, index) => {
        const corner = markerCornersOf(truth, markerId)[index];
        return Math.hypot(xPx - (corner?.xPx ?? Number.NaN), yPx - (corner?.yPx ?? Number.NaN));
      }),
    );
    expect(Math.max(...off)).toBeGreaterThan(0.3);
    expect(Math.max(...off)).toBeLessThan(1.6);
  });

  test('has its sixteen corners within 0.1 px of the truth after refining', async () => {
    const { truth, found } = await seeing;
    const corners = [11, 8, 9, 2].flatMap((markerId) => markerCornersOf(truth, markerId));
    expect(found.points).toHaveLength(16);
    for (const { at } of found.points) {
      expect(Math.min(...corners.map(({ xPx, yPx }) => Math.hypot(xPx - at.xPx, yPx - at.yPx)))).toBeLessThan(0.1);
    }
  });

  test('gives the carapace within 0.4 %, tilt within 0.7 degrees, camera height within 1.5 %', async () => {
    const { truth, found } = await seeing;
    const calibration = calibrate(pointsMarks(found, 'markers', SHARP, 0.25), pictureOf(truth));
    if (!calibration.ok) throw new Error(calibration.failure.code);
    const measurement = measureTrueClicks(truth, calibration.value, { heightsMm: trueClicksOn(truth).heightsMm });
    const length = quantityOf(measurement, 'carapace-length');
    const errorMm = length.estimate.value - trueMm(truth, 'carapace_length');
    expect(Math.abs(errorMm) / trueMm(truth, 'carapace_length')).toBeLessThan(0.004);
    expect(Math.abs(errorMm)).toBeLessThan(length.estimate.expandedUncertainty);
    expect(Math.abs((calibration.value.tiltDeg ?? 0) - truth.camera.tilt_deg)).toBeLessThan(0.7);
    expect(Math.abs((calibration.value.station?.heightMm ?? 0) / truth.camera.height_mm - 1)).toBeLessThan(0.015);
  });
});

const LEVEL: PinholePlacement = {
  tiltDeg: 0,
  axisDeg: 40,
  rollDeg: 3,
  distanceMm: 260,
  aim: { xMm: 105, yMm: 74 },
  focalPx: 1500,
  widthPx: 1400,
  heightPx: 1050,
};

const LAYOUT = scaleCardLayout('a5');

/** How far the found corners are from where the camera sees them, px. */
function misplaced(found: FoundPoints, camera: Pinhole): readonly number[] {
  return found.points.map(({ at, xMm, yMm }) => {
    const truth = camera.see(xMm + LAYOUT.frameLeftMm, yMm + LAYOUT.frameTopMm);
    return Math.hypot(at.xPx - truth.xPx, at.yPx - truth.yPx);
  });
}

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

async function found(placement: PinholePlacement, drawing: Parameters<typeof drawnCard>[2] = { grain: 0.006 }) {
  const camera = pinhole(placement);
  const image = drawnCard(LAYOUT, camera, drawing);
  const { upright: markers } = await detector.find(image);
  return { camera, markers, points: boardPoints(image, markers) };
}

describe('the scale card, drawn from its own geometry as a camera would see it', () => {
  test.each([
    ['from straight above', LEVEL],
    ['tilted by 15 degrees', { ...LEVEL, tiltDeg: 15 }],
    ['tilted by 35 degrees', { ...LEVEL, tiltDeg: 35, distanceMm: 300 }],
    ['upside down', { ...LEVEL, rollDeg: 180, tiltDeg: 8 }],
    ['on its side', { ...LEVEL, rollDeg: 91, tiltDeg: 12, distanceMm: 330 }],
    ['small in the picture', { ...LEVEL, distanceMm: 520, tiltDeg: 10 }],
  ])('%s: all 60 corners, root mean square within 0.06 px', async (_, placement) => {
    const { camera, points } = await found(placement);
    expect(points?.points).toHaveLength(60);
    expect(points && rootMeanSquare(misplaced(points, camera))).toBeLessThan(0.06);
    const calibration = points && calibrate(pointsMarks(points, 'scale-card', SHARP), camera.picture);
    if (!calibration?.ok) throw new Error('No calibration');
    expect(Math.abs((calibration.value.tiltDeg ?? 0) - placement.tiltDeg)).toBeLessThan(0.3);
    expect(calibration.value.warnings.filter(({ code }) => code === 'points-scatter')).toEqual([]);
  });

  test('half covered: the corners that are free, none that are not', async () => {
    const covered = [{ leftMm: 75, topMm: 0, widthMm: 135, heightMm: 148 }];
    const { camera, points } = await found({ ...LEVEL, tiltDeg: 10 }, { grain: 0.006, covered });
    // Four columns of corners at 32, 44, 56 and 68 mm.
    expect(points?.points).toHaveLength(24);
    expect(points && Math.max(...misplaced(points, camera))).toBeLessThan(0.2);
  });

  test('all but two markers covered: found by these', async () => {
    const covered = [
      { leftMm: 57, topMm: 0, widthMm: 153, heightMm: 148 },
      { leftMm: 0, topMm: 51, widthMm: 210, heightMm: 97 },
    ];
    const { camera, markers, points } = await found(LEVEL, { grain: 0.004, covered });
    expect(markers.filter(({ markerId }) => markerId >= 12).length).toBeLessThanOrEqual(3);
    expect(points?.markers).toBe(markers.filter(({ markerId }) => markerId >= 12).length);
    expect(points?.points.length).toBeGreaterThanOrEqual(4);
    expect(points && Math.max(...misplaced(points, camera))).toBeLessThan(0.2);
  });

  test('not there: nothing is found', async () => {
    const { markers, points } = await found(LEVEL, { grain: 0.006, covered: [{ leftMm: 0, topMm: 0, widthMm: 210, heightMm: 148 }] });
    expect(markers).toEqual([]);
    expect(points).toBeNull();
  });

  test('is not taken for a plain card, nor a plain card for it', async () => {
    const camera = pinhole(LEVEL);
    const image = drawnCard(LAYOUT, camera, { grain: 0.006 });
    const { upright: markers } = await detector.find(image);
    expect(markerCardPoints([image], markers, PLAIN_MARKER_CARD)).toBeNull();
    const low = markers.slice(0, 4).map((marker, index) => ({ ...marker, markerId: index }));
    expect(boardPoints(image, low)).toBeNull();
  });
});
