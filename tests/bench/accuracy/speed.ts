import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { boardPoints } from '../../../src/domain/finding/markers/boardPoints.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { unwrap } from '../../../src/domain/result.ts';
import type { FiducialDetector } from '../../../src/images/fiducials.ts';
import { readLight } from '../../../src/images/light.ts';
import { openScaleFinder, type ScaleFinder } from '../../../src/images/scaleFinder.ts';
import { cardPhoto } from '../../support/cardPhoto.ts';
import { openCvHomography } from '../../support/opencv.ts';
import { type PinholePlacement, pinhole } from '../../support/pinhole.ts';
import { randomSource } from '../../support/random.ts';
import { atMost, type Figure, median } from '../figure.ts';
import type { RenderedPhoto } from './photos.ts';

const LONGER_PX = 4032;
const ROUNDS = 3;

/** From a file of 12 megapixels to all that is proposed of it; the first photo warms everything up. */
export async function proposalTime(photos: readonly RenderedPhoto[]): Promise<Figure> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  const finder = openScaleFinder();
  try {
    const [warming, ...timed] = photos.slice(0, ROUNDS + 1);
    if (!warming || timed.length === 0) throw new Error('Expected two photos or more');
    await timedProposal(warming, folder, finder);
    const seconds: number[] = [];
    for (const photo of timed) seconds.push(await timedProposal(photo, folder, finder));
    return atMost('proposal-time-s', median(seconds), 's', 2);
  } finally {
    await finder.close();
    await rm(folder, { recursive: true, force: true });
  }
}

async function timedProposal({ path, truth }: RenderedPhoto, folder: string, finder: ScaleFinder): Promise<number> {
  const file = join(folder, `${truth.name}.jpg`);
  const longest = { width: LONGER_PX, height: LONGER_PX, fit: 'inside' } as const;
  const { width, height } = await sharp(path, { limitInputPixels: false }).autoOrient().resize(longest).jpeg({ quality: 92 }).toFile(file);
  const facts = { widthPx: width, heightPx: height, facts: { focalLength35Mm: truth.camera.focal_35mm_equiv } };
  const start = performance.now();
  unwrap(await finder.propose({ file: { path: file, name: truth.name }, facts }));
  return (performance.now() - start) / 1000;
}

const OVER_CARD: PinholePlacement = {
  ...{ tiltDeg: 10, axisDeg: 40, rollDeg: 3, distanceMm: 300, aim: { xMm: 105, yMm: 74 } },
  ...{ focalPx: 4300, widthPx: LONGER_PX, heightPx: 3024 },
};

/** Everything but the markers at one corner of the frame. */
const ALL_BUT_A_CORNER = [
  { leftMm: 57, topMm: 0, widthMm: 153, heightMm: 148 },
  { leftMm: 0, topMm: 51, widthMm: 210, heightMm: 97 },
];

/** From a file of 12 megapixels to the points of our own card on it: upright, upside down, and covered but for a corner. */
export async function ownCardTime(detector: FiducialDetector): Promise<Figure> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  try {
    const scenes = [
      { placement: OVER_CARD, covered: [] },
      { placement: { ...OVER_CARD, rollDeg: 183 }, covered: [] },
      { placement: { ...OVER_CARD, rollDeg: 93, tiltDeg: 4 }, covered: ALL_BUT_A_CORNER },
    ];
    const files: string[] = [];
    for (const [index, { placement, covered }] of scenes.entries()) {
      const file = join(folder, `${index}.jpg`);
      await writeFile(file, await cardPhoto('jpeg', pinhole(placement), covered));
      files.push(file);
    }
    const seconds: number[] = [];
    // The first one warms up.
    for (const path of [...files.slice(0, 1), ...files]) {
      const start = performance.now();
      const { image } = unwrap(await readLight({ path, name: 'card' }));
      const points = boardPoints(image, (await detector.find(image)).upright);
      seconds.push((performance.now() - start) / 1000);
      if (points === null) throw new Error(`Expected the scale card on ${path}, found none`);
    }
    return atMost('own-card-time-s', Math.max(...seconds.slice(1)), 's', 1);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

const REPEATS = 200;

/** Fit and refinement of homographies through 4 to 40 points, against OpenCV on the same points, in turns. */
export async function homographyRatio(): Promise<Figure> {
  const reference = await openCvHomography();
  const random = randomSource(40);
  const sets = [4, 8, 16, 24, 40].map((count) => {
    const plane = Array.from({ length: count }, (_, index) => ({
      xMm: 85.6 * (index % 2 === 0 ? 0 : 1) + random.uniform(-5, 5),
      yMm: 53.98 * (Math.floor(index / 2) % 2 === 0 ? 0 : 1) + random.uniform(-5, 5),
    }));
    const image = plane.map(({ xMm, yMm }) => {
      const w = 1 - 0.0004 * xMm + 0.0007 * yMm;
      return {
        xPx: (1612 + 9 * xMm + 0.8 * yMm) / w + random.normal(0.3),
        yPx: (1206 + 0.36 * xMm + 10.9 * yMm) / w + random.normal(0.3),
      };
    });
    return { plane, image };
  });
  let ours = 0;
  let theirs = 0;
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const counts = repeat >= REPEATS / 10;
    for (const { plane, image } of sets) {
      const start = performance.now();
      fitHomography(plane, image);
      const middle = performance.now();
      reference(plane, image);
      const end = performance.now();
      if (!counts) continue;
      ours += middle - start;
      theirs += end - middle;
    }
  }
  return atMost('homography-vs-opencv-ratio', ours / theirs, '1', 3);
}
