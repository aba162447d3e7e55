import { type Ellipse, pointOn } from '../../src/domain/measuring/ellipse.ts';
import type { ImagePoint } from '../../src/domain/measuring/points.ts';
import { distanceFrom } from './ellipseDistance.ts';
import type { RandomSource } from './random.ts';
import type { CoinScene, Color } from './renderedCoin.ts';

const SILVER: Color = [0.46, 0.47, 0.47];
const DULL_SILVER: Color = [0.26, 0.27, 0.27];
const BRASS: Color = [0.55, 0.4, 0.16];
const COPPER: Color = [0.38, 0.17, 0.09];
const PAPER: Color = [0.72, 0.71, 0.68];
const GRAY: Color = [0.3, 0.3, 0.3];
const SLATE: Color = [0.035, 0.035, 0.04];
const SOIL: Color = [0.12, 0.08, 0.05];

const COMMON = { radiusMm: 11.6, thicknessMm: 2, tiltDeg: 18, axisDeg: 30, lampDeg: 200, lampHeightDeg: 50, ambient: 0.35, relief: 0.5 };

/** Coins as they lie about: shiny and dull, on light and dark ground, with wall, shadow, border, relief and glare. */
export const COIN_SCENES: readonly (readonly [string, CoinScene])[] = [
  ['silver on paper', { ...COMMON, metal: SILVER, ground: PAPER }],
  ['silver on gray, far tilted', { ...COMMON, metal: SILVER, ground: GRAY, tiltDeg: 28, lampDeg: 110, relief: 0.7 }],
  ['silver on slate with a glare', { ...COMMON, metal: SILVER, ground: SLATE, lampDeg: 20, glare: true }],
  ['dull silver on gray of its own lightness', { ...COMMON, metal: DULL_SILVER, ground: GRAY, tiltDeg: 10, lampDeg: 300, relief: 0.4 }],
  ['silver on soil, lamp low on the near side', { ...COMMON, metal: SILVER, ground: SOIL, lampDeg: 120, lampHeightDeg: 30 }],
  [
    'silver on paper, lamp low on the far side',
    { ...COMMON, metal: SILVER, ground: PAPER, tiltDeg: 22, lampDeg: 300, lampHeightDeg: 32, relief: 0.8 },
  ],
  ['brass on paper', { ...COMMON, metal: BRASS, ground: PAPER, tiltDeg: 24, lampDeg: 60 }],
  ['brass on gray', { ...COMMON, metal: BRASS, ground: GRAY, lampHeightDeg: 35 }],
  ['silver in brass on gray', { ...COMMON, metal: BRASS, core: { share: 0.69, metal: SILVER }, ground: GRAY, tiltDeg: 8 }],
  ['brass in silver on gray', { ...COMMON, metal: SILVER, core: { share: 0.73, metal: BRASS }, ground: GRAY, lampDeg: 40 }],
  ['brass in dull silver on gray', { ...COMMON, metal: DULL_SILVER, core: { share: 0.65, metal: BRASS }, ground: GRAY, tiltDeg: 12 }],
  ['copper on soil', { ...COMMON, metal: COPPER, ground: SOIL, thicknessMm: 1.5, relief: 0.7 }],
  ['copper on paper', { ...COMMON, metal: COPPER, ground: PAPER, thicknessMm: 1.6, lampDeg: 330, relief: 0.7 }],
];

/** A rough middle: off by 3 to 8 % of the coin's width. */
export function roughMiddle({ centre, semiMajorPx }: Ellipse, random: RandomSource): ImagePoint {
  return off(centre, 2 * semiMajorPx * random.uniform(0.03, 0.08), random);
}

/** Three rough clicks on the rim: each off by 3 to 5 % of the coin's width. */
export function roughClicks(rim: Ellipse, random: RandomSource): readonly [ImagePoint, ImagePoint, ImagePoint] {
  const start = random.uniform(0, 2 * Math.PI);
  const click = (third: number): ImagePoint => {
    const at = pointOn(rim, start + (2 * Math.PI * third) / 3 + random.uniform(-0.4, 0.4));
    return off(at, 2 * rim.semiMajorPx * random.uniform(0.03, 0.05), random);
  };
  return [click(0), click(1), click(2)];
}

function off({ xPx, yPx }: ImagePoint, byPx: number, random: RandomSource): ImagePoint {
  const direction = random.uniform(0, 2 * Math.PI);
  return { xPx: xPx + byPx * Math.cos(direction), yPx: yPx + byPx * Math.sin(direction) };
}

/** How far a found rim is from the true one. */
export function rimError(found: Ellipse, truth: Ellipse): { readonly rmsPx: number; readonly diameterPercent: number } {
  const squares = Array.from({ length: 90 }, (_, index) => distanceFrom(truth, pointOn(found, (index * Math.PI) / 45)) ** 2);
  return {
    rmsPx: Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length),
    diameterPercent: 100 * (found.semiMajorPx / truth.semiMajorPx - 1),
  };
}
