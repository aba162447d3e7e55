import { z } from 'zod';
import { studentTQuantile } from '../../numerics/studentT.ts';
import { informed, meanAt, varianceAt } from './line.ts';
import type { LineBasis } from './lineBasis.ts';
import { predictiveLaw, scaleOf } from './predictive.ts';
import { evidenceFrom } from './stepProbabilities.ts';

/** A length with the intervals it lies in. */
export const SizeForecast = z
  .object({
    middleMm: z.number().positive(),
    low50Mm: z.number().positive(),
    high50Mm: z.number().positive(),
    low90Mm: z.number().positive(),
    high90Mm: z.number().positive(),
  })
  .meta({ id: 'SizeForecast' });
export type SizeForecast = z.infer<typeof SizeForecast>;

/** A length read off a skin, and the instar that this skin shows. */
export interface SkinLength {
  readonly lengthMm: number;
  /** Standard uncertainty. */
  readonly uncertaintyMm: number;
  readonly instar: number;
}

/** How a length grows against the carapace: with its k-th power. */
export interface Power {
  readonly exponent: number;
  /** Standard uncertainty of k. */
  readonly uncertainty: number;
}

/** Half widths of the middle 50 % and 90 % of a normal variable, in standard deviations. */
const NORMAL_50 = 0.6745;
const NORMAL_90 = 1.6449;

/** The carapace against itself. */
export const CARAPACE: Power = { exponent: 1, uncertainty: 0 };

/**
 * ln L' = ln L + k (ln r_1 + ... + ln r_n) over the next n molts, by the animal's line of growth; interval by Student's t over
 * u^2(L) / L^2 + k^2 (n^2 u^2(line) + n s^2) + (ln r_1 + ... + ln r_n)^2 u^2(k) (JCGM 100:2008, 5.1.2 and G.4).
 *
 * No molt makes a carapace smaller, so no end lies below the skin's own size by more than its reading leaves open at that chance.
 *
 * @param molts from the skin on, one or more.
 * @returns null where the interval is too wide for a number.
 */
export function foretoldSize(
  skin: SkinLength,
  growth: LineBasis,
  molts: number,
  { exponent, uncertainty } = CARAPACE,
): SizeForecast | null {
  const belief = informed(growth.kin, evidenceFrom(growth.rows));
  const along = skin.instar + molts / 2;
  const grown = molts * meanAt(belief, along);
  const others =
    (exponent * molts) ** 2 * varianceAt(belief, along) + (grown * uncertainty) ** 2 + (skin.uncertaintyMm / skin.lengthMm) ** 2;
  const law = predictiveLaw(Math.log(skin.lengthMm) + exponent * grown, growth, exponent ** 2 * molts, others);
  const half = studentTQuantile(0.75, law.degreesOfFreedom);
  const most = studentTQuantile(0.95, law.degreesOfFreedom);
  const at = (t: number): number => Math.exp(law.location + t * scaleOf(law));
  const least = (z: number): number => skin.lengthMm * Math.exp((-z * skin.uncertaintyMm) / skin.lengthMm);
  const middleMm = Math.max(at(0), least(0));
  const size = {
    middleMm,
    low50Mm: Math.max(at(-half), least(NORMAL_50)),
    high50Mm: Math.max(at(half), middleMm),
    low90Mm: Math.max(at(-most), least(NORMAL_90)),
    high90Mm: Math.max(at(most), middleMm),
  };
  return size.low90Mm > 0 && Number.isFinite(size.high90Mm) ? size : null;
}
