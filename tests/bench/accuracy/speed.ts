import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { proposeCoins } from '../../../src/domain/finding/coin/findCoin.ts';
import { proposeStraightObjects } from '../../../src/domain/finding/proposals.ts';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { unwrap } from '../../../src/domain/result.ts';
import type { FiducialDetector } from '../../../src/images/fiducials.ts';
import { readLight } from '../../../src/images/light.ts';
import { openCvHomography } from '../../support/opencv.ts';
import { randomSource } from '../../support/random.ts';
import { atMost, type Figure, median } from '../figure.ts';
import type { RenderedPhoto } from './photos.ts';

const LONGER_PX = 4032;
const ROUNDS = 3;

/** From a file of 12 megapixels to all that is proposed of it; the first photo warms everything up. */
export async function proposalTime(photos: readonly RenderedPhoto[], detector: FiducialDetector): Promise<Figure> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  try {
    const [warming, ...timed] = photos.slice(0, ROUNDS + 1);
    if (!warming || timed.length === 0) throw new Error('Expected two photos or more');
    await timedProposal(warming, folder, detector);
    const seconds: number[] = [];
    for (const photo of timed) seconds.push(await timedProposal(photo, folder, detector));
    return atMost('proposal-time-s', median(seconds), 's', 2);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}

async function timedProposal({ path, truth }: RenderedPhoto, folder: string, detector: FiducialDetector): Promise<number> {
  const file = join(folder, `${truth.name}.jpg`);
  const longest = { width: LONGER_PX, height: LONGER_PX, fit: 'inside' } as const;
  await sharp(path, { limitInputPixels: false }).autoOrient().resize(longest).jpeg({ quality: 92 }).toFile(file);
  const start = performance.now();
  const { image, colors } = unwrap(await readLight({ path: file, name: truth.name }));
  const picture = {
    widthPx: image.widthPx,
    heightPx: image.heightPx,
    facts: { focalLength35Mm: truth.camera.focal_35mm_equiv },
  };
  const markers = detector.find(image);
  proposeStraightObjects(image, colors, picture);
  proposeCoins(colors);
  await markers;
  return (performance.now() - start) / 1000;
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
