import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';

const root = resolve(import.meta.dirname, '../..');

/** A place on the upright photo, in pixels; the middle of the top left pixel is (0.5, 0.5). */
export interface PixelPlace {
  readonly x: number;
  readonly y: number;
}

/** A rendered photo of the sample with what was put into it. Lengths in mm, in space. */
export interface PhotoTruth {
  /** Path of the JPEG. */
  readonly file: string;
  readonly fileName: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly carapaceLengthMm: number;
  readonly carapaceWidthMm: number;
  /** Mean height of the four points of the carapace above the table. */
  readonly carapaceHeightMm: number;
  /** Above the table. */
  readonly landmarkHeightMm: (name: string) => number;
  readonly legLengthMm: (leg: 'L1' | 'R1' | 'L4' | 'R4') => number;
  readonly landmark: (name: string) => PixelPlace;
  /** Constructed corners of the card's upper side, in the order in which they run round it. */
  readonly cardCorners: () => readonly PixelPlace[];
  /** Where a mark of the rule meets its edge. */
  readonly ruleMark: (mm: number) => PixelPlace;
  /** The middle of the coin's upper side. */
  readonly coinMiddle: () => PixelPlace;
  readonly cameraTiltDeg: number;
}

interface StoredTruth {
  readonly stored: { readonly width: number; readonly height: number };
  readonly measurements_mm: { readonly carapace_length: number; readonly carapace_width: number };
  readonly camera: { readonly tilt_deg: number };
  readonly landmarks: Readonly<
    Record<string, { readonly px: readonly [number, number]; readonly xyz_mm: readonly [number, number, number] }>
  >;
  readonly legs: Readonly<Record<string, { readonly chain_femur_to_tip_mm: number }>>;
  readonly scale_objects: readonly {
    readonly type: string;
    readonly corners_top_px?: readonly (readonly [number, number])[];
    readonly centre_top_px?: readonly (readonly [number, number])[];
    readonly tick_values_mm?: readonly number[];
    readonly ticks_at_edge_px?: readonly (readonly [number, number])[];
  }[];
}

const CARAPACE = ['carapace_anterior_mid', 'carapace_posterior_mid', 'carapace_left_widest', 'carapace_right_widest'] as const;

/** @param picture name in the sample cabinet, e.g. `juniper-08-dorsal`; @param fixture name of its truth. */
export function photoTruth(picture: string, fixture: string): PhotoTruth {
  const truth = JSON.parse(readFileSync(resolve(root, `tests/fixtures/photo-truth/${fixture}.json`), 'utf8')) as StoredTruth & {
    readonly display_width: number;
    readonly display_height: number;
  };
  const landmark = (name: string) => known(truth.landmarks[name], `landmark ${name}`);
  const scaleObject = (type: string) =>
    known(
      truth.scale_objects.find((object) => object.type === type),
      `scale object ${type}`,
    );
  return {
    file: resolve(root, `resources/sample/photos/${picture}.jpg`),
    fileName: `${picture}.jpg`,
    size: { width: truth.display_width, height: truth.display_height },
    carapaceLengthMm: truth.measurements_mm.carapace_length,
    carapaceWidthMm: truth.measurements_mm.carapace_width,
    carapaceHeightMm: CARAPACE.reduce((sum, name) => sum + landmark(name).xyz_mm[2], 0) / CARAPACE.length,
    landmarkHeightMm: (name) => landmark(name).xyz_mm[2],
    legLengthMm: (leg) => known(truth.legs[leg], `leg ${leg}`).chain_femur_to_tip_mm,
    landmark: (name) => placeOf(landmark(name).px),
    cardCorners: () => known(scaleObject('id1_card').corners_top_px, 'corners of the card').map(placeOf),
    ruleMark: (mm) => {
      const rule = scaleObject('rule');
      const index = known(rule.tick_values_mm, 'marks of the rule').indexOf(mm);
      return placeOf(known(rule.ticks_at_edge_px?.[index], `mark ${mm} of the rule`));
    },
    coinMiddle: () => placeOf(known(scaleObject('coin').centre_top_px?.[0], 'middle of the coin')),
    cameraTiltDeg: truth.camera.tilt_deg,
  };
}

function placeOf([x, y]: readonly [number, number]): PixelPlace {
  return { x, y };
}

function known<Value>(value: Value | undefined, what: string): Value {
  if (value === undefined) throw new Error(`Expected the truth of the photo to hold the ${what} but it does not`);
  return value;
}
