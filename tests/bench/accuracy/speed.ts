import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { fitHomography } from '../../../src/domain/measuring/homography.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { openScaleFinder, type ScaleFinder } from '../../../src/images/scaleFinder.ts';
import { openCvHomography } from '../../support/opencv.ts';
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
