import type { Graduation } from '../../../../domain/finding/refinement.ts';
import {
  CoinName,
  type CoinScale,
  type RectangleObject,
  type RectangleScale,
  type TwoPointScale,
} from '../../../../domain/measuring/calibration.ts';
import { ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM } from '../../../../domain/measuring/faceHeight.ts';
import { KNOWN_COINS } from '../../../../domain/measuring/knownCoins.ts';
import { KNOWN_RECTANGLES, rectangularStandardUncertainty } from '../../../../domain/measuring/knownRectangles.ts';
import { RULE_STANDARD_UNCERTAINTY_MM } from '../../../../domain/measuring/knownRules.ts';
import { DEFAULT_POINTING_PX } from '../../../../domain/measuring/reading.ts';
import { COIN_LABELS } from '../../../../words/scaleObjects.ts';

interface CoinOption {
  readonly value: CoinScale['coin'];
  readonly label: string;
}

/** Coins by name with their published diameters, and any other disk. */
const COIN_OPTIONS: readonly CoinOption[] = [
  ...CoinName.options.map((value) => ({ value, label: `${COIN_LABELS[value]}, ${KNOWN_COINS[value].diameterMm} mm` })),
  { value: 'own', label: COIN_LABELS.own },
];

/** @param fitting coins that another object of the picture speaks for, the likeliest first: they stand first, and are said to fit. */
export function coinOptions(fitting: readonly CoinName[]): readonly CoinOption[] {
  // A word beside every coin would tell none from another.
  const told: readonly string[] = fitting.length < CoinName.options.length ? fitting : [];
  const rank = ({ value }: CoinOption) => told.indexOf(value);
  const first = COIN_OPTIONS.filter((option) => rank(option) >= 0).toSorted((one, other) => rank(one) - rank(other));
  return [
    ...first.map(({ value, label }) => ({ value, label: `${label}, fits the other object` })),
    ...COIN_OPTIONS.filter((option) => rank(option) < 0),
  ];
}

/** What lies between two ticks of a rule. */
export const GRADUATION_OPTIONS: readonly { readonly value: Graduation; readonly label: string }[] = [
  { value: 'millimeter', label: 'one millimeter' },
  { value: 'sixteenth-inch', label: 'a sixteenth of an inch' },
];

/** Half width of what an own rectangle's sides are taken to be known to, until the keeper says better: a ruler's millimeter. */
const OWN_HALF_WIDTH_MM = 0.5;

export type TwoPointObject = Omit<TwoPointScale, 'ends'>;
export type RectangleKind = Omit<RectangleScale, 'corners'>;

export function ruleOf(distanceMm: number): TwoPointObject {
  return {
    kind: 'two-points',
    distanceMm,
    distanceStandardUncertaintyMm: RULE_STANDARD_UNCERTAINTY_MM,
    pointingPx: DEFAULT_POINTING_PX,
    heightMm: 0,
    faceHeightStandardUncertaintyMm: ASSUMED_FACE_HEIGHT_STANDARD_UNCERTAINTY_MM,
  };
}

export function knownRectangle(object: Exclude<RectangleObject, 'own'>): RectangleKind {
  const { cornerRadiusMm: _, ...size } = KNOWN_RECTANGLES[object];
  return { kind: 'rectangle', object, ...size, pointingPx: DEFAULT_POINTING_PX };
}

export function ownRectangle(widthMm: number, heightMm: number): RectangleKind {
  const uncertaintyMm = rectangularStandardUncertainty(OWN_HALF_WIDTH_MM);
  return {
    kind: 'rectangle',
    object: 'own',
    widthMm,
    heightMm,
    widthStandardUncertaintyMm: uncertaintyMm,
    heightStandardUncertaintyMm: uncertaintyMm,
    thicknessMm: 0,
    pointingPx: DEFAULT_POINTING_PX,
  };
}
