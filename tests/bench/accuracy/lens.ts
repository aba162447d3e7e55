import type { LightImage } from '../../../src/domain/finding/light.ts';
import { calibrate } from '../../../src/domain/measuring/calibrate.ts';
import { pointOf } from '../../../src/domain/measuring/landmarks.ts';
import { type RadialShift, radialShiftOf, shifted, unshifted } from '../../../src/domain/measuring/lens/radialShift.ts';
import { measure } from '../../../src/domain/measuring/measure.ts';
import type { FiducialDetector } from '../../../src/images/fiducials.ts';
import { PhotoTruth } from '../../support/photoTruth.ts';
import { randomSource } from '../../support/random.ts';
import { smoothLightAt } from '../../support/smoothLight.ts';
import { atMost, type Figure, median, reported } from '../figure.ts';
import { clicksOn } from './lengths.ts';
import type { SeenPhoto } from './photos.ts';
import { foundScales } from './scales.ts';

/** Corner shares of the lenses the photos are seen through: none, one at the bound, and two that no camera corrected. */
const LENSES = [0, 0.005, -0.03, 0.03];
/** The warped picture of a larger photo would show nothing new. */
const LARGEST_PX = 4_000_000;

/** One scale object of a photo seen through a lens. */
export interface SeenThroughLens {
  readonly name: string;
  readonly kind: string;
  readonly trueShare: number;
  readonly found: ReturnType<typeof lensOfScale>['lens'];
  /** Of the carapace, per cent; null where it is not in the picture. */
  readonly errorPct: number | null;
  readonly uncorrectedErrorPct: number | null;
}

/** A photo as each of the lenses would have drawn it, and what its scale objects tell of the lens. */
export async function seenThroughLenses(photo: SeenPhoto, detector: FiducialDetector, seed: number): Promise<readonly SeenThroughLens[]> {
  const { widthPx, heightPx } = photo.picture;
  if (widthPx * heightPx > LARGEST_PX || photo.truth.camera.k1 !== 0) return [];
  const results: SeenThroughLens[] = [];
  for (const trueShare of LENSES) {
    const lens = radialShiftOf(photo.picture, trueShare);
    const bent = bentPhoto(photo, lens);
    for (const { kind, marks } of await foundScales(bent, detector, randomSource(seed))) {
      if (!marks) continue;
      const { lens: found, errorPct } = lensOfScale(bent, marks);
      const without =
        'keepsDistortion' in marks || marks.kind !== 'coin' ? lensOfScale(bent, { ...marks, keepsDistortion: true } as typeof marks) : null;
      results.push({ name: photo.truth.name, kind, trueShare, found, errorPct, uncorrectedErrorPct: without?.errorPct ?? errorPct });
    }
  }
  return results;
}

function lensOfScale(photo: SeenPhoto, marks: Parameters<typeof calibrate>[0]) {
  const calibration = calibrate(marks, photo.picture);
  if (!calibration.ok) throw new Error(`${photo.truth.name}: ${calibration.failure.code}`);
  const { landmarks, heightsMm } = clicksOn(photo);
  const trueMm = photo.truth.measurements_mm['carapace_length'];
  const measured = measure({ landmarks, carapaceHeight: { kind: 'assumed' }, pointingPx: 1.5 }, calibration.value, { heightsMm });
  const length = measured.quantities.find(({ name }) => name === 'carapace-length');
  const errorPct =
    length && trueMm !== undefined && pointOf(landmarks['carapace-front']) ? 100 * Math.abs(length.estimate.value / trueMm - 1) : null;
  return { lens: calibration.value.lens, errorPct };
}

/** How far the lens is found off, and lengths with and without the correction. */
export function lensFigures(results: readonly SeenThroughLens[]): readonly Figure[] {
  const corrected = results.filter(({ found }) => found.isCorrected);
  const off = corrected.map(({ found, trueShare }) => 100 * Math.abs(found.shift.cornerShare - trueShare));
  const within = corrected.filter(
    ({ found, trueShare }) => Math.abs(found.shift.cornerShare - trueShare) <= 2 * found.shift.standardUncertainty,
  );
  const lengths = (of: 'errorPct' | 'uncorrectedErrorPct', bent: boolean) =>
    corrected.filter(({ trueShare }) => (trueShare !== 0) === bent).flatMap((result) => result[of] ?? []);
  return [
    reported('lens-corrected-pct', (100 * corrected.length) / results.length, '%'),
    atMost('lens-corner-median-pct', median(off), '%', 0.25),
    reported('lens-within-uncertainty-pct', (100 * within.length) / corrected.length, '%'),
    reported('lens-carapace-bent-uncorrected-median-pct', median(lengths('uncorrectedErrorPct', true)), '%'),
    atMost('lens-carapace-bent-median-pct', median(lengths('errorPct', true)), '%', median(lengths('uncorrectedErrorPct', true))),
    reported('lens-carapace-straight-median-pct', median(lengths('errorPct', false)), '%'),
    reported('lens-carapace-straight-uncorrected-median-pct', median(lengths('uncorrectedErrorPct', false)), '%'),
  ];
}

function bentPhoto(photo: SeenPhoto, lens: RadialShift): SeenPhoto {
  if (lens.cornerShare === 0) return photo;
  const { image, colors, factor } = photo.light;
  const truth = PhotoTruth.parse(bentTruth(photo.truth, lens));
  const [first, ...others] = colors;
  return {
    ...photo,
    truth,
    light: { factor, image: bentLight(image, lens), colors: [bentLight(first, lens), ...others.map((plane) => bentLight(plane, lens))] },
  };
}

/** What a distorting lens draws at each pixel, from the picture without distortion; beyond its border that of the border. */
function bentLight({ widthPx, heightPx, light }: LightImage, lens: RadialShift): LightImage {
  const bent = new Float32Array(light.length);
  for (let row = 0, at = 0; row < heightPx; row += 1) {
    for (let column = 0; column < widthPx; column += 1, at += 1) {
      const { xPx, yPx } = unshifted({ xPx: column + 0.5, yPx: row + 0.5 }, lens);
      bent[at] = smoothLightAt({ widthPx, heightPx, light }, xPx, yPx);
    }
  }
  return { widthPx, heightPx, light: bent };
}

/** Every point of the truth that is told in pixels, moved by the lens. */
function bentTruth(told: unknown, lens: RadialShift, isPx = false): unknown {
  if (Array.isArray(told)) {
    const [x, y] = told;
    if (isPx && told.length === 2 && typeof x === 'number' && typeof y === 'number') {
      const at = shifted({ xPx: x, yPx: y }, lens);
      return [at.xPx, at.yPx];
    }
    return told.map((part) => bentTruth(part, lens, isPx));
  }
  if (typeof told !== 'object' || told === null) return told;
  return Object.fromEntries(
    Object.entries(told).map(([key, part]) => [key, bentTruth(part, lens, isPx || key === 'px' || key.endsWith('_px'))]),
  );
}
