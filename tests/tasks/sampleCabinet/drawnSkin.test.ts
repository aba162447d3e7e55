import sharp from 'sharp';
import { expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import { doubtsAbout } from '../../../src/domain/measuring/plausibility.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { pngOfDrawing } from '../../../src/images/drawing.ts';
import { DRAWING_SIZE, type DrawnSkin, marksOn, placesOf, readingOn } from '../../../src/tasks/sampleCabinet/drawnSkin.ts';
import { withCameraDay } from '../../../src/tasks/sampleCabinet/pictures.ts';
import { drawingOf } from '../../../src/tasks/sampleCabinet/skinDrawing.ts';

const SKIN: DrawnSkin = { carapaceLengthMm: 10, build: 'stout', turnDeg: 9, ink: '#7d6248' };
const CAMERA = { takenAt: null, camera: null, focalLengthMm: null, focalLength35Mm: null, orientation: 1 };

// What is read must be what was drawn: the sizes of the sample are no others than those it names.
it.each([2.7, 6, 10, 16, 23.1])('a drawn carapace of %s mm reads as that, and nothing about it is hard to believe', (carapaceLengthMm) => {
  const places = placesOf({ ...SKIN, carapaceLengthMm });
  const reading = readingOn(places, 'Sample keeper');
  const calibration = unwrap(calibrate(marksOn(places), { ...DRAWING_SIZE, facts: CAMERA }));
  const measurement = measure(reading, calibration);
  const length = measurement.quantities.find(({ name }) => name === 'carapace-length');
  expect(length?.estimate.value).toBeCloseTo(carapaceLengthMm, 6);
  expect(doubtsAbout(reading.landmarks, measurement, 'above')).toEqual([]);
});

it('everything drawn lies within the picture, apart from the scale object', async () => {
  for (const build of ['stout', 'leggy'] as const) {
    for (const turnDeg of [-12, 0, 11]) {
      const { legs, scale, pxPerMm } = placesOf({ ...SKIN, build, turnDeg });
      for (const { xPx, yPx } of Object.values(legs).flat()) {
        expect(xPx).toBeGreaterThan(0);
        expect(xPx).toBeLessThan(scale.at.xPx);
        expect(yPx).toBeGreaterThan(0);
        expect(yPx).toBeLessThan(DRAWING_SIZE.heightPx);
      }
      expect(scale.at.xPx + scale.widthMm * pxPerMm).toBeLessThan(DRAWING_SIZE.widthPx);
    }
  }
  const { width, height } = await sharp(await pngOfDrawing(drawingOf(SKIN))).metadata();
  expect([width, height]).toEqual([DRAWING_SIZE.widthPx, DRAWING_SIZE.heightPx]);
});

it('a picture is moved to another day, at the same hour, with no other byte changed', async () => {
  const taken = { DateTimeOriginal: '2022:02:11 19:42:10' };
  const before = await sharp({ create: { width: 40, height: 30, channels: 3, background: '#8a6f4e' } })
    .withExif({ IFD2: taken })
    .jpeg()
    .toBuffer();
  const after = withCameraDay(before, '2025-07-09');
  expect(after.includes('2025:07:09 19:42:10')).toBe(true);
  expect(withCameraDay(after, '2022-02-11').equals(before)).toBe(true);
});
