import { type Generator, normalDeviate } from '../numerics/generator.ts';
import { type Distribution, distributionOf } from '../numerics/monteCarlo.ts';
import { type Result, succeed } from '../result.ts';
import { calibrate } from './calibrate.ts';
import type { CoinScale, PointsScale, RectangleScale } from './calibration.ts';
import { focalStandardUncertaintyPx, lensOf, type PictureFacts } from './camera.ts';
import { elongationOf, elongationUncertaintyPx, withElongation } from './coinRim.ts';
import { distance } from './corners.ts';
import { CORNER_SHIFT_BOUND, shiftedMarks } from './distortion.ts';
import type { Ellipse } from './ellipse.ts';
import { cornerShifts, type FittedSides, fittedSidesOf } from './fittedSides.ts';
import type { KnownHeights } from './heights.ts';
import { EDGE_UNCERTAINTY_MM } from './knownRectangles.ts';
import type { LandmarkName, Landmarks } from './landmarks.ts';
import { type RadialShift, radialShiftOf, shifted } from './lens/radialShift.ts';
import { type Sides, sideLine } from './lens/sides.ts';
import { carapaceHeights, type MeasuringOptions, measure } from './measure.ts';
import { type GivenPointing, pointingOf } from './pointingError.ts';
import type { ImagePoint } from './points.ts';
import { viewOfPoints } from './pointsView.ts';
import type { ReadingDraft } from './reading.ts';
import { threeSidesOf } from './threeSides.ts';

/** Marks whose errors can be drawn; two points and rules say too little about tilt for errors of the marks to tell theirs. */
export type SimulatedMarks = RectangleScale | PointsScale | CoinScale;

type SimulatedReading = Pick<ReadingDraft, 'landmarks' | 'carapaceHeight' | 'pointingPx'>;

/**
 * What a reading gives when all that it rests on is drawn anew again and again: marks, size of the object, focal length, clicks
 * and heights, each from its normal distribution, and the lens's distortion from its rectangular one (JCGM 101:2008, 6.4 and 7). To be
 * compared with the first order of `measure` under the same options.
 *
 * @returns by name, the quantities that the reading itself gives, each with its draws that gave none; a failure when the marks
 * themselves, without error, do not calibrate.
 * @throws RangeError as `distributionOf`: where more than one draw in a hundred gives no scale or no such quantity, what the others give
 * says nothing.
 */
export function simulateReading(
  reading: SimulatedReading,
  marks: SimulatedMarks,
  picture: PictureFacts,
  draws: number,
  draw: Generator,
  options: MeasuringOptions = {},
): Result<ReadonlyMap<string, Distribution>> {
  const exact = calibrate(marks, picture);
  if (!exact.ok) return exact;
  const asScattered = marks.kind === 'points' ? scattering(marks, picture) : marks;
  const heights = carapaceHeights(reading, exact.value, options);
  const lens = lensOf(picture);
  const focalShare = lens.known ? focalStandardUncertaintyPx(lens, picture) / lens.focalPx : 0;
  const given = measure(reading, exact.value, options).quantities;
  const values = new Map<string, number[]>(given.map(({ name }) => [name, []]));
  for (let round = 0; round < draws; round += 1) {
    const lensShift = radialShiftOf(picture, (2 * draw() - 1) * CORNER_SHIFT_BOUND);
    const calibration = calibrate(
      shiftedMarks(drawnMarks(asScattered, draw), lensShift),
      refocused(picture, 1 + focalShare * normalDeviate(draw)),
    );
    if (!calibration.ok) continue;
    const landmarks = drawnLandmarks(reading.landmarks, options.pointing ?? reading.pointingPx, lensShift, draw);
    const common = normalDeviate(draw);
    const heightsMm: KnownHeights = {};
    for (const name of Object.keys(landmarks) as LandmarkName[]) {
      const { heightMm, ownStandardUncertaintyMm, sharedStandardUncertaintyMm } = heights.of(name);
      heightsMm[name] = heightMm + ownStandardUncertaintyMm * normalDeviate(draw) + sharedStandardUncertaintyMm * common;
    }
    for (const { name, estimate } of measure({ ...reading, landmarks }, calibration.value, { ...options, heightsMm }).quantities) {
      values.get(name)?.push(estimate.value);
    }
  }
  return succeed(new Map([...values].map(([name, drawn]) => [name, distributionOf(drawn, draws)])));
}

/** Points that scatter by more than they are found with are drawn as they scatter: calibrating counts that, too. */
function scattering(marks: PointsScale, picture: PictureFacts): PointsScale {
  const geometry = viewOfPoints(marks, picture);
  return geometry.ok ? { ...marks, pointPx: Math.max(marks.pointPx, geometry.value.scatterPx ?? 0) } : marks;
}

