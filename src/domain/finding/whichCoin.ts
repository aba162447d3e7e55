import { calibrate } from '../measuring/calibrate.ts';
import { CoinName, type ScaleMarks } from '../measuring/calibration.ts';
import type { PictureFacts } from '../measuring/camera.ts';
import { pointOn } from '../measuring/ellipse.ts';
import { coinsOfDiameter } from '../measuring/knownCoins.ts';
import { toPlane } from '../measuring/onPlane.ts';
import type { Rim } from './coin/rim.ts';

/** The rim stands higher than the plane of the other object and looks larger for it; the neighbors of a coin differ by less. */
const TOLERANCE_MM = 1;

const [FIRST_COIN = 'us-cent', ...OTHER_COINS] = CoinName.options;
const ALL_COINS = [FIRST_COIN, ...OTHER_COINS] as const;

/** Coins that a rim may be, the likeliest first: told by another object of the picture where there is one, else any. */
export function likelyCoins(
  { ellipse }: Pick<Rim, 'ellipse'>,
  others: readonly ScaleMarks[],
  picture: PictureFacts,
): readonly [CoinName, ...CoinName[]] {
  for (const marks of others) {
    const calibration = calibrate(marks, picture);
    if (!calibration.ok) continue;
    const from = toPlane(calibration.value, pointOn(ellipse, 0));
    const to = toPlane(calibration.value, pointOn(ellipse, Math.PI));
    if (!from || !to) continue;
    const [likeliest, ...further] = coinsOfDiameter(Math.hypot(to.xMm - from.xMm, to.yMm - from.yMm), TOLERANCE_MM);
    if (likeliest) return [likeliest, ...further];
  }
  return ALL_COINS;
}
