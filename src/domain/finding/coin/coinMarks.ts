import type { CoinName, CoinScale } from '../../measuring/calibration.ts';
import { COIN_DIAMETER_HALF_WIDTH_MM, KNOWN_COINS } from '../../measuring/knownCoins.ts';
import { rectangularStandardUncertainty } from '../../measuring/knownRectangles.ts';
import type { Rim } from './rim.ts';

/** Notches pull a fitted circle inward by a little that depends on how many of them were seen. Own assumption. */
const NOTCHED_HALF_WIDTH_MM = 0.15;

/** The marks of a found rim once the keeper has said which coin it is; which of the two planes was real is still open. */
export function coinMarks({ ellipse, standardUncertaintyPx }: Rim, coin: CoinName): CoinScale {
  const { diameterMm, thicknessMm, notched } = KNOWN_COINS[coin];
  return {
    kind: 'coin',
    coin,
    rim: ellipse,
    rimPx: standardUncertaintyPx,
    diameterMm,
    diameterStandardUncertaintyMm: rectangularStandardUncertainty(notched ? NOTCHED_HALF_WIDTH_MM : COIN_DIAMETER_HALF_WIDTH_MM),
    thicknessMm,
    nearEdgeRad: null,
  };
}