function drawnMarks(marks: SimulatedMarks, draw: Generator): SimulatedMarks {
  switch (marks.kind) {
    case 'rectangle': {
      const fitted = fittedSidesOf(marks);
      return {
        ...marks,
        ...(fitted ? drawnWithSides(marks, fitted, draw) : drawnCorners(marks, draw)),
        widthMm: marks.widthMm + marks.widthStandardUncertaintyMm * normalDeviate(draw),
        heightMm: marks.heightMm + marks.heightStandardUncertaintyMm * normalDeviate(draw),
      };
    }
    case 'points': {
      const { print } = marks;
      const factor = (): number => 1 + print.relativeStandardUncertainty * normalDeviate(draw);
      return {
        ...marks,
        points: marks.points.map((point) => ({ ...point, at: near(point.at, marks.pointPx, draw) })),
        print: { ...print, xFactor: print.xFactor * factor(), yFactor: print.yFactor * factor() },
      };
    }
    case 'coin':
      return { ...drawnRim(marks, draw), diameterMm: marks.diameterMm + marks.diameterStandardUncertaintyMm * normalDeviate(draw) };
  }
}

type DrawnRectangle = Pick<RectangleScale, 'corners' | 'sidePoints'>;

function drawnCorners({ corners: [a, b, c, d], ...marks }: RectangleScale, draw: Generator): DrawnRectangle {
  const move = (corner: ImagePoint): ImagePoint => near(corner, marks.pointingPx, draw);
  const corners: RectangleScale['corners'] = [move(a), move(b), move(c), move(d)];
  if (!marks.sidePoints) return { corners };
  // The sides of a card of which one is hidden give its plane themselves, so they are moved bodily, too.
  const isThree = threeSidesOf(marks.sidePoints, marks) !== null;
  const bodilyPx = isThree ? (EDGE_UNCERTAINTY_MM * distance(a, b)) / marks.widthMm : 0;
  return { corners, sidePoints: drawnSides(marks.sidePoints, bodilyPx, draw) };
}

/** Corners go where the drawn sides meet. */
function drawnWithSides(
  { corners: [a, b, c, d] }: RectangleScale,
  { sides, lines, bodilyPx }: FittedSides,
  draw: Generator,
): DrawnRectangle {
  const sidePoints = drawnSides(sides, bodilyPx, draw);
  const [first, second, third, fourth] =
    cornerShifts(
      lines,
      sidePoints.flatMap((side) => sideLine(side) ?? []),
    ) ?? [];
  const by = ({ xPx, yPx }: ImagePoint, shift = { xPx: 0, yPx: 0 }): ImagePoint => ({ xPx: xPx + shift.xPx, yPx: yPx + shift.yPx });
  return { corners: [by(a, first), by(b, second), by(c, third), by(d, fourth)], sidePoints };
}

/** Points of all sides, each drawn for itself, and each side as a whole. */
function drawnSides(sides: Sides, bodilyPx: number, draw: Generator): Sides {
  const drawn = (side: Sides[number]): Sides[number] => {
    const line = sideLine(side);
    if (!line) return side;
    const byPx = bodilyPx * normalDeviate(draw);
    const moved = ({ xPx, yPx }: ImagePoint): ImagePoint => ({ xPx: xPx - byPx * line.alongY, yPx: yPx + byPx * line.alongX });
    return side.map((point) => ({ ...point, ...moved(near(point, point.acrossPx * Math.sqrt(line.excess), draw)) }));
  };
  const [top, right, bottom, left] = sides;
  return [drawn(top), drawn(right), drawn(bottom), drawn(left)];
}

/** Middle, mean radius and the two ways to be elongated, as `rimPx` describes them. */
function drawnRim(marks: CoinScale, draw: Generator): CoinScale {
  const { rim, rimPx } = marks;
  const widerPx = rimPx * normalDeviate(draw);
  const { alongPx, acrossPx } = elongationOf(rim);
  const deviationPx = elongationUncertaintyPx(marks);
  const elongation = { alongPx: alongPx + deviationPx * normalDeviate(draw), acrossPx: acrossPx + deviationPx * normalDeviate(draw) };
  const moved: Ellipse = {
    ...rim,
    centre: near(rim.centre, rimPx, draw),
    semiMajorPx: rim.semiMajorPx + widerPx,
    semiMinorPx: rim.semiMinorPx + widerPx,
  };
  return { ...marks, rim: withElongation(moved, elongation) };
}

function drawnLandmarks(landmarks: Landmarks, given: GivenPointing, lensShift: RadialShift, draw: Generator): Landmarks {
  return Object.fromEntries(
    (Object.entries(landmarks) as [LandmarkName, Landmarks[LandmarkName]][]).map(([name, landmark]) => {
      if (!landmark || !('at' in landmark)) return [name, landmark];
      const { pointingPx } = pointingOf(name, landmark, given);
      return [name, { ...landmark, at: shifted(near(landmark.at, pointingPx, draw), lensShift) }];
    }),
  );
}

function near({ xPx, yPx }: ImagePoint, deviationPx: number, draw: Generator): ImagePoint {
  return { xPx: xPx + deviationPx * normalDeviate(draw), yPx: yPx + deviationPx * normalDeviate(draw) };
}

function refocused(picture: PictureFacts, factor: number): PictureFacts {
  const { focalLength35Mm } = picture.facts;
  return { ...picture, facts: { focalLength35Mm: focalLength35Mm === null ? null : focalLength35Mm * factor } };
}
