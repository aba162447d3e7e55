import type { CoinName, CoinScale } from '../../measuring/calibration.ts';
import { COIN_DIAMETER_HALF_WIDTH_MM, KNOWN_COINS } from '../../measuring/knownCoins.ts';
import { rectangularStandardUncertainty } from '../../measuring/knownRectangles.ts';
import type { Disk } from '../refinement.ts';
import type { Rim } from './rim.ts';

/** Notches pull a fitted circle inward by a little that depends on how many of them were seen. Own assumption. */
const NOTCHED_HALF_WIDTH_MM = 0.15;

/** The marks of a found rim once the keeper has said which coin it is; which of the two planes was real is still open. */
export function coinMarks(rim: Rim, coin: CoinName): CoinScale {
  return diskMarks(rim, { coin });
}

/** The same for any disk of known size. */
export function diskMarks({ ellipse, standardUncertaintyPx }: Rim, disk: Disk): CoinScale {
  return { kind: 'coin', rim: ellipse, rimPx: standardUncertaintyPx, ...sizeOf(disk), nearEdgeRad: null };
}

/** Marks on a rim once the keeper has said, or said otherwise, which coin it is. */
export function asDisk(marks: CoinScale, disk: Disk): CoinScale {
  return { ...marks, ...sizeOf(disk) };
}

type DiskSize = Pick<CoinScale, 'coin' | 'diameterMm' | 'diameterStandardUncertaintyMm' | 'thicknessMm'>;

function sizeOf(disk: Disk): DiskSize {
  if (disk.coin === 'own') return disk;
  const { diameterMm, thicknessMm, notched } = KNOWN_COINS[disk.coin];
  const halfWidthMm = notched ? NOTCHED_HALF_WIDTH_MM : COIN_DIAMETER_HALF_WIDTH_MM;
  return { coin: disk.coin, diameterMm, diameterStandardUncertaintyMm: rectangularStandardUncertainty(halfWidthMm), thicknessMm };
}
