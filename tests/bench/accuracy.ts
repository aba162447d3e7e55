/**
 * `npm run bench:accuracy`: one JSON line per figure, in the form of `npm run bench`. True pixels as clicks, true heights to half a
 * millimeter, focal lengths from EXIF, scale objects refined from handles that are off by 3 % of their width.
 *
 * `-- --photos FOLDER` takes photos with their truths (NAME.jpg beside NAME.json) from a folder instead of those that the
 * repository carries. `-- --lenses` looks at each photo through lenses that bend it, too: some minutes more.
 */
import process from 'node:process';
import { parseArgs } from 'node:util';
import { openFiducialDetector } from '../../src/images/fiducials.ts';
import { randomSource } from '../support/random.ts';
import { coverageFigures, POINTING_PX, type SnappedScale, snappedCoverageFigures } from './accuracy/coverage.ts';
import { localisationFigures, type Proposed, proposalFigures, proposedOn } from './accuracy/finding.ts';
import { type CalibratedScale, calibrated, lengthFigures } from './accuracy/lengths.ts';
import { lensFigures, type SeenThroughLens, seenThroughLenses } from './accuracy/lens.ts';
import { monteCarloFigures } from './accuracy/monteCarlo.ts';
import { renderedPhotos, seen } from './accuracy/photos.ts';
import { type FoundScale, foundScales } from './accuracy/scales.ts';
import { snappedDraws } from './accuracy/snapped.ts';
import { homographyRatio, ownCardTime, proposalTime } from './accuracy/speed.ts';
import type { Figure } from './figure.ts';

const { values } = parseArgs({ options: { photos: { type: 'string' }, lenses: { type: 'boolean', default: false } } });
const photos = renderedPhotos(values.photos ?? null);
if (photos.length === 0) {
  console.error(`Expected NAME.jpg beside NAME.json in ${values.photos} but found none`);
  process.exit(1);
}
console.error(
  values.photos === undefined
    ? `${photos.length} photos of the repository; others: npm run bench:accuracy -- --photos FOLDER`
    : `${photos.length} photos of ${values.photos}`,
);

const detector = openFiducialDetector();
const scales: FoundScale[] = [];
const calibratedScales: CalibratedScale[] = [];
const snappedScales: SnappedScale[] = [];
const proposed: Proposed[] = [];
const throughLenses: SeenThroughLens[] = [];
for (const photo of photos) {
  const looked = await seen(photo);
  const draws = snappedDraws(looked, POINTING_PX, randomSource(seedOf(photo.truth.name)));
  for (const scale of await foundScales(looked, detector, randomSource(seedOf(photo.truth.name)))) {
    if (scale.trouble !== null) console.error(`${photo.truth.name}, ${scale.kind}: ${scale.trouble}`);
    scales.push(scale);
    const measured = calibrated(looked, scale);
    if (!measured) continue;
    calibratedScales.push(measured);
    snappedScales.push({ scale: measured, draws });
  }
  proposed.push(await proposedOn(looked, detector));
  if (values.lenses) throughLenses.push(...(await seenThroughLenses(looked, detector, seedOf(photo.truth.name))));
}

/** Handles of one photo are off alike whatever other photos are looked at (FNV-1a, 32 bits). */
function seedOf(name: string): number {
  return [...name].reduce((hash, letter) => Math.imul(hash ^ letter.charCodeAt(0), 0x01000193) >>> 0, 0x811c9dc5);
}

const figures: readonly Figure[] = [
  ...lengthFigures(calibratedScales),
  ...localisationFigures(scales),
  ...proposalFigures(proposed),
  ...coverageFigures(calibratedScales),
  ...snappedCoverageFigures(snappedScales),
  ...(values.lenses ? lensFigures(throughLenses) : []),
  ...monteCarloFigures(calibratedScales),
  await proposalTime(photos),
  await ownCardTime(detector),
  await homographyRatio(),
];
await detector.close();
for (const figure of figures) console.log(JSON.stringify(figure));
process.exitCode = figures.some(({ ok }) => ok === false) ? 1 : 0;
