import { z } from 'zod';
import { ANY_RATIO } from '../growth/priors.ts';
import type { GrowthFit } from '../growth/rung.ts';
import type { Estimate } from '../measuring/quantity.ts';
import type { MoltsSince } from '../molting/instars.ts';
import type { Sex } from '../sexing/determination.ts';

/** How much longer an animal is after a molt than its skin of before: the factor and the 95 % interval it may lie in. */
export const GrowthFactor = z
  .object({
    value: z.number().positive(),
    low: z.number().positive(),
    high: z.number().positive(),
    from: z.enum(['own-skins', 'any-tarantula']),
  })
  .meta({ id: 'GrowthFactor' });
export type GrowthFactor = z.infer<typeof GrowthFactor>;

/**
 * Leg span of the living animal today, with the interval it lies in. Measured on the animal, or foretold from its last
 * measured skin, which shows the instar that has ended.
 */
export const SpanNow = z
  .object({
    spanMm: z.number().positive(),
    lowMm: z.number().positive(),
    highMm: z.number().positive(),
    from: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('animal') }),
      z.object({
        kind: z.literal('skin'),
        measured: z.enum(['leg-span', 'carapace-length']),
        lengthMm: z.number().positive(),
        moltsSince: z
          .object({ fewest: z.int().min(1), most: z.int().min(1) })
          .describe('Instars from the skin to the animal, on record or not; 1 for the skin of the last molt'),
        factor: GrowthFactor,
      }),
    ]),
  })
  .meta({ id: 'SpanNow' });
export type SpanNow = z.infer<typeof SpanNow>;

/** The last measured skin of an animal. */
export interface LastSkinSize {
  readonly legSpanMm: Estimate | null;
  readonly carapaceLengthMm: Estimate | null;
  readonly moltsSince: MoltsSince;
}

/** Growth per molt where an animal's own skins do not tell it. */
export const ANY_TARANTULA: GrowthFactor = {
  value: ANY_RATIO.middle,
  low: ANY_RATIO.low95,
  high: ANY_RATIO.high95,
  from: 'any-tarantula',
};

/**
 * Leg I and IV together over carapace length, from described specimens of Aphonopelma madera, A. moellendorfi and Catanduba
 * araguaia (Hamilton CA, Hendrixson BE, Bond JE 2016, ZooKeys 560:1-340; Yamamoto FU,
 * Lucas SM, Brescovit AD 2012, Zootaxa 3172:1-19): 5.2 to 5.6 in females, up to 7.5 in
 * adult males. Rough: it leaves out the body between the legs.
 */
const SPAN_PER_CARAPACE = { female: { low: 5.2, high: 5.6 }, other: { low: 5.2, high: 7.5 } } as const;

/**
 * The animal's own factor: the fitted one with the scatter of single molts about it. Where few skins leave it wider than
 * tarantulas grow at all, that side is drawn in to what they do.
 */
export function growthFactorFrom(
  fit: Pick<GrowthFit, 'ratio' | 'ratioLow95' | 'ratioHigh95' | 'residualStandardDeviation'> | null,
): GrowthFactor {
  if (fit === null) return ANY_TARANTULA;
  const scatter = Math.exp(2 * fit.residualStandardDeviation);
  const low = Math.max(fit.ratioLow95 / scatter, Math.min(ANY_TARANTULA.low, fit.ratio));
  const high = Math.min(fit.ratioHigh95 * scatter, Math.max(ANY_TARANTULA.high, fit.ratio));
  return { value: fit.ratio, low, high, from: 'own-skins' };
}

/**
 * The span of the living animal as foretold from a skin; null where the skin gave no size. Where it is open how many molts went by
 * since, the interval reaches from the least to the most growth that this allows, and the span stands halfway in its logarithm.
 */
export function spanFromSkin(skin: LastSkinSize, factor: GrowthFactor, sex: Sex): SpanNow | null {
  const length = skin.legSpanMm ?? skin.carapaceLengthMm;
  if (length === null) return null;
  const perLength = skin.legSpanMm ? { low: 1, high: 1 } : SPAN_PER_CARAPACE[sex === 'female' ? 'female' : 'other'];
  const { fewest, most } = skin.moltsSince;
  const grown = (one: number) => [one ** fewest, one ** most];
  return {
    spanMm: length.value * ((perLength.low + perLength.high) / 2) * factor.value ** ((fewest + most) / 2),
    lowMm: Math.max(length.value - length.expandedUncertainty, length.value / 2) * perLength.low * Math.min(...grown(factor.low)),
    highMm: (length.value + length.expandedUncertainty) * perLength.high * Math.max(...grown(factor.high)),
    from: {
      kind: 'skin',
      measured: skin.legSpanMm ? 'leg-span' : 'carapace-length',
      lengthMm: length.value,
      moltsSince: skin.moltsSince,
      factor,
    },
  };
}

/** The span of an animal measured alive; a half width of as much as the span leaves at least a tenth of it. */
export function spanFromAnimal({ spanMm, plusMinusMm }: { readonly spanMm: number; readonly plusMinusMm: number }): SpanNow {
  return { spanMm, lowMm: Math.max(spanMm - plusMinusMm, spanMm / 10), highMm: spanMm + plusMinusMm, from: { kind: 'animal' } };
}
