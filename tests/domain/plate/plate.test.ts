import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { RectangleScale } from '../../../src/domain/measuring/calibration.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import { type Matrix3, transform } from '../../../src/domain/numerics/matrix3.ts';
import { type Plate, plateOf } from '../../../src/domain/plate/plate.ts';
import { type PhotoTruth, photoTruths, pictureOf, rectangleOn, trueClicksOn } from '../../support/photoTruth.ts';

function plateFrom(
  picture: { widthPx: number; heightPx: number; facts: { focalLength35Mm: number | null } },
  marks: RectangleScale,
  landmarks: Landmarks | null,
): Plate {
  const calibrated = calibrate(marks, picture);
  if (!calibrated.ok) throw new Error(calibrated.failure.code);
  const plate = plateOf(picture, calibrated.value.view, landmarks);
  if (!plate) throw new Error('expected a plate');
  return plate;
}

function plateOn(truth: PhotoTruth): Plate {
  return plateFrom(pictureOf(truth), rectangleOn(truth).marks, trueClicksOn(truth).landmarks);
}

function onPlate({ toPlateMm }: Plate, { xPx, yPx }: ImagePoint): { x: number; y: number } {
  const [x, y, w] = transform(toPlateMm, xPx, yPx, 1);
  expect(w).toBeGreaterThan(0);
  return { x: x / w, y: y / w };
}

function clickOn(landmarks: Landmarks, name: keyof Landmarks): ImagePoint {
  const landmark = landmarks[name];
  if (!landmark || !('at' in landmark)) throw new Error(`expected ${name} to be placed`);
  return landmark.at;
}

// Rendered photographs with known geometry; the card is ID-1, 85.60 mm x 53.98 mm (ISO/IEC 7810:2019).
describe.each(photoTruths())('plate of $name', (truth) => {
  const { marks } = rectangleOn(truth);
  const { landmarks } = trueClicksOn(truth);
  const plate = plateOn(truth);

  it('shows the scale object in its true size and shape', () => {
    const [a, b, c, d] = marks.corners.map((corner) => onPlate(plate, corner));
    if (!a || !b || !c || !d) throw new Error('expected four corners');
    expect(Math.hypot(b.x - a.x, b.y - a.y)).toBeCloseTo(marks.widthMm, 6);
    expect(Math.hypot(c.x - b.x, c.y - b.y)).toBeCloseTo(marks.heightMm, 6);
    expect(Math.hypot(c.x - a.x, c.y - a.y)).toBeCloseTo(Math.hypot(marks.widthMm, marks.heightMm), 6);
    // Clockwise, as it lies: not mirrored.
    expect((b.x - a.x) * (d.y - a.y) - (b.y - a.y) * (d.x - a.x)).toBeGreaterThan(0);
  });

  it('stands with the head straight up', () => {
    const front = onPlate(plate, clickOn(landmarks, 'carapace-front'));
    const rear = onPlate(plate, clickOn(landmarks, 'carapace-rear'));
    expect(plate.turned).toBe(true);
    expect(front.x).toBeCloseTo(rear.x, 6);
    expect(front.y).toBeLessThan(rear.y);
    expect(plate.carapaceAtMm).toBeCloseTo((front.y + rear.y) / 2, 6);
    expect(onPlate(plate, clickOn(landmarks, 'carapace-left')).x).toBeLessThan(front.x);
  });

  it('holds the whole animal', () => {
    for (const landmark of Object.values(landmarks)) {
      if (!('at' in landmark)) continue;
      const { x, y } = onPlate(plate, landmark.at);
      const inPhoto =
        landmark.at.xPx >= 0 && landmark.at.yPx >= 0 && landmark.at.xPx <= truth.display_width && landmark.at.yPx <= truth.display_height;
      if (!inPhoto) continue;
      expect(x).toBeGreaterThanOrEqual(0);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(plate.widthMm);
      expect(y).toBeLessThanOrEqual(plate.heightMm);
    }
  });

  it('is the same for a photo that was turned', () => {
    const turn = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: truth.display_height - yPx, yPx: xPx });
    const turnedLandmarks: Landmarks = Object.fromEntries(
      Object.entries(landmarks).map(([name, landmark]) => [name, 'at' in landmark ? { ...landmark, at: turn(landmark.at) } : landmark]),
    );
    const [a, b, c, d] = marks.corners;
    const turnedMarks: RectangleScale = { ...marks, corners: [turn(a), turn(b), turn(c), turn(d)] };
    const picture = { ...pictureOf(truth), widthPx: truth.display_height, heightPx: truth.display_width };
    const turned = plateFrom(picture, turnedMarks, turnedLandmarks);
    expect(turned.widthMm).toBeCloseTo(plate.widthMm, 5);
    expect(turned.heightMm).toBeCloseTo(plate.heightMm, 5);
    expect(turned.carapaceAtMm).toBeCloseTo(plate.carapaceAtMm, 5);
  });
});

describe('plateOf', () => {
  const square: Matrix3 = [0.1, 0, 0, 0, 0.1, 0, 0, 0, 1];
  const photo = { widthPx: 2000, heightPx: 1000 };

  it('shows the whole photo, unturned, where nothing is marked', () => {
    expect(plateOf(photo, { imageToPlane: square }, null)).toMatchObject({ widthMm: 200, heightMm: 100, carapaceAtMm: 50, turned: false });
    expect(plateOf(photo, { imageToPlane: square }, {})).toMatchObject({ widthMm: 200, heightMm: 100, turned: false });
  });

  it('leaves room for legs that are not marked yet, but not beyond the photo', () => {
    const carapace: Landmarks = {
      'carapace-front': { state: 'placed', at: { xPx: 1000, yPx: 200 } },
      'carapace-rear': { state: 'placed', at: { xPx: 1000, yPx: 300 } },
    };
    const plate = plateOf(photo, { imageToPlane: square }, carapace);
    // 10 mm of carapace: 3.6 times that to each side, cut by the photo above.
    expect(plate?.widthMm).toBeCloseTo(72, 9);
    expect(plate?.heightMm).toBeCloseTo(61, 9);
  });

  it('has no flat view of a photo with the horizon in it', () => {
    expect(plateOf(photo, { imageToPlane: [0.1, 0, 0, 0, 0.1, 0, 0, 0.002, -0.5] }, null)).toBeNull();
  });
});
