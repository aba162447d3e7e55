import type { ImagePoint } from '../measuring/points.ts';
import { medianOf } from '../numerics/median.ts';
import { markAt, type ProjectiveLine, placeOn, spacingAt } from './projectiveLine.ts';
import { peakNear, pointOf, type Strip } from './tickBands.ts';
import { tickLine } from './tickLine.ts';
import { LEAST_STRENGTH_SHARE, type Row } from './tickRow.ts';

interface CollectedTick {
  readonly number: number;
  /** Where the tick crosses the middle band. */
  readonly uPx: number;
  /** Px along the strip per px across it. */
  readonly slope: number;
  /** Standard uncertainty of its ends, px along the strip. */
  readonly endPx: number;
  readonly tick: { readonly from: ImagePoint; readonly to: ImagePoint };
}

/** How far from its predicted place a tick is looked for, in spacings. */
const PLACE_TOLERANCE = 0.3;
/** A tick must be seen in this share of the bands. */
const LEAST_BAND_SHARE = 0.6;

/** Looks for each numbered tick in each band near its predicted place, and puts a straight line through what was found. */
export function collectTicks({ middle, bands }: Row, strip: Strip, line: ProjectiveLine): readonly CollectedTick[] {
  // Bands at the border of the row catch the rule's edge and the ends of the ticks.
  const inner = bands.length > 6 ? bands.slice(1, -1) : bands;
  const floors = inner.map(({ peaks }) => 0.5 * LEAST_STRENGTH_SHARE * medianOf(peaks.map(({ strength }) => strength)));
  // Plus 0, because -0 is another number to some.
  const first = Math.ceil(markAt(line, -1)) + 0;
  const last = Math.floor(markAt(line, strip.lengthPx + 1));
  const [vFirst, vLast] = [inner[0]?.band.vPx ?? 0, inner.at(-1)?.band.vPx ?? 0];
  const found: CollectedTick[] = [];
  let lean = 0;
  for (let number = first; number <= last; number += 1) {
    const uPx = placeOn(line, number);
    const within = PLACE_TOLERANCE * spacingAt(line, number);
    const seen = inner.flatMap(({ band }, index) => {
      const v = band.vPx - middle.band.vPx;
      const peak = peakNear(band, uPx + lean * v, within, floors[index] ?? 0);
      return peak ? [{ v, u: peak.uPx }] : [];
    });
    if (seen.length < LEAST_BAND_SHARE * inner.length) continue;
    const fitted = tickLine(seen);
    // Ticks next to each other lean alike: the next one is looked for along this one's lean.
    lean = 0.7 * lean + 0.3 * fitted.slope;
    const at = (v: number): ImagePoint => pointOf(strip, fitted.start + fitted.slope * (v - middle.band.vPx), v);
    found.push({ number, uPx: fitted.start, slope: fitted.slope, endPx: fitted.endPx, tick: { from: at(vFirst), to: at(vLast) } });
  }
  return found;
}
