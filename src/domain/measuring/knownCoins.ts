import { CoinName } from './calibration.ts';

/** What a mint publishes of a coin, in mm. */
export interface KnownCoin {
  readonly diameterMm: number;
  readonly thicknessMm: number;
  /** The edge of the 20 euro cent is notched ("Spanish flower"): its outline leaves the circle at seven places. */
  readonly notched: boolean;
}

/**
 * United States Mint, Coin Specifications (usmint.gov/learn/coins-and-medals/circulating-coins/coin-specifications); euro:
 * Council Regulation (EU) No 729/2014, Annex I.
 */
export const KNOWN_COINS: { readonly [Name in CoinName]: KnownCoin } = {
  'us-cent': round(19.05, 1.52),
  'us-nickel': round(21.21, 1.95),
  'us-dime': round(17.91, 1.35),
  'us-quarter': round(24.26, 1.75),
  'us-half-dollar': round(30.61, 2.15),
  'us-dollar': round(26.49, 2),
  'euro-1-cent': round(16.25, 1.67),
  'euro-2-cent': round(18.75, 1.67),
  'euro-5-cent': round(21.25, 1.67),
  'euro-10-cent': round(19.75, 1.93),
  'euro-20-cent': { diameterMm: 22.25, thicknessMm: 2.14, notched: true },
  'euro-50-cent': round(24.25, 2.38),
  'euro-1': round(23.25, 2.33),
  'euro-2': round(25.75, 2.2),
};

/** Wear and the rounding of the rim: the diameter may be off by this much either way. Own assumption; no tolerance is published. */
export const COIN_DIAMETER_HALF_WIDTH_MM = 0.05;

function round(diameterMm: number, thicknessMm: number): KnownCoin {
  return { diameterMm, thicknessMm, notched: false };
}

/** Coins whose diameter agrees with a measured one, the nearest first. */
export function coinsOfDiameter(diameterMm: number, toleranceMm: number): readonly CoinName[] {
  const away = (name: CoinName): number => Math.abs(KNOWN_COINS[name].diameterMm - diameterMm);
  return CoinName.options.filter((name) => away(name) <= toleranceMm).toSorted((one, other) => away(one) - away(other));
}
