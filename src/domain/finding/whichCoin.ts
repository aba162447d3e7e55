import { calibrate } from '../measuring/calibrate.ts';
import { CoinName, type CoinScale, type ScaleMarks } from '../measuring/calibration.ts';
import type { PictureFacts } from '../measuring/camera.ts';
import { contradictionOf } from '../measuring/contradiction.ts';
import { pointOn } from '../measuring/ellipse.ts';
import { coinsOfDiameter } from '../measuring/knownCoins.ts';
import { toPlane } from '../measuring/onPlane.ts';
import type { Rim } from './coin/rim.ts';

/** The rim stands higher than the plane of the other object and looks larger for it; the neighbors of a coin differ by less. */
const TOLERANCE_MM = 1;

const [FIRST_COIN = 'us-cent', ...OTHER_COINS] = CoinName.options;
const ALL_COINS = [FIRST_COIN, ...OTHER_COINS] as const;

/** Coins that another object of the picture speaks for, the likeliest first. */
export interface ToldCoins {
  readonly by: ScaleMarks;
  readonly coins: readonly [CoinName, ...CoinName[]];
}

/** Coins that a rim may be, the likeliest first: told by another object of the picture where there is one, else any. */
export function likelyCoins({ ellipse }: Pick<Rim, 'ellipse'>, others: readonly ScaleMarks[], picture: PictureFacts): ToldCoins['coins'] {
  return coinsToldBy(ellipse, others, picture)?.coins ?? ALL_COINS;
}

/**
 * Which coins a rim may be by the first of these objects that can tell.
 *
 * @returns null where none of them gives a scale there, or no known coin is about as wide.
 */
export function coinsToldBy(rim: Rim['ellipse'], others: readonly ScaleMarks[], picture: PictureFacts): ToldCoins | null {
  for (const marks of others) {
    const calibration = calibrate(marks, picture);
    if (!calibration.ok) continue;
    const from = toPlane(calibration.value, pointOn(rim, 0));
    const to = toPlane(calibration.value, pointOn(rim, Math.PI));
    if (!from || !to) continue;
    const [likeliest, ...further] = coinsOfDiameter(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm), TOLERANCE_MM);
    if (likeliest) return { by: marks, coins: [likeliest, ...further] };
  }
  return null;
}

/**
 * Whether a coin, as wide as it is said to be, contradicts the object beside it by more than their uncertainties, while another coin
 * would fit.
 */
export function wouldFitBetter(marks: CoinScale, { by, coins }: ToldCoins, picture: PictureFacts): boolean {
  if (coins.some((name) => name === marks.coin)) return false;
  const [coin, other] = [calibrate(marks, picture), calibrate(by, picture)];
  return coin.ok && other.ok && contradictionOf({ marks, calibration: coin.value }, { marks: by, calibration: other.value }) !== null;
}
