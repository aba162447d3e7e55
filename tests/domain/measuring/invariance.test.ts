import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import type { RectangleScale, TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import type { PictureFacts } from '../../../src/domain/measuring/camera.ts';
import { orderCorners } from '../../../src/domain/measuring/corners.ts';
import type { Landmarks } from '../../../src/domain/measuring/landmarks.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { ImagePoint } from '../../../src/domain/measuring/points.ts';
import type { Measurement } from '../../../src/domain/measuring/quantity.ts';
import { photoTruths, pictureOf, rectangleOn, ruleTicksOn, trueClicksOn } from '../../support/photoTruth.ts';
import { calibrated } from '../../support/simulatedCard.ts';

type ClickedMarks = TwoPointScale | RectangleScale;

/** One marked photo: everything that lives in its pixels. */
interface MarkedPhoto {
  readonly marks: ClickedMarks;
  readonly landmarks: Landmarks;
  readonly picture: PictureFacts;
}

function photo(name: string, scale: 'rectangle' | 'two-points'): MarkedPhoto {
  const truth = photoTruths().find((candidate) => candidate.name === name);
  if (!truth) throw new Error(`No photo is called ${name}`);
  const marks = scale === 'rectangle' ? rectangleOn(truth).marks : ruleTicksOn(truth);
  if (!marks) throw new Error(`${name} shows no rule`);
  return { marks, landmarks: trueClicksOn(truth).landmarks, picture: pictureOf(truth) };
}

const ON_CARD = photo('specimen-a_instar-09_dorsal', 'rectangle');
const ON_RULE = photo('specimen-b_instar-08_dorsal', 'two-points');

/** The same photo after its pixels went elsewhere; uncertainties in pixels grow with the picture. */
function moved(
  { marks, landmarks, picture }: MarkedPhoto,
  to: (at: ImagePoint) => ImagePoint,
  size: { widthPx: number; heightPx: number },
): MarkedPhoto {
  return {
    marks: movedMarks(marks, to),
    landmarks: Object.fromEntries(
      Object.entries(landmarks).map(([name, landmark]) => [name, 'at' in landmark ? { ...landmark, at: to(landmark.at) } : landmark]),
    ),
    picture: { ...size, facts: picture.facts },
  };
}

function movedMarks(marks: ClickedMarks, to: (at: ImagePoint) => ImagePoint): ClickedMarks {
  if (marks.kind === 'two-points') return { ...marks, ends: [to(marks.ends[0]), to(marks.ends[1])] };
  const [a, b, c, d] = marks.corners;
  return { ...marks, corners: [to(a), to(b), to(c), to(d)] };
}

function measured({ marks, landmarks, picture }: MarkedPhoto, clickPx = 1): Measurement {
  return measure(
    { landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: clickPx },
    calibrated({ ...marks, pointingPx: clickPx }, picture),
  );
}

function expectSame(actual: Measurement, expected: Measurement): void {
  expect(actual.absent).toEqual(expected.absent);
  expect(actual.quantities.map((quantity) => quantity.name)).toEqual(expected.quantities.map((quantity) => quantity.name));
  actual.quantities.forEach((quantity, index) => {
    const wanted = expected.quantities[index];
    if (!wanted) throw new Error('Expected as many quantities');
    expect(quantity.flags).toEqual(wanted.flags);
    expect(Math.abs(quantity.estimate.value / wanted.estimate.value - 1), quantity.name).toBeLessThan(1e-7);
    expect(Math.abs(quantity.estimate.standardUncertainty / wanted.estimate.standardUncertainty - 1), quantity.name).toBeLessThan(1e-2);
  });
}

describe.each([
  ['a card', ON_CARD],
  ['a rule', ON_RULE],
] as const)('lengths measured on %s', (_, original) => {
  const { widthPx, heightPx } = original.picture;
  const reference = measured(original);

  it('do not change when the picture is turned about its middle', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1800, max: 1800 }), (tenthsOfDegree) => {
        const angle = (tenthsOfDegree * Math.PI) / 1800;
        const turn = ({ xPx, yPx }: ImagePoint): ImagePoint => ({
          xPx: widthPx / 2 + Math.cos(angle) * (xPx - widthPx / 2) - Math.sin(angle) * (yPx - heightPx / 2),
          yPx: heightPx / 2 + Math.sin(angle) * (xPx - widthPx / 2) + Math.cos(angle) * (yPx - heightPx / 2),
        });
        expectSame(measured(moved(original, turn, { widthPx, heightPx })), reference);
      }),
      { numRuns: 50 },
    );
  });

  it('do not change when the picture is resized, the 35 mm equivalent being the same', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 800 }), (percent) => {
        const factor = percent / 100;
        const resize = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: factor * xPx, yPx: factor * yPx });
        const resized = moved(original, resize, { widthPx: factor * widthPx, heightPx: factor * heightPx });
        expectSame(measured(resized, factor), reference);
      }),
      { numRuns: 50 },
    );
  });
});

/** Where a point of the upright picture lies in the bytes stored with each EXIF orientation (Exif 2.32, tag 0x0112). */
const STORED: readonly { orientation: number; mirrored: boolean; to: (width: number, height: number) => (at: ImagePoint) => ImagePoint }[] =
  [
    { orientation: 1, mirrored: false, to: () => (at) => at },
    { orientation: 2, mirrored: true, to: (width) => (at) => ({ xPx: width - at.xPx, yPx: at.yPx }) },
    { orientation: 3, mirrored: false, to: (width, height) => (at) => ({ xPx: width - at.xPx, yPx: height - at.yPx }) },
    { orientation: 4, mirrored: true, to: (_, height) => (at) => ({ xPx: at.xPx, yPx: height - at.yPx }) },
    { orientation: 5, mirrored: true, to: () => (at) => ({ xPx: at.yPx, yPx: at.xPx }) },
    { orientation: 6, mirrored: false, to: (width) => (at) => ({ xPx: at.yPx, yPx: width - at.xPx }) },
    { orientation: 7, mirrored: true, to: (width, height) => (at) => ({ xPx: height - at.yPx, yPx: width - at.xPx }) },
    { orientation: 8, mirrored: false, to: (_, height) => (at) => ({ xPx: height - at.yPx, yPx: at.xPx }) },
  ];

describe.each(STORED)('a picture seen as it is stored with EXIF orientation $orientation', ({ orientation, mirrored, to }) => {
  const { widthPx, heightPx } = ON_CARD.picture;
  const size = orientation < 5 ? { widthPx, heightPx } : { widthPx: heightPx, heightPx: widthPx };
  const stored = moved(ON_CARD, to(widthPx, heightPx), size);

  it('measures the same, the corners of a mirrored one being marked anew', () => {
    const marks = stored.marks as RectangleScale;
    const refused = calibrate(marks, stored.picture);
    if (mirrored) expect(refused).toEqual({ ok: false, failure: { code: 'corners-mirrored' } });
    const corners = orderCorners(marks.corners, marks);
    if (!corners.ok) throw new Error(corners.failure.code);
    expectSame(measured({ ...stored, marks: { ...marks, corners: [...corners.value] } }), measured(ON_CARD));
  });
});
